import type { LoopLabel } from '../drawing/index.ts'
import { type Loop, type LoopId, needlesAfter, type WorkedPattern } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'

const isHole = (loop: Loop): boolean => stitch(loop.stitch).family === 'yarn over'

/** A row's loops from the right edge to the left, as the right side shows them. */
function fromTheRight(worked: WorkedPattern, rowIndex: number): readonly LoopId[] {
  const row = worked.rows[rowIndex]
  if (!row) return []
  return row.side === 'RS' ? row.after : [...row.after].reverse()
}

/**
 * The loop of row `rowIndex` that a loop stands on. Where it was drawn through several, the way goes down through the
 * one on the given side, seen from the right side. Null where the way ends before.
 */
function ancestorIn(
  worked: WorkedPattern,
  id: LoopId | undefined,
  rowIndex: number,
  side: 'left' | 'right',
): LoopId | null {
  let loop = id === undefined ? undefined : worked.loops[id]
  while (loop && loop.row > rowIndex) {
    const below = fromTheRight(worked, loop.row - 1)
    const places = loop.parents.map((parent) => below.indexOf(parent)).filter((place) => place >= 0)
    const parent =
      places.length > 0 ? below[side === 'left' ? Math.max(...places) : Math.min(...places)] : loop.parents[0]
    loop = parent === undefined ? undefined : worked.loops[parent]
  }
  return loop && loop.row === rowIndex ? loop.id : null
}

const rowWords = (worked: WorkedPattern, rowIndex: number): string => {
  const number = worked.rows[rowIndex]?.number
  return number === undefined ? 'the cast-on' : number >= 1 ? `row ${number}` : 'the set-up'
}

/** What a loop is, in words: 'the yarn over of row 3', 'a plain stitch'. */
function loopWords(worked: WorkedPattern, id: LoopId): string {
  const loop = worked.loops[id]
  if (!loop) return 'a loop'
  if (loop.row < 0) return 'a cast-on loop'
  const s = stitch(loop.stitch)
  if (s.family === 'plain') return 'a plain stitch'
  return `the ${s.name.length > 20 ? s.us : s.name} of ${rowWords(worked, loop.row)}`
}

/** The newest row below `rowIndex` that has a hole in it. */
function rowWithHoles(worked: WorkedPattern, rowIndex: number): number | null {
  for (let below = rowIndex - 1; below >= 0; below--) {
    if (
      worked.rows[below]?.after.some(
        (id) => worked.loops[id]?.row === below && isHole(worked.loops[id] as Loop),
      )
    )
      return below
  }
  return null
}

/** A hole below a new one. */
interface HoleBelow {
  readonly loop: LoopId
  /** How far the new one lies to the left of it on the right side, in stitches. */
  readonly offset: number
  readonly where: string
}

/** The hole nearest below a new one, found from the loops on either side of that; null where none is near. */
function holeBelow(worked: WorkedPattern, rowIndex: number, stepIndex: number): HoleBelow | null {
  const below = rowWithHoles(worked, rowIndex)
  const row = worked.rows[rowIndex]
  const step = row?.steps[stepIndex]
  if (below === null || !row || !step) return null
  const { left, right } = needlesAfter(worked, rowIndex, stepIndex + 1)
  const [done, waiting] = [right[right.length - 1 - step.made.length], left[0]]
  const [toTheRight, toTheLeft] = row.side === 'RS' ? [done, waiting] : [waiting, done]
  const order = fromTheRight(worked, below)
  const beside = [
    ancestorIn(worked, toTheRight, below, 'left'),
    ancestorIn(worked, toTheLeft, below, 'right'),
  ]
  const places = beside.flatMap((id) => (id === null ? [] : [order.indexOf(id)]))
  if (places.length === 0) return null
  const here = places.reduce((sum, place) => sum + place, 0) / places.length
  const holes = order.flatMap((id, place) =>
    worked.loops[id]?.row === below && isHole(worked.loops[id] as Loop) ? [place] : [],
  )
  const nearest = holes.reduce<number | null>(
    (best, place) => (best === null || Math.abs(place - here) < Math.abs(best - here) ? place : best),
    null,
  )
  const loop = order[nearest ?? -1]
  if (nearest === null || loop === undefined || Math.abs(nearest - here) > 4) return null
  return { loop, offset: here - nearest, where: rowWords(worked, below) }
}

