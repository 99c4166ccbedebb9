import { edited, printRow, readRow, type TextEdit } from '../notation/index.ts'
import { type Item, type StitchItem, takesAndMakes } from '../pattern/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'

/** A row as it might have been meant: one small change to what is written. */
export interface RowVariant {
  readonly words: string
  readonly edit: TextEdit
  /** The row with the change made. */
  readonly text: string
  readonly items: readonly Item[]
}

interface Change {
  readonly words: string
  readonly edit: TextEdit
}

/** Decreases that are taken for one another, or the one for the other's smaller or larger kin. */
const kin: Readonly<Record<StitchId, readonly StitchId[]>> = {
  k2tog: ['k3tog'],
  ssk: ['sssk', 'sk2p'],
  skp: ['sk2p'],
  p2tog: ['p3tog'],
  ssp: ['sssp'],
  k3tog: ['k2tog'],
  sssk: ['ssk'],
  sk2p: ['ssk', 'k2tog'],
  s2kp: ['k2tog', 'ssk'],
  p3tog: ['p2tog'],
  sssp: ['ssp'],
}

/** Words that stand side by side, at every depth: what a slip of the pen changes. */
function listsIn(items: readonly Item[]): (readonly Item[])[] {
  const deeper = items.flatMap((item) =>
    item.kind === 'group' || item.kind === 'repeat' ? listsIn(item.items) : [],
  )
  return [items, ...deeper]
}

const quoted = (words: string): string => `‘${words}’`

const isPlain = (item: Item | undefined): item is StitchItem =>
  item?.kind === 'stitch' && ['plain', 'twisted'].includes(stitch(item.stitch).family)

/** k3 as k2, k4, or gone. */
function otherNumbers(item: StitchItem, text: string): Change[] {
  const { start, end } = item.span
  const written = text.slice(start, end)
  return [1, -1, 2, -2].flatMap((by) => {
    const times = item.times + by
    if (times < 0) return []
    if (times === 0) return [taken(item, text)]
    const fresh = printRow([{ ...item, times }])
    return [{ words: `Write ${quoted(fresh)} for ${quoted(written)}`, edit: { start, end, text: fresh } }]
  })
}

/** A stitch taken out with the comma behind it, or before it where it is the last. */
function taken({ span }: Item, text: string): Change {
  const after = /^\s*,\s*/.exec(text.slice(span.end))?.[0].length ?? 0
  const before = after > 0 ? 0 : (/\s*,\s*$/.exec(text.slice(0, span.start))?.[0].length ?? 0)
  return {
    words: `Take ${quoted(text.slice(span.start, span.end))} out`,
    edit: { start: span.start - before, end: span.end + after, text: '' },
  }
}

/** [yo, k1] 4 times as 3 or 5 times. */
function otherTimes({ span, times }: Item & { kind: 'group' }, text: string): Change[] {
  const written = text.slice(span.start, span.end)
  const often = /(?:twice|(\d+)\s*(?:times|x))\s*$/i.exec(written)
  if (!often) return []
  return [times + 1, times - 1].flatMap((n) => {
    const fresh = n === 2 ? 'twice' : `${n} times`
    const words = `Write ${quoted(fresh)} for ${quoted(often[0].trim())}`
    const start = span.start + often.index
    return n < 2 ? [] : [{ words, edit: { start, end: span.end, text: fresh } }]
  })
}

function otherDecreases(item: StitchItem, text: string): Change[] {
  const { start, end } = item.span
  return (kin[item.stitch] ?? []).map((id) => {
    const fresh = printRow([{ ...item, stitch: id }])
    return {
      words: `Write ${quoted(fresh)} for ${quoted(text.slice(start, end))}`,
      edit: { start, end, text: fresh },
    }
  })
}

/** Something that was left out between two stitches. */
function added(fresh: string, before: Item | undefined, next: Item | undefined, text: string): Change[] {
  if (before) {
    const words = text.slice(before.span.start, before.span.end)
    const edit = { start: before.span.end, end: before.span.end, text: `, ${fresh}` }
    return [{ words: `Add ${quoted(fresh)} after ${quoted(words)}`, edit }]
  }
  if (!next) return []
  const words = text.slice(next.span.start, next.span.end)
  const edit = { start: next.span.start, end: next.span.start, text: `${fresh}, ` }
  return [{ words: `Add ${quoted(fresh)} before ${quoted(words)}`, edit }]
}

