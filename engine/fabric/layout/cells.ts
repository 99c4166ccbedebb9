import { at } from './at.ts'
import type { MeshCell, Upright } from './mesh.ts'

/** Which stretch of the upper line belongs to a foot. */
interface Stretch {
  readonly from: number
  readonly to: number
}

/**
 * The cells between the nodes met by a row (`feet`) and the nodes of the line that it left (`line`), both from the left.
 * `uprights` are the row's own; those that run across others are marked.
 */
export function cellsBetween(
  feet: readonly number[],
  line: readonly number[],
  uprights: readonly Upright[],
): MeshCell[] {
  const place = new Map(line.map((node, index) => [node, index]))
  const standing = uprights.filter(
    ({ top, kind }) => kind !== 'below' && kind !== 'chain' && kind !== 'held' && place.has(top),
  )
  const spans = inOrder(feet, spansOf(feet, standing, place))
  markAside(feet, spans, standing, place)
  return feet.flatMap((foot, i) => {
    const [span, left] = [spans[i] ?? null, spans[i - 1] ?? null]
    if (span === null) return []
    const spread: MeshCell[] = []
    for (let j = span.from; j < span.to; j++)
      spread.push({ kind: 'spread', nodes: [foot, at(line, j + 1), at(line, j)], over: [] })
    return left === null
      ? spread
      : [...spread, ...cellBetween([at(feet, i - 1), foot], [left.to, span.from], line)]
  })
}

function cellBetween(
  [a, b]: readonly [number, number],
  [from, to]: readonly [number, number],
  line: readonly number[],
): MeshCell[] {
  const [d, c] = [at(line, from), at(line, to)]
  const over = line.slice(from + 1, to)
  if (a === d && b === c) return []
  if (a === d) return [{ kind: 'step', nodes: [a, b, c], over }]
  if (b === c) return [{ kind: 'step', nodes: [a, b, d], over }]
  if (c === d) return [{ kind: 'gather', nodes: [a, b, c], over }]
  return [{ kind: 'plain', nodes: [a, b, c, d], over }]
}

function spansOf(
  feet: readonly number[],
  uprights: readonly Upright[],
  place: ReadonlyMap<number, number>,
): (Stretch | null)[] {
  const tops = Map.groupBy(uprights, ({ foot }) => foot)
  return feet.map((node) => {
    const places = (tops.get(node)?.map(({ top }) => top) ?? [node]).flatMap((top) => place.get(top) ?? [])
    return places.length === 0 ? null : { from: Math.min(...places), to: Math.max(...places) }
  })
}

/** How far each upright's top lies from where the cells put its foot. */
function markAside(
  feet: readonly number[],
  spans: readonly (Stretch | null)[],
  uprights: readonly Upright[],
  place: ReadonlyMap<number, number>,
): void {
  const spanOf = new Map(feet.map((node, i) => [node, spans[i] ?? null]))
  for (const upright of uprights) {
    const [span, top] = [spanOf.get(upright.foot) ?? null, place.get(upright.top)]
    if (span !== null && top !== undefined) upright.aside = Math.max(0, span.from - top, top - span.to)
  }
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
