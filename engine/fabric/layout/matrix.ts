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
  readonly values: Float32Array
  readonly diagonal: Float64Array
}

/** For each spring its block; for each bend and each area those of a and b, of b and c, of a and c. */
export interface Slots {
  readonly springs: Int32Array
  readonly bends: Int32Array
  readonly areas: Int32Array
}

/** The matrix that a network fills, empty, and where each part of it goes. */
export function matrixOf(network: Network): { readonly matrix: Matrix; readonly slots: Slots } {
  const pairs = pairsOf(network)
  const { rowStart, column, slots } = placed(network.nodes, pairs)
  const [springs, bends] = [network.springs.a.length, 3 * network.bends.a.length]
  return {
    matrix: {
      size: network.nodes,
      rowStart,
      column,
      values: new Float32Array(4 * (column.length + 1)),
      diagonal: new Float64Array(3 * network.nodes),
    },
    slots: {
      springs: slots.subarray(0, springs),
      bends: slots.subarray(springs, springs + bends),
      areas: slots.subarray(springs + bends),
    },
  }
}

/** Nodes that act on each other, the lower number in `row`; -1 where one of them is held and the pair does not count. */
interface Pairs {
  readonly row: Int32Array
  readonly column: Int32Array
}

function pairsOf({ springs, bends, areas, held }: Network): Pairs {
  const count = springs.a.length + 3 * bends.a.length + 3 * areas.a.length
  const pairs = { row: new Int32Array(count), column: new Int32Array(count) }
  let next = 0
  const add = (i: number, j: number): void => {
    const counts = at(held, i) === 0 && at(held, j) === 0
    pairs.row[next] = counts ? Math.min(i, j) : -1
    pairs.column[next++] = Math.max(i, j)
  }
  for (let s = 0; s < springs.a.length; s++) add(at(springs.a, s), at(springs.b, s))
  for (const { a, b, c } of [bends, areas]) {
    for (let s = 0; s < a.length; s++) {
      add(at(a, s), at(b, s))
      add(at(b, s), at(c, s))
      add(at(a, s), at(c, s))
    }
  }
  return pairs
}

interface Placed {
  readonly rowStart: Int32Array
  readonly column: Int32Array
  readonly slots: Int32Array
}

/** Sorts pairs into rows and gives each a block, the same for the same pair. */
function placed(nodes: number, pairs: Pairs): Placed {
  const { start, order } = byRow(nodes, pairs.row)
  const rowStart = new Int32Array(nodes + 1)
  const column = new Int32Array(order.length)
  const slots = new Int32Array(pairs.row.length).fill(-1)
  // By column: the block that it had last. An older row's lies before this row's first.
  const last = new Int32Array(nodes).fill(-1)
  let end = 0
  for (let row = 0; row < nodes; row++) {
    const first = end
    for (let k = start[row] as number; k < (start[row + 1] as number); k++) {
      const pair = order[k] as number
      const wanted = pairs.column[pair] as number
      if ((last[wanted] as number) < first) {
        last[wanted] = end
        column[end++] = wanted
      }
      slots[pair] = last[wanted] as number
    }
    rowStart[row + 1] = end
  }
  for (let pair = 0; pair < slots.length; pair++) if (slots[pair] === -1) slots[pair] = end
  return { rowStart, column: column.slice(0, end), slots }
}

/** The numbers of all pairs that count, row by row. */
function byRow(nodes: number, row: Int32Array): { readonly start: Int32Array; readonly order: Int32Array } {
  const start = new Int32Array(nodes + 1)
  for (const r of row) if (r >= 0) start[r + 1] = (start[r + 1] as number) + 1
  for (let r = 0; r < nodes; r++) start[r + 1] = (start[r + 1] as number) + (start[r] as number)
  const next = start.slice()
  const order = new Int32Array(start[nodes] as number)
  for (let pair = 0; pair < row.length; pair++) {
    const r = row[pair] as number
    if (r < 0) continue
    order[next[r] as number] = pair
    next[r] = (next[r] as number) + 1
  }
  return { start, order }
}
