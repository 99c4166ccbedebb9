import { same } from '../engine/base/index.ts'
import { type Pattern, type Row, stitchesUsed } from '../engine/pattern/index.ts'
import { stitch } from '../engine/stitches/index.ts'
import type { Entry, ProvedEntry } from '../site/library.ts'

type Level = NonNullable<Pattern['about']['level']>

/** The trade's project levels, easiest first; what has none comes last. */
const levels: readonly Level[] = ['Basic', 'Easy', 'Intermediate', 'Complex']

/** A row with anything but knits, purls and slips. */
const isPatterned = (row: Row): boolean =>
  [...stitchesUsed(row.items)].some(
    (id) => !['plain', 'twisted', 'slip', 'bind off'].includes(stitch(id).family),
  )

/** 'flat, patterned on the right side only', found from the rows. */
export function kindWords({ worked, setUp, rows }: Pattern): string {
  if (worked === 'round') return 'in the round'
  const sides = new Set([...setUp, ...rows].filter(isPatterned).map((row) => row.side))
  if (sides.size === 2) return 'flat, patterned on both sides'
  if (sides.has('RS')) return 'flat, patterned on the right side only'
  return sides.has('WS') ? 'flat, patterned on the wrong side only' : 'flat, without patterned rows'
}

/** Whether the count stays, comes back, or grows. */
export function countWords({
  pattern,
  proof,
}: ProvedEntry): 'stays the same' | 'changes and comes back' | 'grows' {
  if (pattern.growing) return 'grows'
  return proof.rows.every(({ before, after }) => same(before, after))
    ? 'stays the same'
    : 'changes and comes back'
}

/** 'Row' or 'Round'. */
export const rowWord = (pattern: Pattern): 'Row' | 'Round' => (pattern.worked === 'round' ? 'Round' : 'Row')

export const sideWords = { RS: 'right side', WS: 'wrong side' } as const

/** 'Row 3', 'Set-up round 1'. */
export function rowName(pattern: Pattern, row: number): string {
  const word = rowWord(pattern)
  return row >= 1 ? `${word} ${row}` : `Set-up ${word.toLowerCase()} ${row + pattern.setUp.length}`
}

/** 'Exercises in Knitting, Cornelia Mee, London, 1846'; null where the file names no source. */
export function sourceWords({ about: { source } }: Pattern): string | null {
  if (!source) return null
  return [source.title, source.author, source.place, source.year]
    .filter((part) => part !== undefined)
    .join(', ')
}

/** Different stitches beside knit and purl: what there is to learn. */
const newStitches = ({ setUp, rows }: Pattern): number =>
  [...stitchesUsed([...setUp, ...rows].flatMap((row) => row.items))].filter(
    (id) => stitch(id).family !== 'plain',
  ).length

/** By level, then fewest different stitches first, then the shortest. */
function byDifficulty(a: ProvedEntry, b: ProvedEntry): number {
  const order = [
    newStitches(a.pattern) - newStitches(b.pattern),
    a.pattern.rows.length - b.pattern.rows.length,
    a.title < b.title ? -1 : 1,
  ]
  return order.find((difference) => difference !== 0) ?? 0
}

export interface LevelGroup {
  readonly level: Level | null
  readonly entries: readonly ProvedEntry[]
}

/** The patterns in a sensible order to teach them in, under their levels. */
export function byLevel(entries: readonly ProvedEntry[]): LevelGroup[] {
  return [...levels, null]
    .map((level) => ({
      level,
      entries: entries.filter(({ pattern }) => (pattern.about.level ?? null) === level).sort(byDifficulty),
    }))
    .filter((group) => group.entries.length > 0)
}

/** Repeats that a chart or a listing shows: two, so that the line between them is seen, or one where two are too wide. */
export function shownRepeats({ pattern }: ProvedEntry, widest = 34): number {
  if ('fixed' in pattern.castOn) return 1
  return pattern.castOn.multiple * 2 + pattern.castOn.plus <= widest ? 2 : 1
}

/** The address of a pattern's page within the site. */
export const patternAddress = (entry: Pick<Entry, 'slug'>): string => `${siteRoot()}patterns/${entry.slug}/`
export const cardAddress = (entry: Pick<Entry, 'slug'>): string => `${siteRoot()}cards/${entry.slug}/`

/** The path that the site is published under, with a slash at both ends. */
export const siteRoot = (): string => import.meta.env.BASE_URL.replace(/\/*$/, '/')
