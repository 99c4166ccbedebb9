import type { WorkedPattern } from '../needles/index.ts'
import type { Side } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import { isDecrease, isYarnOver, showsKnit } from './kin.ts'

/** What a reader can tell of where she is. */
export interface Clues {
  /** Loops on the needle still to be worked, and on the one that holds the new stitches. */
  readonly left?: number
  readonly right?: number
  /** The last stitches made, the newest last: a catalogue stitch, or what it looks like. */
  readonly last?: readonly Glimpse[]
  /** Index of the row, where she knows it. */
  readonly row?: number
  /** The side that faces her, where she knows it. */
  readonly side?: Side
}

/** What a stitch looks like to the knitter who has it in front of her. */
export const glimpses = ['hole', 'two together', 'three together', 'knit', 'purl'] as const
export type GlimpseLook = (typeof glimpses)[number]
export type Glimpse = { readonly stitch: string } | { readonly looks: GlimpseLook }

/** A place in the pattern that agrees with the clues. */
export interface PossiblePlace {
  /** Index into the worked rows. */
  readonly row: number
  /** Steps done: the next step to do has this index. */
  readonly done: number
  /** How many of the last stitches agree. */
  readonly agree: number
}

/** A place that would agree if there were other loops on the needles. */
export interface NearPlace extends PossiblePlace {
  /** Loops that the reader has more (more than 0) or fewer on each needle than belong there. */
  readonly offLeft: number
  readonly offRight: number
}

/** What a stitch looks like; null for what looks like none of these. */
export function lookOf(id: string): GlimpseLook | null {
  if (isYarnOver(id)) return 'hole'
  const { takes } = stitch(id)
  if (isDecrease(id)) return takes === 2 ? 'two together' : takes === 3 ? 'three together' : null
  return showsKnit(id) ? 'knit' : 'purl'
}

const glimpsed = (made: string, told: Glimpse): boolean =>
  'stitch' in told ? told.stitch === made : told.looks === lookOf(made)

/** The row that was worked before a row: the one below, or the last of the pattern's turn before. Null for the cast-on. */
export function rowBefore({ pattern, rows }: WorkedPattern, row: number): number | null {
  if (row === pattern.setUp.length && !pattern.growing && rows.length > row + 1) return rows.length - 1
  return row > 0 ? row - 1 : null
}

/** The stitches made up to a place, the newest last: a few of the row before too. */
export function madeBefore(
  worked: WorkedPattern,
  { row, done }: Pick<PossiblePlace, 'row' | 'done'>,
): string[] {
  const before = rowBefore(worked, row)
  const steps = [
    ...(before === null ? [] : (worked.rows[before]?.steps.slice(-mostTold) ?? [])),
    ...(worked.rows[row]?.steps.slice(0, done) ?? []),
  ]
  return steps.slice(-mostTold).map((step) => step.stitch)
}

/** More of the last stitches than that are not looked at. */
export const mostTold = 12

/** Every place of the pattern, with the loops that lie on the needles there. */
function* everyPlace(worked: WorkedPattern, { row: only, side }: Clues) {
  for (const [row, { steps, before, waiting, side: facing }] of worked.rows.entries()) {
    if ((only !== undefined && only !== row) || (side !== undefined && side !== facing)) continue
    for (let done = 0; done <= steps.length; done++) {
      const step = steps[done - 1]
      yield { row, done, onLeft: step?.left ?? before.length, onRight: step?.right ?? waiting.length }
    }
  }
}

/**
 * The places at which so many loops lie on each needle, or at which the last stitches made were these. Only places that
 * agree with all clues; where the last stitches are told and nowhere fit all, those where most of them do.
 */
export function placesFor(worked: WorkedPattern, clues: Clues): PossiblePlace[] {
  const { left, right, last = [] } = clues
  const found: PossiblePlace[] = []
  for (const { row, done, onLeft, onRight } of everyPlace(worked, clues)) {
    if ((left !== undefined && left !== onLeft) || (right !== undefined && right !== onRight)) continue
    const agree = last.length === 0 ? 0 : agreement(madeBefore(worked, { row, done }), last)
    if (last.length === 0 || agree > 0) found.push({ row, done, agree })
  }
  return mostAgreeing(found)
}

/** A row that is done and the one after it not begun are one place, unless the needles tell that the work was turned. */
export function withoutTwins(worked: WorkedPattern, places: readonly PossiblePlace[]): PossiblePlace[] {
  const begins = new Set(places.filter(({ done }) => done === 0).map(({ row }) => rowBefore(worked, row)))
  return places.filter(({ row, done }) => done < (worked.rows[row]?.steps.length ?? 0) || !begins.has(row))
}

function mostAgreeing<T extends PossiblePlace>(places: readonly T[]): T[] {
  const most = Math.max(0, ...places.map(({ agree }) => agree))
  return places.filter(({ agree }) => agree === most)
}

/** How many of the last stitches agree, from the newest back. */
function agreement(made: readonly string[], last: readonly Glimpse[]): number {
  let agree = 0
  while (agree < last.length) {
    const [id, told] = [made.at(-1 - agree), last.at(-1 - agree)]
    if (id === undefined || told === undefined || !glimpsed(id, told)) break
    agree++
  }
  return agree
}

/** More loops off than that are another width, not a mistake. */
const farthest = 4

/**
 * Places that would fit if the needles held a few loops more or fewer: where a mistake may have been made. Those that
 * agree with the last stitches and have what is still to be worked right come first: what is on the left needle was made
 * in an earlier row.
 */
export function nearPlaces(worked: WorkedPattern, clues: Clues, most = 3): NearPlace[] {
  const { left, right, last = [] } = clues
  if (left === undefined && right === undefined) return []
  const found: NearPlace[] = []
  for (const { row, done, onLeft, onRight } of everyPlace(worked, clues)) {
    const [offLeft, offRight] = [(left ?? onLeft) - onLeft, (right ?? onRight) - onRight]
    if (Math.abs(offLeft) + Math.abs(offRight) > farthest) continue
    const agree = last.length === 0 ? 0 : agreement(madeBefore(worked, { row, done }), last)
    found.push({ row, done, agree, offLeft, offRight })
  }
  const cost = ({ offLeft, offRight, agree }: NearPlace): number =>
    2 * Math.abs(offLeft) + Math.abs(offRight) - 3 * agree
  return found.sort((a, b) => cost(a) - cost(b)).slice(0, most)
}
