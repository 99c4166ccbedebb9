import type { Fabric, FabricLayout } from '../fabric.ts'
import { at } from './at.ts'
import { gridOf } from './grid.ts'
import type { Mesh } from './mesh.ts'
import type { Tension } from './tension.ts'

/** A grid to start from, x and y by turns. */
export function gridPlaces(mesh: Mesh, { width, height }: Tension): Float64Array {
  const { x, y } = gridOf(mesh, width, height)
  const places = new Float64Array(2 * mesh.nodes)
  for (let node = 0; node < mesh.nodes; node++) {
    places[2 * node] = at(x, node)
    places[2 * node + 1] = at(y, node)
  }
  return places
}

/** Places as another layout has them; what that does not have comes as near as it hangs. */
export function placesFrom(mesh: Mesh, fabric: Fabric, start: FabricLayout, tension: Tension): Float64Array {
  const grid = gridPlaces(mesh, tension)
  const places = new Float64Array(2 * mesh.nodes).fill(Number.NaN)
  const put = (node: number, x: number, y: number): void => {
    places[2 * node] = x
    places[2 * node + 1] = y
  }
  const had = Math.min(start.baseX.length, fabric.loops.length)
  for (let id = 0; id < had; id++) {
    for (const node of at(mesh.heads, id)) put(node, at(start.headX, id), at(start.headY, id))
  }
  for (let id = 0; id < had; id++) put(at(mesh.base, id), at(start.baseX, id), at(start.baseY, id))
  // A slipped loop passes its rows in even steps.
  const passing = Map.groupBy(
    mesh.uprights.filter(({ kind, loop }) => kind === 'slipped' && loop < had),
    ({ loop }) => loop,
  )
  for (const [id, parts] of passing) {
    for (const [i, { top }] of parts.entries()) {
      const t = (i + 1) / (parts.length + 1)
      const along = (base: Float64Array, head: Float64Array): number =>
        at(base, id) + t * (at(head, id) - at(base, id))
      put(top, along(start.baseX, start.headX), along(start.baseY, start.headY))
    }
  }
  // Node by node from the cast-on up: over what a node stands on, or as far from its neighbour as in the grid.
  for (const [from, to] of hangings(mesh)) {
    if (Number.isNaN(at(places, 2 * from)) || !Number.isNaN(at(places, 2 * to))) continue
    const shift = (e: 0 | 1): number =>
      at(places, 2 * from + e) + at(grid, 2 * to + e) - at(grid, 2 * from + e)
    put(to, shift(0), shift(1))
  }
  for (let i = 0; i < places.length; i++) if (Number.isNaN(at(places, i))) places[i] = at(grid, i)
  return places
}

function* hangings(mesh: Mesh): Generator<readonly [number, number]> {
  for (const { foot, top } of mesh.uprights) yield [foot, top]
  for (const { left, right } of mesh.besides) yield [left, right]
  for (const { left, right } of mesh.besides.toReversed()) yield [right, left]
}
