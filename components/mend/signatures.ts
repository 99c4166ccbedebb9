import {
  type Casebook,
  type Look,
  looks,
  lookWords,
  type MistakeKind,
  modelOf,
  sightsFor,
  type Trace,
  tracesIn,
} from '../../engine/mistakes/index.ts'

/** A way in which counts can be off, with the mistakes of this pattern that make them so. */
export interface Signature {
  readonly words: string
  readonly suspects: readonly { readonly name: string; readonly look: string | null }[]
}

/** The ways, in the order in which a reader should ask for them. */
const ways = {
  fewer: 'One stretch is one short; all others are right.',
  more: 'One stretch is one over; all others are right.',
  many: 'One stretch is two or more off; all others are right.',
  neighbours: 'One stretch is short, and the one next door is over by as many.',
  everywhere: 'Every repeat is off by the same number.',
  rowEnd: 'Between the markers all is right at first; the words do not come out at the end of the row.',
  picture: 'All counts are right, and it looks wrong.',
} as const

type Way = keyof typeof ways

/** How the counts after a mistake's own row differ from what is meant. */
function wayOf({ plan }: Casebook, { mistake, marked }: Trace): Way | null {
  const [first] = marked
  if (!first) return null
  const meant = plan.rows[first.row]?.makes ?? []
  const off = first.counts.flatMap((count, section) => {
    const by = count - (meant[section] ?? 0)
    return by === 0 ? [] : [{ section, by }]
  })
  const [a, b] = off
  if (mistake.everywhere && off.length > 1 && off.every(({ by }) => by === a?.by)) return 'everywhere'
  if (!a) return first.over + first.short > 0 ? 'rowEnd' : 'picture'
  if (!b) return a.by === -1 ? 'fewer' : a.by === 1 ? 'more' : 'many'
  if (off.length === 2 && a.by + b.by === 0 && b.section - a.section === 1) return 'neighbours'
  return first.over + first.short > 0 ? 'rowEnd' : null
}

interface Weighed {
  weight: number
  readonly likeliest: Trace
}

/** What the counts of this pattern can say, found from every mistake that can be made in it. Likeliest first. */
export function signaturesOf(book: Casebook, most = 4): Signature[] {
  const found = new Map<Way, Map<MistakeKind, Weighed>>()
  for (const { index } of book.plan.rows) {
    for (const trace of tracesIn(book, index)) {
      const way = wayOf(book, trace)
      if (!way) continue
      const kinds = found.get(way) ?? new Map<MistakeKind, Weighed>()
      found.set(way, kinds)
      const known = kinds.get(trace.mistake.kind)
      if (known) known.weight += trace.weight
      else kinds.set(trace.mistake.kind, { weight: trace.weight, likeliest: trace })
    }
  }
  return (Object.keys(ways) as Way[]).flatMap((way) => {
    const ranked = [...(found.get(way) ?? [])].sort(([, a], [, b]) => b.weight - a.weight).slice(0, most)
    if (ranked.length === 0) return []
    const suspects = ranked.map(([kind, { likeliest }]) => {
      const look = sightsFor(book, likeliest)[0]?.look
      return { name: modelOf(kind).name, look: look ? lookWords[look] : null }
    })
    return [{ words: ways[way], suspects }]
  })
}

/** What can be seen in this pattern of mistakes that leave every count of their row right. */
export function looksWithRightCounts(book: Casebook): Look[] {
  const seen = new Set<Look>()
  for (const { index } of book.plan.rows) {
    for (const trace of tracesIn(book, index)) {
      if (wayOf(book, trace) === 'picture') for (const { look } of sightsFor(book, trace)) seen.add(look)
    }
  }
  return looks.filter((look) => seen.has(look))
}
