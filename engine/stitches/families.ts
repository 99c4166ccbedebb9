import { knit, knitBack, loosely, passOver, purl, purlBack, severalInOne, slip } from './moves.ts'
import type { Family, Motion, StitchEntry, StitchId } from './stitch.ts'

/** An entry whose printed forms follow its id unless told otherwise. */
export const entry = (
  id: StitchId,
  family: Family,
  name: string,
  motions: readonly Motion[],
  more: { readonly us?: string; readonly uk?: string; readonly note?: string } = {},
): StitchEntry => ({
  id,
  family,
  name,
  us: more.us ?? id,
  uk: more.uk ?? more.us ?? id,
  motions,
  note: more.note ?? null,
})

export const numberWords = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
] as const

const word = (n: number): string => numberWords[n] ?? String(n)

const from = (first: number, last: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, i) => first + i)

/** k4tog … k9tog and the like: what gathers nupps, and the wide decreases of old shell patterns. */
export const gatherings: readonly StitchEntry[] = from(4, 9).flatMap((n) => [
  entry(`k${n}tog`, 'gathering', `knit ${word(n)} together`, knit(n)),
  entry(`p${n}tog`, 'gathering', `purl ${word(n)} together`, purl(n)),
  entry(`k${n}tog tbl`, 'gathering', `knit ${word(n)} together through the back loops`, knitBack(n)),
  entry(`p${n}tog tbl`, 'gathering', `purl ${word(n)} together through the back loops`, purlBack(n)),
])

type Part = 'k' | 'p' | 'yo'

const partWords: Record<Part, { readonly short: string; readonly long: string }> = {
  k: { short: 'k1', long: 'knit one' },
  p: { short: 'p1', long: 'purl one' },
  yo: { short: 'yo', long: 'yarn over' },
}

const alternating = (a: Part, b: Part, loops: number): Part[] =>
  Array.from({ length: loops }, (_, i) => (i % 2 === 0 ? a : b))

function inOne(parts: readonly Part[]): StitchEntry {
  const long = parts.map((part) => partWords[part].long).join(', ')
  const short = `(${parts.map((part) => partWords[part].short).join(', ')}) in 1`
  return entry(short, 'increase', `${long}, all in one stitch`, severalInOne(parts))
}

/**
 * One loop made into several by turns of knit and purl, or of knit and yarn over; and their purl-side forms.
 */
export const increasesInOne: readonly StitchEntry[] = [
  ...[3, 5, 7, 9].flatMap((n) => [inOne(alternating('k', 'yo', n)), inOne(alternating('p', 'yo', n))]),
  ...from(2, 9).flatMap((n) => [inOne(alternating('k', 'p', n)), inOne(alternating('p', 'k', n))]),
]

/**
 * Nupps: the same loops as knit and yarn over by turns, drawn up long so that the next row can gather them.
 */
export const nupps: readonly StitchEntry[] = [5, 7, 9].map((n) =>
  entry(
    `nupp${n}`,
    'increase',
    `nupp of ${word(n)} loops, made in one stitch`,
    loosely(severalInOne(alternating('k', 'yo', n))),
    {
      note:
        `Draw each loop up long and loose. The next row gathers the ${word(n)} into one: p${n}tog on a wrong-side row, ` +
        `k${n}tog in the round.`,
    },
  ),
)

/** One slipped stitch passed over several knitted ones: the wrapped little groups of old Shetland grounds. */
export const passings: readonly StitchEntry[] = [2, 3].map((n) =>
  entry(
    `sl1 k${n} psso`,
    'passing',
    `slip one, knit ${word(n)}, pass the slipped stitch over the ${word(n)}`,
    [...slip('knitwise'), ...from(1, n).flatMap(() => knit()), passOver(1, n)],
    { note: 'One loop fewer afterwards, and the slipped one lies like a belt round the others.' },
  ),
)
