import { at } from './at.ts'
import type { Mesh } from './mesh.ts'

/** Where the nodes are. */
export interface Places {
  readonly x: Float64Array
  readonly y: Float64Array
}

/** A plain grid: each line with its nodes `width` apart, over the nodes that they stand on as well as that goes. */
export function gridOf(mesh: Mesh, width: number, height: number): Places {
  const places = {
    x: new Float64Array(mesh.nodes).fill(Number.NaN),
    y: new Float64Array(mesh.nodes).fill(Number.NaN),
  }
  const feet = feetOf(mesh)
  for (const line of mesh.lines) placeLine(line, feet, places, width, height)
  placeRest(mesh, places, width, height)
  return places
}

/** By node: the nodes that it stands on. */
function feetOf(mesh: Mesh): number[][] {
  const feet = Array.from({ length: mesh.nodes }, (): number[] => [])
  for (const { foot, top, kind } of mesh.uprights)
    if (kind !== 'chain' && kind !== 'held') at(feet, top).push(foot)
  return feet
}

const isPlaced = ({ x }: Places, node: number): boolean => !Number.isNaN(at(x, node))

function placeLine(
  line: readonly number[],
  feet: readonly number[][],
  places: Places,
  width: number,
  height: number,
): void {
  const { x, y } = places
  const start = startOf(line, feet, places, width)
  const rises: (number | null)[] = line.map((node) => {
    if (isPlaced(places, node)) return at(y, node)
    const under = at(feet, node).filter((foot) => isPlaced(places, foot))
    return under.length === 0 ? null : Math.max(...under.map((foot) => at(y, foot))) + height
  })
  for (const [i, node] of line.entries()) {
    if (isPlaced(places, node)) continue
    x[node] = start + i * width
    y[node] = rises[i] ?? nearest(rises, i) ?? 0
  }
}

/** Where a line begins on the left: so that most loops stand over what they are drawn through, or beside what was left alone. */
function startOf(line: readonly number[], feet: readonly number[][], places: Places, width: number): number {
  const inPlace = line.findIndex((node) => isPlaced(places, node))
  if (inPlace >= 0) {
    // A row turned at its left end has its neighbour there; one turned at its right end, there.
    const place = inPlace > 0 ? inPlace : line.findLastIndex((node) => isPlaced(places, node))
    return at(places.x, at(line, place)) - place * width
  }
  const starts = line.flatMap((node, i) =>
    at(feet, node).flatMap((foot) => (isPlaced(places, foot) ? [at(places.x, foot) - i * width] : [])),
  )
  return middle(starts)
}

function middle(values: number[]): number {
  if (values.length === 0) return 0
  values.sort((a, b) => a - b)
  return (at(values, (values.length - 1) >> 1) + at(values, values.length >> 1)) / 2
}

function nearest(values: readonly (number | null)[], index: number): number | null {
  for (let away = 1; away < values.length; away++) {
    const [left, right] = [values[index - away] ?? null, values[index + away] ?? null]
    if (left !== null && right !== null) return (left + right) / 2
    if (left !== null || right !== null) return left ?? right
  }
  return null
}

/** What lies in no line: the end of a bind-off, loops on a holder and loops of another piece. */
function placeRest(mesh: Mesh, places: Places, width: number, height: number): void {
  const { x, y } = places
  const middle = middleOf(places)
  let last: { x: number; y: number } | null = null
  for (const { foot, top, kind } of mesh.uprights) {
    if (isPlaced(places, foot) === isPlaced(places, top)) continue
    if (isPlaced(places, foot)) {
      const side = kind === 'chain' ? -Math.sign(middle - at(x, foot)) || 1 : 0
      x[top] = at(x, foot) + side * width
      y[top] = at(y, foot) + (kind === 'chain' ? 0 : height)
    } else {
      x[foot] = at(x, top) - (Math.sign(middle - at(x, top)) || 1) * height
      y[foot] = at(y, top)
      last = { x: at(x, foot), y: at(y, foot) }
    }
  }
  for (const { foot, top } of mesh.uprights) {
    if (isPlaced(places, foot)) continue
    last = { x: last?.x ?? -height, y: (last?.y ?? 0) + width }
    x[foot] = last.x
    y[foot] = last.y
    x[top] = last.x + (Math.sign(middle - last.x) || 1) * height
    y[top] = last.y
  }
}

function middleOf({ x }: Places): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of x) {
    if (value < least) least = value
    if (value > most) most = value
  }
  return (least + most) / 2
}