/** Where a new hole sits against the holes below it. */
function holeCheck(worked: WorkedPattern, rowIndex: number, stepIndex: number): string | null {
  const hole = holeBelow(worked, rowIndex, stepIndex)
  return hole && `Look below: ${offsetWords(hole.offset, hole.where)}`
}

/** `offset` is counted in stitches toward the left, on the right side. */
function offsetWords(offset: number, where: string): string {
  const away = Math.abs(offset)
  if (away < 0.25) return `this hole sits straight above the hole of ${where}.`
  const side = offset > 0 ? 'left' : 'right'
  const far =
    away < 0.75 ? 'half a stitch' : away < 1.75 ? 'one stitch' : `about ${Math.round(away)} stitches`
  return `this hole sits ${far} to the ${side} of the nearest hole of ${where}, seen from the right side.`
}

/** Which loops a decrease gathers and which of them will lie in front. */
function gatherCheck(worked: WorkedPattern, rowIndex: number, stepIndex: number): string | null {
  const step = worked.rows[rowIndex]?.steps[stepIndex]
  const made = step?.made[0] === undefined ? undefined : worked.loops[step.made[0]]
  if (!step || !made || step.taken.length < 2 || step.made.length !== 1) return null
  const names = step.taken.map((id) => loopWords(worked, id))
  const front = step.taken.indexOf(made.parents[0] ?? -1)
  if (step.taken.length > 3) return `${step.taken.length} loops are gathered: ${summed(names)}.`
  const list = names.map((name, i) => `${['first', 'second', 'third'][i]} ${name}`).join(', ')
  const lies =
    front < 0 ? '' : ` On the right side the ${['first', 'second', 'third'][front]} of them lies in front.`
  return `In the order of the needle: ${list}.${lies}`
}

const summed = (names: readonly string[]): string => {
  const counts = new Map<string, number>()
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1)
  return [...counts]
    .map(([name, n]) => (n === 1 ? name : `${n} × ${name.replace(/^(a|the) /, '')}`))
    .join(', ')
}

/** What a plain stitch is worked into, where that is not plain: a landmark in the row below. */
function landmarkBelow(worked: WorkedPattern, rowIndex: number, stepIndex: number): Loop | null {
  const step = worked.rows[rowIndex]?.steps[stepIndex]
  const below = step?.taken.length === 1 ? worked.loops[step.taken[0] ?? -1] : undefined
  if (!below || below.row < 0) return null
  const { family } = stitch(below.stitch)
  return ['yarn over', 'decrease', 'double decrease', 'gathering'].includes(family) ? below : null
}

function landmarkCheck(worked: WorkedPattern, rowIndex: number, stepIndex: number): string | null {
  const below = landmarkBelow(worked, rowIndex, stepIndex)
  return below && `This stitch goes into ${loopWords(worked, below.id)}.`
}

/** What to look at in the work at this step, or null where there is nothing to see. Found from the loops alone. */
export function lookCheckAt(worked: WorkedPattern, rowIndex: number, stepIndex: number): string | null {
  const step = worked.rows[rowIndex]?.steps[stepIndex]
  if (!step) return null
  if (stitch(step.stitch).family === 'yarn over') return holeCheck(worked, rowIndex, stepIndex)
  return gatherCheck(worked, rowIndex, stepIndex) ?? landmarkCheck(worked, rowIndex, stepIndex)
}

/** The loop that the look-check speaks of, with a few words for a picture; null where it speaks of none by itself. */
export function landmarkAt(worked: WorkedPattern, rowIndex: number, stepIndex: number): LoopLabel | null {
  const step = worked.rows[rowIndex]?.steps[stepIndex]
  if (!step) return null
  if (stitch(step.stitch).family === 'yarn over') {
    const hole = holeBelow(worked, rowIndex, stepIndex)
    return hole && { loop: hole.loop, label: `the hole of ${hole.where}` }
  }
  if (gatherCheck(worked, rowIndex, stepIndex) !== null) return null
  const below = landmarkBelow(worked, rowIndex, stepIndex)
  return below && { loop: below.id, label: loopWords(worked, below.id).replace(/^the /, '') }
}
