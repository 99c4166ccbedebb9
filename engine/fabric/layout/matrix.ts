import { at } from './at.ts'
import type { Network } from './network.ts'

/**
 * A symmetric matrix of 2 × 2 blocks, one for each pair of nodes that act on each other. Where blocks stand is settled
 * once; only values change. Row by row the blocks right of the diagonal are kept, each as xx, xy, yx, yy; the diagonal
 * as xx, xy, yy. One more block at the end takes what must not count.
 */
export interface Matrix {
  readonly size: number
  readonly rowStart: Int32Array
  readonly column: Int32Array
  readonly values: Float64Array
  readonly diagonal: Float64Array
}

/** For each spring, bend and area: which blocks its pairs fill. Bends: a-b, a-c, b-c; areas: a-b, b-c, a-c. */
export interface Slots {
  readonly springs: Int32Array
  readonly bends: Int32Array
  readonly areas: Int32Array
}

/** The matrix that a network fills, empty, and where each part of it goes. */
export function matrixOf(network: Network): { readonly matrix: Matrix; readonly slots: Slots } {
  const { nodes, springs, bends, areas, held } = network
  const pairs = { springs: [springs.a, springs.b], bends: triples(bends), areas: triples(areas) } as const
  const all = [pairs.springs, ...pairs.bends, ...pairs.areas]
  const { rowStart, column } = pattern(nodes, all, held)
  const blocks = column.length
  const slotOf = (i: number, j: number): number => {
    if (at(held, i) === 1 || at(held, j) === 1) return blocks
    const [row, wanted] = i < j ? [i, j] : [j, i]
    let [low, high] = [at(rowStart, row), at(rowStart, row + 1)]
    while (low < high) {
      const middle = (low + high) >> 1
      if (at(column, middle) < wanted) low = middle + 1
      else high = middle
    }
    return low
  }
  const fill = (lists: readonly (readonly [Int32Array, Int32Array])[]): Int32Array => {
    const count = at(lists, 0)[0].length
    const slots = new Int32Array(count * lists.length)
    for (const [k, [a, b]] of lists.entries()) {
      for (let s = 0; s < count; s++) slots[s * lists.length + k] = slotOf(at(a, s), at(b, s))
    }
    return slots
  }
  return {
    matrix: {
      size: nodes, rowStart, column, values: new Float64Array(4 * (blocks + 1)), diagonal: new Float64Array(3 * nodes),
    },
    slots: { springs: fill([[springs.a, springs.b]]), bends: fill(triples(bends)), areas: fill(triples(areas)) },
  }
}

type Triple = { readonly a: Int32Array; readonly b: Int32Array; readonly c: Int32Array }

const triples = ({ a, b, c }: Triple): [Int32Array, Int32Array][] => [[a, b], [b, c], [a, c]]

/** Which blocks there are: by counting, then sorting within each row, then dropping what stands twice. */
function pattern(nodes: number, lists: readonly (readonly Int32Array[])[], held: Uint8Array): { rowStart: Int32Array; column: Int32Array } {
  const count = new Int32Array(nodes + 1)
  const each = (use: (row: number, column: number) => void): void => {
    for (const [a, b] of lists) {
      if (a === undefined || b === undefined) continue
      for (let s = 0; s < a.length; s++) {
        const [i, j] = [at(a, s), at(b, s)]
        if (at(held, i) === 0 && at(held, j) === 0) use(Math.min(i, j), Math.max(i, j))
      }
    }
  }
  each((row) => {
    count[row + 1] = at(count, row + 1) + 1
  })
  for (let row = 0; row < nodes; row++) count[row + 1] = at(count, row + 1) + at(count, row)
  const next = count.slice()
  const all = new Int32Array(at(count, nodes))
  each((row, column) => {
    const place = at(next, row)
    all[place] = column
    next[row] = place + 1
  })
  return withoutDoubles(nodes, count, all)
}

function withoutDoubles(nodes: number, start: Int32Array, all: Int32Array): { rowStart: Int32Array; column: Int32Array } {
  const rowStart = new Int32Array(nodes + 1)
  let end = 0
  for (let row = 0; row < nodes; row++) {
    const columns = all.subarray(at(start, row), at(start, row + 1)).sort()
    let last = -1
    for (let k = 0; k < columns.length; k++) {
      const column = at(columns, k)
      if (column === last) continue
      last = column
      all[end++] = column
    }
    rowStart[row + 1] = end
  }
  return { rowStart, column: all.slice(0, end) }
}
