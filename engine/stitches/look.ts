import { numbersTo } from './effect.ts'
import type { Effect, Made, Twist } from './stitch.ts'

/** From where a stitch is looked at: from the right side when worked on either side, or that in a mirror. */
export interface View {
  readonly workedOn: 'RS' | 'WS'
  readonly mirrored: boolean
}

/**
 * How alike two looks must be: loop for loop; but for the way a loop is twisted; but for twists; only the
 * loop on top; or, where so many are gathered that no single one shows, only which ones they are.
 */
export const likenesses = [
  'exact',
  'twisted either way',
  'but for twists',
  'same on top',
  'as a knot',
] as const
export type Likeness = (typeof likenesses)[number]

/**
 * What can be seen of a stitch in the fabric, as a text to compare. From behind and in a mirror the order of
 * the loops turns over; from behind the faces swap too, in a mirror the twists do.
 */
export function lookOf(effect: Effect, view: View, likeness: Likeness): string {
  const behind = view.workedOn === 'WS'
  const reversed = behind !== view.mirrored
  const size = effect.takes + effect.held
  const at = (number: number): number => (reversed ? size + 1 - number : number)
  const seen: Seen = { at, behind, reversed, mirrored: view.mirrored, likeness }
  const loops = effect.chain === null ? effect.made : [effect.chain]
  const inOrder = reversed ? loops.toReversed() : loops
  return [
    `${effect.takes}+${effect.held}-${effect.parked}`,
    isLoose(likeness) ? '' : heldIn(effect).map(at).sort().join(),
    effect.boundOff.map(at).sort().join(),
    frontIn(effect, behind).map(at).sort().join(),
    ...inOrder.map((made) => loopLook(made, seen)),
  ].join('; ')
}

interface Seen {
  readonly at: (number: number) => number
  readonly behind: boolean
  readonly reversed: boolean
  readonly mirrored: boolean
  readonly likeness: Likeness
}

/** From which end of the stitch a held loop comes. */
const heldIn = (effect: Effect): number[] => numbersTo(effect.held).map((n) => effect.takes + n)

/** What travels in front for the knitter travels behind as seen from the other side. */
const frontIn = ({ inFront, takes }: Effect, behind: boolean): readonly number[] =>
  behind && inFront.length > 0 ? numbersTo(takes).filter((n) => !inFront.includes(n)) : inFront

/**
 * From so many loops on a decrease is a knot: a nupp's five are the fewest that are made to look like one.
 */
const knot = 5

const isLoose = (likeness: Likeness): boolean => likeness === 'same on top' || likeness === 'as a knot'

const ignoresTwists = (likeness: Likeness): boolean => likeness === 'but for twists' || isLoose(likeness)

function loopLook(made: Made, seen: Seen): string {
  // A slipped loop keeps the face it had; a yarn over or a cast-on has none until it is worked.
  const hasFace = made.slipped === null && made.from !== 'air' && made.from !== 'castOn'
  const face = seen.behind ? { knit: 'purl', purl: 'knit' }[made.face] : made.face
  return [
    made.from,
    made.slipped === null ? '' : `slipped ${seen.at(made.slipped)}`,
    hasFace ? face : '',
    made.mount,
    stackLook(made, seen),
    twistLook(made.strandTwist, seen),
    belowLook(made, seen),
    floatLook(made, seen),
    made.banded ? 'banded' : '',
    made.beaded ? 'beaded' : '',
  ].join(' ')
}

function stackLook({ through, twists }: Made, seen: Seen): string {
  const numbers = through.map(seen.at)
  if (seen.likeness === 'same on top')
    return numbers[0] === undefined ? '' : `${numbers[0]} of ${numbers.length}`
  if (seen.likeness === 'as a knot' && numbers.length >= knot)
    return `${Math.min(...numbers)} to ${Math.max(...numbers)}`
  return numbers.map((number, i) => number + twistLook(twists[i] ?? null, seen)).join('<')
}

function twistLook(twist: Twist | null, { likeness, mirrored }: Seen): string {
  if (twist === null || ignoresTwists(likeness)) return ''
  if (likeness === 'twisted either way') return 'twisted'
  return mirrored ? { left: 'right', right: 'left' }[twist] : twist
}

const belowLook = ({ below }: Made, { reversed }: Seen): string =>
  below === null ? '' : (below === 'next') === reversed ? 'below the right' : 'below the left'

const floatLook = ({ float }: Made, { behind }: Seen): string =>
  float === null ? '' : (float === 'near') === behind ? 'float behind' : 'float in front'
