import type { LoopId, WorkedPattern } from '../../needles/index.ts'
import { stitch } from '../../stitches/index.ts'
import type { Moment } from './moment.ts'
import { sizes } from './sizes.ts'

/** What the picture shows between two steps, as sentences from the same loops. */
export function describe(worked: WorkedPattern, rowIndex: number, moment: Moment): string {
  const { row } = moment.sheet
  const face = row.side === 'RS' ? 'right side' : 'wrong side'
  const [done, coming] = [row.steps[moment.done - 1], row.steps[moment.done]]
  const counted = (side: 'left' | 'right') => moment[side].filter(({ id }) => id !== null)
  return [
    `You look at the ${face}.`,
    `Left needle: ${needleWords(counted('left'))}`,
    coming === undefined ? 'The row is done.' : nextWords(coming.taken.length),
    `Right needle: ${needleWords(counted('right'))}`,
    done === undefined ? '' : newWords(done.stitch, done.made, worked, rowIndex),
    moment.right[0]?.id === null ? 'The loop of the bind-off at its tip is not counted.' : '',
    `The yarn hangs ${moment.yarn === 'front' ? 'in front of the work' : 'behind the work'}.`,
  ]
    .filter((words) => words !== '')
    .join(' ')
}

const loopsWords = (n: number): string => `${n} ${n === 1 ? 'loop' : 'loops'}`

function needleWords(loops: readonly { readonly x: number }[]): string {
  const more = loops.filter(({ x }) => Math.abs(x) > sizes.reach).length
  return `${loopsWords(loops.length)}${more > 0 ? `, ${more} of them counted only` : ''}.`
}

function nextWords(takes: number): string {
  if (takes === 0) return 'The next stitch takes none of them.'
  return `The next stitch takes the ${takes === 1 ? 'first' : `first ${takes}`}, ringed and numbered.`
}

function newWords(id: string, made: readonly LoopId[], worked: WorkedPattern, rowIndex: number): string {
  const fresh = made.filter((loop) => worked.loops[loop]?.row === rowIndex).length
  const { name } = stitch(id)
  if (made.length === 0) return 'None of them is new.'
  if (fresh === 0)
    return `The newest ${made.length === 1 ? 'one came' : `${made.length} came`} over unworked: ${name}.`
  return `The newest ${made.length === 1 ? 'one is' : `${made.length} are`} from: ${name}.`
}

const swaps: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  Left: 'Right',
  Right: 'Left',
  clockwise: 'anticlockwise',
  anticlockwise: 'clockwise',
}

/** The same for a knitter who works the other way round. Faces of the work keep their names. */
export const mirroredWords = (words: string): string =>
  words.replace(
    /\b(left|right|Left|Right|clockwise|anticlockwise)\b(?! side)/g,
    (word) => swaps[word] ?? word,
  )