function changesIn(list: readonly Item[], text: string, plain: string): Change[] {
  const changes: Change[] = []
  for (let i = 0; i <= list.length; i++) {
    const [before, next] = [list[i - 1], list[i]]
    // Beside a plain stitch its number grows instead.
    if (!isPlain(before) && !isPlain(next)) changes.push(...added(plain, before, next, text))
    changes.push(...added('yo', before, next, text))
    if (next?.kind === 'group') changes.push(...otherTimes(next, text))
    if (next?.kind !== 'stitch') continue
    if (isPlain(next)) changes.push(...otherNumbers(next, text))
    else changes.push(...otherDecreases(next, text))
    if (next.stitch === 'yo' && next.times === 1) changes.push(taken(next, text))
  }
  return changes
}

/** A repeat that ends in its middle: '…to end' as '…to last 7 sts' with what begins the repeat once more. */
function brokenOff(items: readonly Item[], text: string, plain: string): Change[] {
  const repeat = items.at(-1)
  if (repeat?.kind !== 'repeat' || repeat.until.kind !== 'end') return []
  const { start, end } = repeat.span
  const reach = /\s*(?:to (?:the )?end(?: of (?:the )?(?:row|round))?)?[\s.]*$/i.exec(text.slice(start, end))
  const from = start + (reach?.index ?? end - start)
  const begin = repeat.items[0]?.span.start ?? end
  return repeat.items.flatMap((item, i) => {
    const words = text.slice(begin, item.span.end)
    const takes = takesAndMakes(repeat.items.slice(0, i + 1))?.takes ?? 0
    const ends: [string, number][] = [
      [words, takes],
      [`${words}, ${plain}`, takes + 1],
    ]
    if (isPlain(item))
      for (let n = 1; n < item.times; n++)
        ends.push([
          text.slice(begin, item.span.start) + printRow([{ ...item, times: n }]),
          takes - item.times + n,
        ])
    return ends.flatMap(([last, sts]) => {
      if (sts === 0) return []
      const fresh = ` to last ${sts === 1 ? 'st' : `${sts} sts`}, ${last}`
      return [
        { words: `End the row within a repeat: ${quoted(last)}`, edit: { start: from, end, text: fresh } },
      ]
    })
  })
}

/** Rows longer than this are not guessed at. */
const mostItems = 120

/** Every row that one small slip would have turned into this one, as far as such slips are usual. */
export function rowVariants(
  items: readonly Item[],
  text: string,
  options: Parameters<typeof readRow>[1],
  plain: 'k1' | 'p1',
): RowVariant[] {
  const lists = listsIn(items)
  if (lists.flat().length > mostItems) return []
  const variants = new Map<string, RowVariant>()
  const changes = [...lists.flatMap((list) => changesIn(list, text, plain)), ...brokenOff(items, text, plain)]
  for (const { words, edit } of changes) {
    const fresh = edited(text, edit)
    if (variants.has(fresh)) continue
    const reading = readRow(fresh, options)
    if (reading.issues.length === 0) variants.set(fresh, { words, edit, text: fresh, items: reading.items })
  }
  return [...variants.values()]
}

/** The stitches of a list one by one; null where it goes as far as the loops last. */
function spelled(items: readonly Item[]): StitchId[] | null {
  const out: StitchId[] = []
  for (const item of items) {
    if (item.kind === 'stitch') for (let i = 0; i < item.times; i++) out.push(item.stitch)
    else if (item.kind === 'group') {
      const inner = spelled(item.items)
      if (!inner) return null
      for (let i = 0; i < item.times; i++) out.push(...inner)
    } else if (item.kind !== 'marker' && item.kind !== 'yarn') return null
    if (out.length > 200) return null
  }
  return out
}

/** Whether a row's repeat is its own mirror somewhere, as the repeats of most laces are. */
export function isMirrored(items: readonly Item[]): boolean {
  const repeat = items.find((item) => item.kind === 'repeat')
  const stitches = spelled(repeat?.kind === 'repeat' ? repeat.items : items)
  if (!stitches || stitches.length === 0) return false
  const back = stitches.toReversed().map((id) => stitch(id).mirrorTwin ?? id)
  return stitches.some((_, turn) =>
    stitches.every((id, i) => id === back[(i + turn) % back.length] || isPair(id, back, i + turn)),
  )
}

/** skp answers k2tog as well as ssk does. */
const isPair = (id: StitchId, back: readonly StitchId[], at: number): boolean => {
  const other = back[at % back.length]
  return ['ssk', 'skp'].includes(id) && other !== undefined && ['ssk', 'skp'].includes(other)
}
