import type { Chart } from '../chart/index.ts'
import type { Terms } from '../notation/index.ts'
import { type ChartSymbol, noStitch, type StitchId, stitch, symbolOf } from '../stitches/index.ts'

/** A sign of the chart with the rows in which it stands for this stitch; null where it does in all. */
export interface HandoutSign {
  readonly symbol: ChartSymbol
  readonly rows: 'right-side rows' | 'wrong-side rows' | null
}

/** A stitch of the rows: how it is written, what it does to the count, which way it leans. */
export interface HandoutStitch {
  readonly id: StitchId | 'none'
  readonly short: string
  readonly name: string
  /** '+1', '−2', '0'. */
  readonly change: string
  /** 'leans right'; null where nothing leans or sources disagree. */
  readonly lean: string | null
  readonly signs: readonly HandoutSign[]
}

const signed = (n: number): string => (n > 0 ? `+${n}` : n < 0 ? `−${-n}` : '0')

interface Looks {
  readonly RS: Set<StitchId>
  readonly WS: Set<StitchId>
}

const otherLean = { left: 'right', right: 'left' } as const

/** Lean is named where it is worked on the right side. Who knits from the right needle to the left one sees the other lean. */
function leanOf(id: StitchId, { RS }: Looks, mirrored: boolean): string | null {
  const { lean } = stitch(id)
  if (lean === null || RS.size === 0) return null
  if (lean === 'centre') return 'stands upright'
  return `leans ${mirrored ? otherLean[lean] : lean}`
}

/** The stitches that the hands work, in the order of first use, each with its looks in right-side and wrong-side rows. */
function looksOf(chart: Chart): Map<StitchId, Looks> {
  const looks = new Map<StitchId, Looks>()
  for (const { side, cells } of chart.rows) {
    for (const cell of cells) {
      if (cell.kind !== 'stitch') continue
      const of = looks.get(cell.worked) ?? { RS: new Set<StitchId>(), WS: new Set<StitchId>() }
      of[side].add(cell.stitch)
      looks.set(cell.worked, of)
    }
  }
  return looks
}

const drawn = ({ strokes, cells }: ChartSymbol): string => JSON.stringify([cells, strokes])

/** A sign that stands for one stitch only needs no word on the rows. */
function plainly(key: readonly HandoutStitch[]): HandoutStitch[] {
  const users = new Map<string, Set<string>>()
  for (const { id, signs } of key)
    for (const { symbol } of signs) users.set(drawn(symbol), (users.get(drawn(symbol)) ?? new Set()).add(id))
  const isOwn = ({ symbol }: HandoutSign): boolean => users.get(drawn(symbol))?.size === 1
  return key.map((one) => {
    const own = one.signs.length === 1 && one.signs.every(isOwn)
    return own ? { ...one, signs: one.signs.map((sign) => ({ ...sign, rows: null })) } : one
  })
}

function signsOf({ RS, WS }: Looks, bothSides: boolean): HandoutSign[] {
  const both = [...RS].every((id) => WS.has(id)) && [...WS].every((id) => RS.has(id))
  const sign = (rows: HandoutSign['rows']) => (id: StitchId) => ({ symbol: symbolOf(id), rows })
  if (!bothSides || both) return [...RS, ...(both ? [] : WS)].map(sign(null))
  return [...[...RS].map(sign('right-side rows')), ...[...WS].map(sign('wrong-side rows'))]
}

/** British words name a yarn over by its neighbours: those that the rows do use. */
function shortOf(id: StitchId, terms: Terms, written: string): string {
  const { us, uk } = stitch(id)
  if (terms === 'us') return us
  const overs = [...new Set(written.match(/\b(?:yfwd|yrn|yfrn|yon)\b/g))]
  return id === 'yo' && overs.length > 0 ? overs.join(', ') : uk
}

export interface KeyWishes {
  readonly terms: Terms
  /** For who knits from the right needle to the left one. */
  readonly mirrored: boolean
  /** The rows in words. */
  readonly written: string
}

/** The stitches that the rows use and no others. */
export function handoutKey(chart: Chart, { terms, mirrored, written }: KeyWishes): HandoutStitch[] {
  const bothSides = chart.rows.some(({ side }) => side === 'WS')
  const key = [...looksOf(chart)].map(([id, looks]): HandoutStitch => {
    const { name, takes, makes } = stitch(id)
    return {
      id,
      short: shortOf(id, terms, written),
      name,
      change: signed(makes - takes),
      lean: leanOf(id, looks, mirrored),
      signs: signsOf(looks, bothSides),
    }
  })
  if (!chart.hasNone) return plainly(key)
  const signs = [{ symbol: noStitch, rows: null }]
  const name = 'no stitch is there: pass on to the next sign'
  return plainly([...key, { id: 'none', short: '', name, change: '0', lean: null, signs }])
}
