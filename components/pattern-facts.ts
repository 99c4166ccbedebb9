import { type Pattern, stitchesUsed } from '../engine/pattern/index.ts'
import { stitch } from '../engine/stitches/index.ts'
import type { Entry, ProvedEntry } from '../site/library.ts'

type Level = NonNullable<Pattern['about']['level']>

/** The trade's project levels, easiest first; what has none comes last. */
const levels: readonly Level[] = ['Basic', 'Easy', 'Intermediate', 'Complex']

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
export const mendAddress = (entry: Pick<Entry, 'slug'>): string => `${patternAddress(entry)}mend/`
export const adaptAddress = (entry: Pick<Entry, 'slug'>): string => `${patternAddress(entry)}adapt/`
export const measureAddress = (entry: Pick<Entry, 'slug'>): string => `${patternAddress(entry)}measure/`
export const practiceAddress = (entry: Pick<Entry, 'slug'>): string => `${patternAddress(entry)}practice/`
export const classSheetAddress = (entry: Pick<Entry, 'slug'>): string =>
  `${patternAddress(entry)}class-sheet/`

/** A picture that stands as a file beside the pattern's page. */
export const fabricFileAddress = (entry: Pick<Entry, 'slug'>, file: 'fabric' | 'as-knitted'): string =>
  `${patternAddress(entry)}${file}.svg`

/** The path that the site is published under, with a slash at both ends. */
export const siteRoot = (): string => import.meta.env.BASE_URL.replace(/\/*$/, '/')
