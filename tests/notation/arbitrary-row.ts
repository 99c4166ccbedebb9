import fc from 'fast-check'
import { limits } from '../../engine/base/index.ts'
import { type Item, takesAndMakes } from '../../engine/pattern/index.ts'
import { catalogue } from '../../engine/stitches/index.ts'

const span = { start: 0, end: 0 }
const times = (most: number) => fc.integer({ min: 1, max: most })

/** Stitches whose number is written after them; a yarn over worked twice on end is the double yarn over. */
const stitchItem: fc.Arbitrary<Item> = fc
  .constantFrom(
    ...catalogue
      .map((s) => s.id)
      .filter((id) => !['yo2', 'yo2 long', 'bo', 'bo p', 'm1l', 'yo'].includes(id)),
  )
  .chain((stitch) => times(9).map((n): Item => ({ kind: 'stitch', stitch, times: n, span })))

const yarnOver: fc.Arbitrary<Item> = fc
  .constantFrom('yo', 'yo2')
  .map((stitch): Item => ({ kind: 'stitch', stitch, times: 1, span }))

const mark: fc.Arbitrary<Item> = fc.constantFrom<Item>(
  { kind: 'marker', action: 'place', span },
  { kind: 'marker', action: 'slip', span },
  { kind: 'marker', action: 'remove', span },
  { kind: 'resume', count: 3, span },
)

const simple: fc.Arbitrary<Item> = fc.oneof(
  { weight: 6, arbitrary: stitchItem },
  { weight: 3, arbitrary: yarnOver },
  { weight: 1, arbitrary: mark },
)

const group = (inner: fc.Arbitrary<Item>): fc.Arbitrary<Item> =>
  fc
    .tuple(fc.array(inner, { minLength: 2, maxLength: 4 }), fc.integer({ min: 2, max: 9 }))
    .map(([items, n]): Item => ({ kind: 'group', items, times: n, span }))

const nested = fc.oneof(
  { weight: 4, arbitrary: simple },
  { weight: 1, arbitrary: group(fc.oneof(simple, group(simple))) },
)

const until = fc.oneof(
  fc.constant({ kind: 'end' as const }),
  times(20).map((stitches) => ({ kind: 'last' as const, stitches })),
  times(9).map((n) => ({ kind: 'times' as const, times: n })),
)

const repeat: fc.Arbitrary<Item> = fc
  .tuple(fc.array(nested, { minLength: 1, maxLength: 6 }), until)
  .map(([items, reach]): Item => ({ kind: 'repeat', items, until: reach, span }))

const across: fc.Arbitrary<Item> = fc
  .tuple(
    fc.constantFrom('k', 'p', 'k tbl', 'p tbl'),
    fc.oneof(
      fc.constant({ kind: 'end' as const }),
      times(9).map((stitches) => ({ kind: 'last' as const, stitches })),
    ),
  )
  .map(([stitch, reach]): Item => ({ kind: 'across', stitch, until: reach, span }))

const bindOff: fc.Arbitrary<Item> = fc
  .tuple(fc.constantFrom('bo', 'bo p'), times(9))
  .map(([stitch, count]): Item => ({ kind: 'bindOff', stitch, count, leavesOne: true, span }))

/** Rows as the reader gives them: any items, and at most one turn, at the end. A bind-off has stitches after it. */
export const arbitraryRow: fc.Arbitrary<Item[]> = fc
  .tuple(
    fc.array(
      fc.oneof(
        { weight: 5, arbitrary: nested },
        { weight: 2, arbitrary: repeat },
        { weight: 1, arbitrary: across },
        { weight: 1, arbitrary: bindOff },
      ),
      { maxLength: 6 },
    ),
    stitchItem,
    fc.boolean(),
  )
  .map(([items, last, turn]): Item[] => [
    ...items,
    last,
    ...(turn ? [{ kind: 'turn' as const, wrap: false, span }] : []),
  ])
  .filter((items) => items.every(isKnittable))

/** Rows of more stitches than the reader takes on are a problem of their own. */
function isKnittable(item: Item): boolean {
  const inner = takesAndMakes(item.kind === 'repeat' ? item.items : [item])
  const times = item.kind === 'repeat' && item.until.kind === 'times' ? item.until.times : 1
  return inner === null || Math.max(inner.takes, inner.makes) * times <= limits.stitchesInRow
}

/** Items without their places, to compare what was read with what was printed. */
export function withoutSpans(items: readonly Item[]): unknown {
  return JSON.parse(JSON.stringify(items, (key, value) => (key === 'span' ? undefined : value)))
}
