import type { Loop, WorkedPattern, WorkedRow } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'

/** One loop of a row as the eye takes it in. */
export interface Token {
  readonly what: 'hole' | 'decrease' | 'plain' | 'made' | 'slipped'
  /** Loops that it gathers. */
  readonly wide: number
  /** Of what it gathers: which lies in front, seen from the right side. */
  readonly front: 'right' | 'middle' | 'left' | null
  readonly twisted: boolean
  readonly face: 'knit' | 'purl'
  /** It stands on a yarn over and twists it. */
  readonly shuts: boolean
  /** Its leading leg is behind. */
  readonly turned: boolean
}

const isHole = (loop: Loop | undefined): boolean =>
  loop !== undefined && stitch(loop.stitch).family === 'yarn over'

function frontOf(row: WorkedRow, loop: Loop, leftward: boolean): Token['front'] {
  const taken = (row.steps[loop.step]?.taken ?? []).filter((id) => loop.parents.includes(id))
  const at = taken.indexOf(loop.parents[0] ?? -1)
  if (taken.length < 2 || at < 0) return null
  if (at > 0 && at < taken.length - 1) return 'middle'
  return (at === 0) === leftward ? 'right' : 'left'
}

function tokenOf(worked: WorkedPattern, row: WorkedRow, index: number, id: number, leftward: boolean): Token {
  const loop = worked.loops[id] as Loop
  const over = loop.parents.findIndex((parent) => isHole(worked.loops[parent]))
  const what =
    loop.row !== index
      ? 'slipped'
      : isHole(loop)
        ? 'hole'
        : loop.parents.length > 1
          ? 'decrease'
          : loop.parents.length === 0
            ? 'made'
            : 'plain'
  return {
    what,
    wide: loop.parents.length,
    front: what === 'decrease' ? frontOf(row, loop, leftward) : null,
    twisted: loop.twisted.includes(true),
    face: loop.face,
    shuts: over >= 0 && loop.twisted[over] === true,
    turned: loop.mount === 'turned',
  }
}

/** The loops of a worked row between its markers, from the right, each as the eye takes it in. */
export function tokensOf(
  worked: WorkedPattern,
  index: number,
  counts: readonly number[],
  leftward: boolean,
): Token[][] {
  const row = worked.rows[index]
  if (!row) return counts.map(() => [])
  const fromRight = leftward ? row.after : [...row.after].reverse()
  let at = 0
  return counts.map((count) => {
    const ids = fromRight.slice(at, at + count)
    at += count
    return ids.map((id) => tokenOf(worked, row, index, id, leftward))
  })
}

export const sameToken = (a: Token, b: Token): boolean =>
  a.what === b.what &&
  a.wide === b.wide &&
  a.front === b.front &&
  a.twisted === b.twisted &&
  a.face === b.face &&
  a.shuts === b.shuts &&
  a.turned === b.turned
