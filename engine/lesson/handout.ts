import { type Chart, chartOf } from '../chart/index.ts'
import type { Proof } from '../counts/index.ts'
import { chartDrawing, type Drawing } from '../drawing/index.ts'
import { work } from '../needles/index.ts'
import { printRow } from '../notation/index.ts'
import type { Pattern } from '../pattern/index.ts'
import { type CastOnNumber, castOnNumbers, castOnWords } from './cast-on.ts'
import { kindWords } from './facts.ts'
import type { ClassPattern, ClassPlan } from './handout-class.ts'
import { pageCode } from './handout-code.ts'
import { type HandoutStitch, handoutKey } from './handout-key.ts'
import { mirroredDrawing } from './handout-mirror.ts'
import { type HandoutRow, handoutRows } from './handout-rows.ts'
import { type Stuck, stuckBox } from './handout-stuck.ts'

/** A proved pattern of the library by its address. */
export interface HandoutSource {
  readonly slug: string
  readonly pattern: Pattern
  readonly proof: Proof
}

/** One pattern of the class on paper. */
export interface HandoutSheet {
  readonly slug: string
  readonly pattern: Pattern
  readonly repeats: number
  readonly version: string
  readonly code: string
  /** 'multiple of 6 plus 1'. */
  readonly rule: string
  /** Edge stitches before and after each row in words; empty where there are none. */
  readonly edges: string
  /** 'flat, patterned on the right side only'. */
  readonly kind: string
  readonly castOn: CastOnNumber
  /** The same for other numbers of repeats, for who wants a narrower or a wider piece. */
  readonly otherCastOns: readonly CastOnNumber[]
  readonly able: readonly string[]
  readonly key: readonly HandoutStitch[]
  readonly rows: readonly HandoutRow[]
  /** Null on paper that must serve without a chart. */
  readonly chart: Drawing | null
  /** Repeats that the chart shows. */
  readonly chartRepeats: number
  readonly stuck: Stuck
}

export interface Handout {
  readonly plan: ClassPlan
  readonly sheets: readonly HandoutSheet[]
}

/** Millimetres for a chart with its numbers, and for its widest and narrowest cells. */
interface ChartRoom {
  readonly width: number
  readonly most: number
  readonly least: number
}
const roomy: ChartRoom = { width: 170, most: 6.5, least: 4.4 }
const chartRooms: Readonly<Record<ClassPlan['print'], ChartRoom>> = {
  usual: roomy,
  'left-handed': roomy,
  easier: { width: 160, most: 7, least: 5 },
  // Cells are still 5 mm wide, and their numbers 7 points, when they come out at 70 %.
  'for copying': { width: 172, most: 7.5, least: 7 },
  large: roomy,
}

const isFixed = ({ castOn }: Pattern): boolean => 'fixed' in castOn

function chartAt(pattern: Pattern, repeats: number): Chart | null {
  const { worked } = work(pattern, repeats)
  return worked && chartOf(worked)
}

/** A chart as wide as the paper lets it be. */
function drawnFor(chart: Chart, { width, most }: ChartRoom): Drawing {
  return chartDrawing(chart, { cell: Math.min(most, width / cellsAcross(chart)), unit: 'mm' })
}

/** Cells with the numbers beside them. */
const cellsAcross = (chart: Chart): number => chartDrawing(chart, { cell: 1 }).width

interface Charted {
  readonly chart: Chart
  readonly drawing: Drawing | null
  readonly repeats: number
}

/** Two repeats, so that the line between them is seen, or one where two would be too small to read. */
function charted(pattern: Pattern, { print }: ClassPlan): Charted | null {
  const two = isFixed(pattern) ? null : chartAt(pattern, 2)
  const room = chartRooms[print]
  const fits = two !== null && room.width / cellsAcross(two) >= room.least
  const repeats = fits ? 2 : 1
  const chart = fits ? two : chartAt(pattern, 1)
  if (!chart) return null
  if (print === 'large') return { chart, repeats, drawing: null }
  const drawing = drawnFor(chart, room)
  return { chart, repeats, drawing: print === 'left-handed' ? mirroredDrawing(drawing) : drawing }
}

/** What to know before the class: common practice, no source. */
function ableTo({ worked, castOn }: Pattern, key: readonly HandoutStitch[]): string[] {
  const plain = key.filter(({ id }) => id === 'k' || id === 'p').map(({ name }) => name)
  const markers = 'fixed' in castOn ? [] : ['move a marker']
  return ['cast on', ...plain, ...(worked === 'round' ? ['join in the round'] : []), ...markers]
}

function edgeWords({ edges: { before, after } }: Pattern, terms: ClassPlan['terms']): string {
  const parts = [
    before.length > 0 ? `${printRow(before, { terms })} before` : '',
    after.length > 0 ? `${printRow(after, { terms })} after` : '',
  ]
  return parts.filter(Boolean).join(', ')
}

function sheetOf(source: HandoutSource, asked: ClassPattern, plan: ClassPlan): HandoutSheet | null {
  const { slug, pattern, proof } = source
  const repeats = isFixed(pattern) ? 1 : asked.repeats
  const drawn = charted(pattern, plan)
  const castOns = isFixed(pattern) ? castOnNumbers(pattern) : castOnNumbers(pattern, 1, Math.max(5, repeats))
  const castOn = castOns.find((one) => one.repeats === repeats)
  if (!drawn || !castOn) return null
  const mirrored = plan.print === 'left-handed'
  const written = [...pattern.setUp, ...pattern.rows].map(({ items }) => printRow(items, plan)).join('; ')
  const key = handoutKey(drawn.chart, { terms: plan.terms, mirrored, written })
  const rows = handoutRows(pattern, proof, { repeats, terms: plan.terms, mirrored })
  return {
    slug,
    pattern,
    repeats,
    version: pattern.about.version ?? 'draft',
    code: pageCode(pattern),
    rule: castOnWords(pattern.castOn),
    edges: edgeWords(pattern, plan.terms),
    kind: kindWords(pattern),
    castOn,
    otherCastOns: castOns.filter((one) => one !== castOn && one.repeats > 1 && one.repeats < 6),
    able: ableTo(pattern, key),
    key,
    rows,
    chart: drawn.drawing,
    chartRepeats: drawn.repeats,
    stuck: stuckBox(pattern, rows, key),
  }
}

/** A class as what goes on paper: every number from the proof, every word from the rows. Patterns not given are left out. */
export function handoutOf(plan: ClassPlan, sources: readonly HandoutSource[]): Handout {
  const sheets = plan.patterns.flatMap((asked) => {
    const source = sources.find(({ slug }) => slug === asked.pattern)
    const sheet = source ? sheetOf(source, asked, plan) : null
    return sheet ? [sheet] : []
  })
  return { plan, sheets }
}
