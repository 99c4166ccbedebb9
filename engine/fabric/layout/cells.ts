import { at } from './at.ts'
import type { Upright } from './mesh.ts'

/** What lies between neighbours of one line and what was made of them. */
export interface MeshCell {
  /** 'gather': a decrease brings two loops to one place; 'spread': an increase; 'step': where a row was turned. */
  readonly kind: 'plain' | 'gather' | 'spread' | 'step'
  /** Anticlockwise from the lower left; four in a plain cell, else three. */
  readonly nodes: readonly number[]
  /** Nodes on the cell's upper side that hang from nothing below, from the left. */
  readonly over: readonly number[]
}

/**
 * The cells between the nodes met by a row (`feet`) and the nodes of the line that it left (`line`), both from the left.
 * Nodes from `known` on are the row's own.
 */
export function cellsBetween(feet: readonly number[], line: readonly number[], uprights: readonly Upright[], known: number): MeshCell[] {
  const spans = inOrder(feet, spansOf(feet, line, uprights, known))
  const cells: MeshCell[] = []
  for (const [i, foot] of feet.entries()) {
    const span = spans[i]
    if (span === undefined || span === null) continue
    for (let j = span.from; j < span.to; j++) cells.push({ kind: 'spread', nodes: [foot, at(line, j + 1), at(line, j)], over: [] })
    const left = spans[i - 1]
    if (left === undefined || left === null) continue
    const [lower, a, b] = [at(feet, i - 1), at(line, left.to), at(line, span.from)]
    const over = line.slice(left.to + 1, span.from)
    if (lower === a && foot === b) continue
    if (lower === a || foot === b) cells.push({ kind: 'step', nodes: lower === a ? [lower, foot, b] : [lower, foot, a], over })
    else if (a === b) cells.push({ kind: 'gather', nodes: [lower, foot, a], over })
    else cells.push({ kind: 'plain', nodes: [lower, foot, b, a], over })
  }
  return cells
}

/** Which stretch of the upper line belongs to a foot. */
interface Stretch {
  from: number
  to: number
}

function spansOf(feet: readonly number[], line: readonly number[], uprights: readonly Upright[], known: number): (Stretch | null)[] {
  const place = new Map(line.map((node, index) => [node, index]))
  const number = new Map(feet.map((node, index) => [node, index]))
  const spans: (Stretch | null)[] = feet.map((node) => {
    const same = place.get(node)
    return same === undefined ? null : { from: same, to: same }
  })
  for (let i = uprights.length - 1; i >= 0; i--) {
    const { foot, top, kind } = at(uprights, i)
    if (top < known) break
    const [f, t] = [number.get(foot), place.get(top)]
    if (f === undefined || t === undefined || kind === 'below') continue
    const span = spans[f]
    spans[f] = span ? { from: Math.min(span.from, t), to: Math.max(span.to, t) } : { from: t, to: t }
  }
  return spans
}

interface Group extends Stretch {
  readonly first: number
  last: number
}

/** Where stretches run back past one another (crossings, loops passed over several), shares them out evenly among their feet. */
function inOrder(feet: readonly number[], spans: readonly (Stretch | null)[]): (Stretch | null)[] {
  const groups: Group[] = []
  for (const [i, span] of spans.entries()) {
    if (span === null) continue
    let group: Group = { ...span, first: i, last: i }
    for (let before = groups.at(-1); before !== undefined && before.to > group.from; before = groups.at(-1)) {
      groups.pop()
      const { from, to } = group
      group = { first: before.first, last: i, from: Math.min(from, before.from), to: Math.max(to, before.to) }
    }
    groups.push(group)
  }
  const result: (Stretch | null)[] = feet.map(() => null)
  for (const group of groups) shareOut(result, group)
  return result
}

function shareOut(spans: (Stretch | null)[], { first, last, from, to }: Group): void {
  if (first === last) spans[first] = { from, to }
  else
    for (let i = first; i <= last; i++) {
      const place = from + ((i - first) * (to - from)) / (last - first)
      spans[i] = { from: Math.floor(place), to: Math.ceil(place) }
    }
}
