import { fabricText } from '../mistakes/index.ts'
import { type WorkedPattern, type WorkedRow, work } from '../needles/index.ts'
import { printRow } from '../notation/index.ts'
import type { Item } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import type { OrderPart, Reply } from './exercise.ts'
import { type Ordered, orderedIn } from './row-in-order.ts'
import { rowKind, type Table } from './table.ts'
import { listed, stitches, written } from './words.ts'

/** The items in the order of the pieces' ids; null where that is not every piece once. */
export function itemsInOrder(table: Table, part: OrderPart, ids: readonly string[]): Item[] | null {
  const ordered = orderedIn(table, part.row)
  const places = ids.map((id) => part.right.indexOf(id))
  const each = new Set(places)
  if (!ordered || each.has(-1) || each.size !== part.right.length || ids.length !== part.right.length)
    return null
  return places.flatMap((place) => ordered.items[place] ?? [])
}

/** The rows up to this one, it with its items in another order, worked loop by loop. */
export function workedInOrder(table: Table, row: number, items: readonly Item[]): WorkedPattern | null {
  const { pattern, repeats } = table.worked
  const at = row - pattern.setUp.length
  const rows = pattern.rows.slice(0, at + 1).map((one, i) => {
    if (i !== at) return one
    const hasRepeat = one.items.some((item) => item.kind === 'repeat')
    return {
      ...one,
      items: hasRepeat
        ? one.items.map((item) => (item.kind === 'repeat' ? { ...item, items } : item))
        : items,
    }
  })
  return work({ ...pattern, rows }, repeats).worked
}

/** A stitch of one repeat that is not plain: where it stands among the stitches that the repeat leaves. */
interface Landmark {
  readonly stitch: string
  readonly place: number
  readonly isHole: boolean
}

function landmarks(row: WorkedRow | undefined, of: Ordered['of']): Landmark[] {
  const steps = (row?.steps ?? []).filter(({ repeat }) => of === 'row' || repeat === 1)
  let place = 1
  return steps.flatMap(({ stitch: id, made }) => {
    const here = { stitch: id, place, isHole: stitch(id).family === 'yarn over' }
    place += made.length
    return stitch(id).family === 'plain' ? [] : [here]
  })
}

const numbersOf = (all: readonly Landmark[]): string => {
  const numbers = all.filter(({ isHole }) => isHole).map(({ place }) => String(place))
  return `${numbers.length === 1 ? 'stitch' : 'stitches'} ${listed(numbers)}`
}

const decreasesOf = (all: readonly Landmark[]): string =>
  listed(all.filter(({ isHole }) => !isHole).map((one) => `${written(one.stitch)} at ${one.place}`))

/** Where holes and decreases come to lie, counted in the stitches that a repeat leaves. */
function movedWords(right: readonly Landmark[], mine: readonly Landmark[], unit: string): string[] {
  const [holes, holesNow] = [numbersOf(right), numbersOf(mine)]
  const [gathered, gatheredNow] = [decreasesOf(right), decreasesOf(mine)]
  return [
    ...(holes === holesNow
      ? []
      : [`Your holes would lie at ${holesNow} of the ${unit}, and they belong at ${holes}.`]),
    ...(gathered === gatheredNow ? [] : [`You have ${gatheredNow}; right is ${gathered}.`]),
  ]
}

/** Whether a decrease leans to the hole beside it; null where it leans nowhere, or has a hole on both sides or on none. */
function leansToHole(all: readonly Landmark[], at: number, leftward: boolean): boolean | null {
  const one = all[at]
  const lean = one ? stitch(one.stitch).lean : null
  if (!one || one.isHole || lean === null || lean === 'centre') return null
  const near = (by: number): boolean => {
    const other = all[at + by]
    return other?.isHole === true && Math.abs(other.place - one.place) === 1
  }
  const [before, after] = [near(-1), near(1)]
  return before === after ? null : after === ((lean === 'left') === leftward)
}

