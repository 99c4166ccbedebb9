import type { Fabric, FabricLoopId, Yarn } from '../fabric/index.ts'
import { type FabricMarks, isDecrease, isEyelet } from './fabric-marks.ts'

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

export const fabricTitle = ({ side }: Yarn): string => `The knitted fabric, ${side} side`

/** The picture in sentences, from the loops that it is drawn from. Rows are counted from the cast-on up. */
export function fabricWords({ fabric, side }: Yarn, marks: FabricMarks): string {
  const widest = Math.max(0, ...fabric.lines.map(({ loops }) => loops.length))
  const rows = fabric.courses.length - 1
  const live = fabric.loops.filter((loop) => loop.live).length
  const top = live > 0 ? `${count(live, 'loop')} on the needle at the top` : 'bound off at the top'
  const size = `The ${side} side of ${count(rows, 'row')}, at most ${count(widest, 'loop')} wide, cast on at the bottom, ${top}.`
  return [size, ...rowWords(fabric, side), ...markWords(marks)].join(' ')
}

/** More rows than these are told together. */
const mostRows = 12

function rowWords(fabric: Fabric, side: Yarn['side']): string[] {
  const busy = fabric.courses.flatMap((course, row) => {
    const told = courseWords(fabric, course, side)
    return told === '' ? [] : [`Row ${row}: ${told}.`]
  })
  if (busy.length <= mostRows) return busy
  const told = courseWords(fabric, fabric.courses.flat(), side)
  return [`In ${busy.length} of the rows together: ${told}.`]
}

function courseWords(fabric: Fabric, course: readonly FabricLoopId[], side: Yarn['side']): string {
  const overs = course.filter((id) => isEyelet(fabric, id))
  // The turns of a double yarn over lie side by side over one hole.
  const holes = overs.filter((id) => !overs.includes(course[course.indexOf(id) - 1] ?? -1)).length
  const gathered = course.filter((id) => isDecrease(fabric, id))
  const tops = Map.groupBy(gathered, (id) => topWords(fabric, id, side))
  const decreases = [...tops].map(([top, ids]) => `${count(ids.length, 'decrease')} with ${top}`)
  return [
    ...(holes > 0 ? [`${count(holes, 'hole')} under ${count(overs.length, 'yarn over')}`] : []),
    ...decreases,
  ].join(', ')
}

/** Which of its parents a decrease has on top, as it is seen. */
function topWords(fabric: Fabric, id: FabricLoopId, side: Yarn['side']): string {
  const loop = fabric.loops[id]
  const line = fabric.lines[(loop?.row ?? 0) + 1]
  const parents = side === 'right' ? loop?.parents : loop?.parents.toReversed()
  const places = (parents ?? []).map((parent) => line?.met.indexOf(parent) ?? -1)
  const [top = 0] = places
  const [first, last] = [Math.min(...places), Math.max(...places)]
  const [leftmost, rightmost] = side === 'right' ? [first, last] : [last, first]
  return top === leftmost
    ? 'the left loop on top'
    : top === rightmost
      ? 'the right loop on top'
      : 'a middle loop on top'
}

function markWords(marks: FabricMarks): string[] {
  const told = [
    [marks.yarnOvers, 'a ring in each hole and dots along its yarn over'],
    [marks.decreases, 'bars across the loop on top of each decrease'],
    [marks.edges, 'a line along the edge stitches'],
    [marks.repeat, 'a bracket under one repeat'],
  ] as const
  const words = told.flatMap(([ids, text]) => (ids !== undefined && ids.length > 0 ? [text] : []))
  return words.length === 0 ? [] : [`Marked: ${words.join('; ')}.`]
}
