import { stitch } from '../stitches/index.ts'
import type { Item } from './pattern.ts'

export interface Totals {
  readonly takes: number
  readonly makes: number
  /** Held loops of another piece that are joined. */
  readonly held: number
}

const none: Totals = { takes: 0, makes: 0, held: 0 }
const plus = (a: Totals, b: Totals, times = 1): Totals => ({
  takes: a.takes + b.takes * times,
  makes: a.makes + b.makes * times,
  held: a.held + b.held * times,
})

/** What one item takes and makes; null where that depends on how many loops are left. */
function itemTotals(item: Item): Totals | null {
  switch (item.kind) {
    case 'stitch': {
      const { takes, makes, effect } = stitch(item.stitch)
      return plus(none, { takes, makes, held: effect.held }, item.times)
    }
    case 'group': {
      const inner = takesAndMakes(item.items)
      return inner && plus(none, inner, item.times)
    }
    case 'repeat': {
      const inner = takesAndMakes(item.items)
      return inner && item.until.kind === 'times' ? plus(none, inner, item.until.times) : null
    }
    case 'bindOff':
      if (item.count === 'all') return null
      return { takes: item.count + (item.leavesOne ? 1 : 0), makes: item.leavesOne ? 1 : 0, held: 0 }
    case 'across':
      return null
    default:
      return none
  }
}

/** What items take and make in all; null where a part of them goes as far as the loops last. */
export function takesAndMakes(items: readonly Item[]): Totals | null {
  let sum = none
  for (const item of items) {
    const one = itemTotals(item)
    if (!one) return null
    sum = plus(sum, one)
  }
  return sum
}

/** The stitch that the loop left over by a bind-off is: a knit, or a purl after a purlwise bind-off. */
export const leftByBindOff = (item: Item & { kind: 'bindOff' }): string =>
  item.stitch === 'bo p' ? 'p' : 'k'

/** Every stitch that the items name, each once, in the order of first use. */
export function stitchesUsed(items: readonly Item[], found: Set<string> = new Set()): Set<string> {
  for (const item of items) {
    if (item.kind === 'stitch' || item.kind === 'across') found.add(item.stitch)
    else if (item.kind === 'group' || item.kind === 'repeat') stitchesUsed(item.items, found)
    else if (item.kind === 'bindOff') found.add(item.stitch)
  }
  return found
}
