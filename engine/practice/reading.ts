import type { WrongPiece, WrongRow } from '../mistakes/index.ts'
import type { Loop, LoopId, WorkedPattern } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'

/** A row to be read: a worked piece, which of its rows, and the loops between its markers, from the right. */
export interface Readable {
  readonly worked: WorkedPattern
  readonly index: number
  readonly counts: readonly number[]
  readonly leftward: boolean
  /** Sections below which a loop hangs free, or in which a strand lies round others. */
  readonly fallen: ReadonlySet<number>
  readonly belted: ReadonlySet<number>
}

const isHole = (loop: Loop | undefined): boolean =>
  loop !== undefined && stitch(loop.stitch).family === 'yarn over'

/** Which of the loops gathered in one lies in front, as the right side shows them. */
function frontWords({ worked, index, leftward }: Readable, loop: Loop): string {
  const taken = (worked.rows[index]?.steps[loop.step]?.taken ?? []).filter((id) => loop.parents.includes(id))
  const at = taken.indexOf(loop.parents[0] ?? -1)
  if (at > 0 && at < taken.length - 1) return 'a middle one in front'
  return (at === 0) === leftward ? 'the right one in front' : 'the left one in front'
}

function loopWords(row: Readable, id: LoopId): string {
  const { worked, index } = row
  const loop = worked.loops[id]
  if (!loop) return 'nothing'
  if (loop.row !== index) return isHole(loop) ? 'old hole, slipped' : 'stitch of the row below, slipped'
  if (isHole(loop)) return loop.mount === 'turned' ? 'hole, its strand laid the other way' : 'hole'
  const twisted = loop.twisted.includes(true) ? ', legs crossed' : ''
  if (loop.parents.length > 1)
    return `${loop.parents.length} gathered, ${frontWords(row, loop)}${loop.face === 'purl' ? ', a bump' : ''}${twisted}`
  if (loop.parents.length === 0) return 'a stitch out of the strand'
  const over = isHole(worked.loops[loop.parents[0] ?? -1]) ? ' in a hole' : ''
  return `${loop.face === 'knit' ? 'smooth' : 'bump'}${over}${twisted}`
}

/** The loops of a row between two markers as the eye takes them in, from the right, seen from the right side. */
export function readingOf(row: Readable, section: number): string {
  const after = row.worked.rows[row.index]?.after ?? []
  const fromRight = row.leftward ? after : after.toReversed()
  const start = row.counts.slice(0, section).reduce((sum, count) => sum + count, 0)
  const ids = fromRight.slice(start, start + (row.counts[section] ?? 0))
  const told: { words: string; times: number }[] = []
  for (const id of ids) {
    const words = loopWords(row, id)
    const last = told.at(-1)
    if (last?.words === words) last.times++
    else told.push({ words, times: 1 })
  }
  const parts = told.map(({ words, times }) => (times === 1 ? words : `${times} × ${words}`))
  if (row.fallen.has(section)) parts.push('below it a loop on no needle')
  if (row.belted.has(section)) parts.push('a strand round two of them')
  return parts.join(' · ')
}

/** A wrong row to be read, with what hangs loose in it. */
export function wrongReadable({ worked }: WrongPiece, row: WrongRow, leftward: boolean): Readable {
  const of = (kind: 'fall' | 'lift'): ReadonlySet<number> =>
    new Set(row.acts.flatMap(({ deed, section }) => (deed.do === kind ? [section] : [])))
  return { worked, index: row.index, counts: row.counts, leftward, fallen: of('fall'), belted: of('lift') }
}

export const rightReadable = (
  worked: WorkedPattern,
  index: number,
  counts: readonly number[],
  leftward: boolean,
): Readable => ({ worked, index, counts, leftward, fallen: new Set(), belted: new Set() })
