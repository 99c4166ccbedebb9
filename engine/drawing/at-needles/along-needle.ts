import type { Fabric, FabricLoopId } from '../../fabric/index.ts'

/** How strongly a loop stays over those that it was drawn through, against one stitch width to each neighbour. */
const loyalty = 0.3

/** Two loops of yarn need so much of a needle, in stitch widths. */
const nearest = 0.66

/**
 * Where the loops of a fabric's last line hang along the needle, by loop, from the left as seen from the right side.
 * Loops slide on a needle: over a row that takes many and makes few they hang farther apart, and nearer where it makes many.
 */
export function placesAlong({ lines, loops }: Fabric): ReadonlyMap<FabricLoopId, number> {
  let places = new Map<FabricLoopId, number>()
  for (const line of lines) {
    const wishes = line.loops.map((id): number | null => {
      const own = places.get(id)
      if (own !== undefined) return own
      const under = (loops[id]?.parents ?? []).flatMap((parent) => places.get(parent) ?? [])
      return under.length === 0 ? null : under.reduce((sum, x) => sum + x, 0) / under.length
    })
    const xs = settled(wishes)
    places = new Map(line.loops.map((id, i) => [id, xs[i] ?? i]))
  }
  return places
}

/** The balance between neighbours and wishes: a row of linear equations, each with its neighbours only. */
function settled(wishes: readonly (number | null)[]): number[] {
  const count = wishes.length
  if (!wishes.some((wish) => wish !== null)) return wishes.map((_, i) => i)
  const [upper, right]: [number[], number[]] = [[], []]
  for (const [i, wish] of wishes.entries()) {
    const [before, after] = [i > 0 ? 1 : 0, i < count - 1 ? 1 : 0]
    const pull = wish === null ? 0 : loyalty
    const own = before + after + pull + before * (upper[i - 1] ?? 0)
    const sum = before - after + pull * (wish ?? 0) + before * (right[i - 1] ?? 0)
    upper.push(-after / own)
    right.push(sum / own)
  }
  const xs: number[] = []
  for (let i = count - 1; i >= 0; i--) xs[i] = (right[i] ?? 0) - (upper[i] ?? 0) * (xs[i + 1] ?? 0)
  for (let i = 1; i < count; i++) xs[i] = Math.max(xs[i] ?? 0, (xs[i - 1] ?? 0) + nearest)
  return xs
}
