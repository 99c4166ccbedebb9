import { type Item, type Pattern, type Row, takesAndMakes } from '../pattern/index.ts'
import type { StitchId } from '../stitches/index.ts'
import { type Adaptation, easy } from './adaptation.ts'
import { finished, rowsOf, setUpOf } from './make.ts'
import { refuse } from './refusal.ts'
import { stitches } from './say.ts'

export type EdgeKind = 'garter' | 'stocking' | 'slipped'

const span = { start: 0, end: 0 }
const run = (id: StitchId, times: number): Item[] =>
  times === 0 ? [] : [{ kind: 'stitch', stitch: id, times, span }]

/**
 * `count` edge stitches (1 to 20) more on each side of a flat piece, outside of those that it has. Slipped: the first of each row
 * is slipped, the others are knitted.
 */
export function edge(pattern: Pattern, kind: EdgeKind, count: number): Adaptation {
  if (pattern.worked === 'round')
    return refuse('round-has-no-sides', 'A round has no sides to put edge stitches on.', {
      hint: 'adapt it to flat first',
    })
  if (!Number.isInteger(count) || count < 1 || count > 20)
    return refuse('no-place', 'An edge has 1 to 20 stitches on each side.')
  const turned = [...pattern.setUp, ...pattern.rows].some(({ items }) =>
    items.some(({ kind: is }) => is === 'turn'),
  )
  if (turned)
    return refuse(
      'row-not-plain-stitches',
      'Rows that are turned before their end do not reach the edge on both sides.',
    )
  const { before, after } = pattern.edges
  if (takesAndMakes(before)?.takes !== takesAndMakes(after)?.takes)
    return refuse(
      'edges-change-the-count',
      'Its edges are not of one width, so what is put beside them would change sides from row to row.',
    )
  return kind === 'stocking' ? stockingEdge(pattern, count) : evenEdge(pattern, kind, count)
}

/** Edges that read the same on every row stand beside the rows. */
function evenEdge(pattern: Pattern, kind: 'garter' | 'slipped', count: number): Adaptation {
  const first = kind === 'garter' ? run('k', count) : [...run('sl', 1), ...run('k', count - 1)]
  const { before, after } = pattern.edges
  const edges = { before: merged([...first, ...before]), after: merged([...after, ...run('k', count)]) }
  const garter = `${stitches(count)} on each side ${count === 1 ? 'is' : 'are'} knitted on every row, and lie in ridges that do not curl.`
  const slipped =
    'The first stitch of every row is slipped purlwise with the yarn on the wrong side, and the last is knitted: ' +
    'two rows share one long edge loop, good for picking up later, but it stretches less than the lace.'
  return finished({ ...pattern, edges }, [easy(kind === 'garter' ? garter : slipped), castOnWords(count)])
}

/** Knitted on the right side and purled on the wrong one, an edge is a part of the rows. */
function stockingEdge(pattern: Pattern, count: number): Adaptation {
  const { before, after } = pattern.edges
  if (before.length + after.length > 0)
    return refuse('no-place', 'It has edge stitches already, and a stocking edge would lie inside them.')
  if ('fixed' in pattern.castOn)
    return withStocking({ ...pattern, castOn: { fixed: pattern.castOn.fixed + 2 * count } }, count)
  const { multiple, plus } = pattern.castOn
  return withStocking({ ...pattern, castOn: { multiple, plus: plus + 2 * count } }, count)
}

function withStocking(pattern: Pattern, count: number): Adaptation {
  const beside = (row: Row): Item[] => {
    const plain = run(row.side === 'RS' ? 'k' : 'p', count)
    return merged([...plain, ...row.items.map((item) => shortened(item, count)), ...plain])
  }
  const draft = {
    ...pattern,
    setUp: setUpOf(pattern.setUp.map(beside), pattern),
    rows: rowsOf(pattern.rows.map(beside), 1, pattern),
  }
  const sentence = `${stitches(count)} on each side ${count === 1 ? 'is' : 'are'} knitted on the right side and purled on the wrong one. Such an edge curls until it is blocked or sewn.`
  return finished(draft, [easy(sentence), castOnWords(count)])
}

function shortened(item: Item, count: number): Item {
  if ((item.kind !== 'repeat' && item.kind !== 'across') || item.until.kind === 'times') return item
  const stitches = count + (item.until.kind === 'last' ? item.until.stitches : 0)
  return { ...item, until: { kind: 'last', stitches } } as Item
}

const castOnWords = (count: number) => easy(`Cast on ${stitches(2 * count)} more.`)

/** Runs of one stitch side by side as one; what stands beside a stretch of the same stitch goes into it. */
function merged(items: readonly Item[]): Item[] {
  const out: Item[] = []
  for (const item of items) {
    const last = out.at(-1)
    if (last?.kind === 'stitch' && item.kind === 'stitch' && last.stitch === item.stitch)
      out.splice(-1, 1, { ...last, times: last.times + item.times })
    else if (last?.kind === 'stitch' && item.kind === 'across' && last.stitch === item.stitch)
      out.splice(-1, 1, item)
    else if (last?.kind === 'across' && item.kind === 'stitch' && last.stitch === item.stitch)
      out.splice(-1, 1, reaching(last, item.times))
    else out.push(item)
  }
  return out
}

function reaching(item: Item & { kind: 'across' }, more: number): Item {
  const keep = (item.until.kind === 'last' ? item.until.stitches : 0) - more
  return { ...item, until: keep > 0 ? { kind: 'last', stitches: keep } : { kind: 'end' } }
}