/** Decreases that would lean otherwise against their holes. Named for right-side rows only: of the purl face sources disagree. */
function leanWords(right: readonly Landmark[], mine: readonly Landmark[]): string[] {
  const told = mine.flatMap((one, at) => {
    const then = leansToHole(mine, at, true)
    const nth = mine.slice(0, at).filter(({ stitch: id }) => id === one.stitch).length
    const same = right.flatMap(({ stitch: id }, i) => (id === one.stitch ? [i] : []))[nth]
    const meant = same === undefined ? null : leansToHole(right, same, true)
    if (then === null || meant === null || then === meant) return []
    const lean = stitch(one.stitch).lean ?? ''
    return [
      `${written(one.stitch)} leans to the ${lean} either way: ${then ? 'here it would lean to its hole, and it should lean away from it' : 'here it would lean away from its hole, and it should lean to it'}.`,
    ]
  })
  return [...new Set(told)]
}

/** How many pieces on the same order begins, where it is the right order gone round; null where it is not. */
function turnedBy(right: readonly string[], mine: readonly string[]): number | null {
  for (let by = 1; by < right.length; by++)
    if (right.every((_, i) => mine[i] === right[(i + by) % right.length])) return by
  return null
}

function countWords(table: Table, part: OrderPart, worked: WorkedPattern): string {
  const now = worked.rows[part.row]?.after.length ?? 0
  const meant = table.worked.rows[part.row]?.after.length ?? 0
  return now === meant
    ? `Your order gives the same count: the ${rowKind(table)} would end with ${stitches(now)}, as it should. A count would not tell.`
    : `With your order the ${rowKind(table)} would end with ${now} instead of ${stitches(meant)}.`
}

/** How far the order goes with the row. */
function firstWords(right: readonly Item[], mine: readonly Item[]): string {
  const at = mine.findIndex((item, i) => printRow([item]) !== printRow([right[i] ?? item]))
  if (at <= 0) return `It does not begin with ${printRow(mine.slice(0, 1))}.`
  return `You are right as far as ${printRow(mine.slice(0, at))}.`
}

/** An order judged by working it: right where the fabric is the right one, loop for loop. */
export function judgeOrder(table: Table, part: OrderPart, ids: readonly string[]): Reply {
  const items = itemsInOrder(table, part, ids)
  const ordered = orderedIn(table, part.row)
  const worked = items && workedInOrder(table, part.row, items)
  if (!items || !ordered || !worked)
    return {
      part: part.id,
      right: items ? false : null,
      words: items ? 'In that order the row cannot be worked.' : 'Put every piece in its place first.',
    }
  const text = (one: WorkedPattern): string | undefined =>
    fabricText({ ...one, rows: one.rows.slice(0, part.row + 1) })[part.row]
  if (text(worked) === text(table.worked))
    return {
      part: part.id,
      right: true,
      words: `Yes. ${part.because} Worked so, it is the right fabric, loop for loop.`,
    }
  const unit = ordered.of
  const [right, mine] = [table.worked.rows[part.row], worked.rows[part.row]].map((row) =>
    landmarks(row, unit),
  )
  const labels = (all: readonly Item[]): string[] => all.map((item) => printRow([item]))
  const turned = turnedBy(labels(ordered.items), labels(items))
  const about =
    turned !== null
      ? [
          `It is the same lace begun ${turned === 1 ? 'one piece' : `${turned} pieces`} later, so everything would sit to the side of where it belongs.`,
        ]
      : [
          ...movedWords(right ?? [], mine ?? [], unit),
          ...(mine && table.worked.rows[part.row]?.side === 'RS' ? leanWords(right ?? [], mine) : []),
        ]
  return {
    part: part.id,
    right: false,
    words: [countWords(table, part, worked), ...about, firstWords(ordered.items, items)].join(' '),
  }
}
