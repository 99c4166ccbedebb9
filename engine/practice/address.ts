import { type ExerciseKind, exerciseKinds } from './exercise.ts'
import { numberText, readNumber } from './luck.ts'

/** Which exercise an address leads to. */
export interface Spot {
  readonly kind: ExerciseKind
  readonly number: number
}

/** The number that stands on the page as it is printed, and where everyone begins. */
export const firstNumber = 407

const mostCharacters = 60

/** What stands after the # of an address: 'wrong-repeat-0407'. What is not understood is taken from `otherwise`. */
export function readSpot(hash: unknown, otherwise: Spot): Spot {
  const text = typeof hash === 'string' && hash.length <= mostCharacters ? hash.replace(/^#/, '') : ''
  const parts = /^([a-z-]+?)(?:-(\d{4}))?$/.exec(text)
  const kind = exerciseKinds.find((one) => one === parts?.[1])
  return kind ? { kind, number: readNumber(parts?.[2]) ?? otherwise.number } : otherwise
}

/** The part of an address after the #. */
export const spotText = ({ kind, number }: Spot): string => `${kind}-${numberText(number)}`
