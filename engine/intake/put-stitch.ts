import type { WorkedRow } from '../needles/index.ts'
import { printRow, type TextEdit } from '../notation/index.ts'
import type { Item } from '../pattern/index.ts'
import type { StitchId } from '../stitches/index.ts'

type Steps = WorkedRow['steps']

/** A stitch of a worked row where it is written. */
export interface WrittenAt {
  /** The text that holds it: the row's, or an edge's. */
  readonly text: string
  /** The items of that text. */
  readonly items: readonly Item[]
  readonly steps: Steps
  /** Index into the steps. */
  readonly step: number
  /** The zone of each step, as the chart parts the row into repeats; null where it does not. */
  readonly zones: readonly string[] | null
  /** Whether the piece has one number of stitches and no repeats. */
  readonly isFixed: boolean
}

/** Stitches to be written, each so many times. */
export type Fresh = readonly (readonly [StitchId, number])[]

const plainItem = (stitch: StitchId, times: number): Item => ({
  kind: 'stitch',
  stitch,
  times,
  span: { start: 0, end: 0 },
})

const inWords = (fresh: Fresh): string =>
  printRow(fresh.filter(([, times]) => times > 0).map(([id, times]) => plainItem(id, times)))

type Place = Pick<Item, 'span'>['span']
const samePlace = (a: Place, b: Place): boolean => a.start === b.start && a.end === b.end

/** The item that is written at a place, however deep it stands. */
export function itemAt(items: readonly Item[], place: Place): Item | null {
  for (const item of items) {
    const inside = item.kind === 'group' || item.kind === 'repeat'
    const found = inside ? itemAt(item.items, place) : samePlace(item.span, place) ? item : null
    if (found) return found
  }
  return null
}

/** Which of the times of its item a step is: the second of k3 is 1. */
function timeOf(steps: Steps, step: number, times: number): number {
  const span = steps[step]?.span ?? { start: 0, end: 0 }
  const before = steps.slice(0, step).filter((one) => samePlace(one.span, span)).length
  return before % times
}

/**
 * The change to a row's text that puts other stitches in the place of `count` stitches from one on. Nothing else of the
 * text is touched: of k3 with a yarn over for its second, 'k1, yo, k1' remains. Null where the stitches are not written
 * side by side, or stand for something that cannot be taken apart.
 */
export function putStitches(at: WrittenAt, count: number, fresh: Fresh): TextEdit | null {
  const { steps, items, step } = at
  const [first, last] = [steps[step], steps[step + count - 1]]
  if (!first || !last || first.part !== last.part) return null
  const [from, to] = [itemAt(items, first.span), itemAt(items, last.span)]
  if (from?.kind === 'across') return from === to ? intoRepeats(at, from, count, fresh) : null
  if (from?.kind !== 'stitch' || to?.kind !== 'stitch') return null
  const [before, behind] = [
    timeOf(steps, step, from.times),
    to.times - 1 - timeOf(steps, step + count - 1, to.times),
  ]
  const isRun = from === to ? before + count + behind === from.times : joins(at, count)
  if (!isRun) return null
  const text = inWords([[from.stitch, before], ...fresh, [to.stitch, behind]])
  if (text !== '') return { start: from.span.start, end: to.span.end, text }
  return withoutComma(at.text, from.span.start, to.span.end)
}

/** Whether nothing but commas stands between the stitches, and no repeat begins anew. */
function joins({ steps, step, text }: WrittenAt, count: number): boolean {
  for (let i = step + 1; i < step + count; i++) {
    const [a, b] = [steps[i - 1]?.span, steps[i]?.span]
    if (!a || !b) return false
    if (samePlace(a, b)) continue
    if (b.start < a.end || !/^[\s,]*$/.test(text.slice(a.end, b.start))) return false
  }
  return true
}

/** Words taken out with the comma that would be left over. */
function withoutComma(text: string, start: number, end: number): TextEdit {
  const after = /^\s*,\s*/.exec(text.slice(end))?.[0].length ?? 0
  if (after > 0) return { start, end: end + after, text: '' }
  const before = /\s*,\s*$/.exec(text.slice(0, start))?.[0].length ?? 0
  return { start: start - before, end, text: '' }
}

/** 'purl' with one stitch changed in every repeat: the row is written out with a repeat of its own. */
function intoRepeats(
  { steps, step, zones, items, isFixed }: WrittenAt,
  across: Item & { kind: 'across' },
  count: number,
  fresh: Fresh,
): TextEdit | null {
  if (items.length !== 1) return null
  const own = steps.flatMap((one, i) => (one.part === 'row' ? [i] : []))
  const at = own.indexOf(step)
  const runs = zones ? runsOf(own.map((i) => zones[i] ?? '')) : []
  const repeats = runs.filter(isRepeat)
  const each = repeats[0]
  if (isFixed && at >= 0) {
    const text = inWords(splitAt(across.stitch, own.length, at, count, fresh))
    return at + count > own.length ? null : { ...across.span, text }
  }
  const here = runs.find((run) => at >= run.start && at < run.start + run.length)
  if (!each || !here || repeats.some((run) => run.length !== each.length)) return null
  if (at + count > here.start + here.length) return null
  const written = (run: Run | undefined): Fresh =>
    run === undefined
      ? []
      : run === here || (isRepeat(run) && isRepeat(here))
        ? splitAt(across.stitch, run.length, at - here.start, count, fresh)
        : [[across.stitch, run.length]]
  const index = runs.indexOf(each)
  const lead = inWords(written(runs[index - 1]))
  const tail = inWords(written(runs[index + repeats.length]))
  const last = runs[index + repeats.length]?.length ?? 0
  const reach = last === 0 ? 'to end' : `to last ${last === 1 ? 'st' : `${last} sts`}`
  const parts = [lead, `*${inWords(written(each))}; rep from * ${reach}`, tail]
  return { ...across.span, text: parts.filter((part) => part !== '').join(', ') }
}

interface Run {
  readonly zone: string
  readonly start: number
  readonly length: number
}

const isRepeat = ({ zone }: Run): boolean => zone.startsWith('repeat ')

function runsOf(zones: readonly string[]): Run[] {
  const runs: Run[] = []
  for (const [i, zone] of zones.entries()) {
    const last = runs.at(-1)
    if (last?.zone === zone) runs[runs.length - 1] = { ...last, length: last.length + 1 }
    else runs.push({ zone, start: i, length: 1 })
  }
  return runs
}

const splitAt = (stitch: StitchId, length: number, at: number, count: number, fresh: Fresh): Fresh => [
  [stitch, at],
  ...fresh,
  [stitch, length - at - count],
]
