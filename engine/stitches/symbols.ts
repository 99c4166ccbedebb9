import { catalogue, stitch } from './lookup.ts'
import type { Stitch, StitchId } from './stitch.ts'
import {
  banded,
  crossing,
  digit,
  dot,
  type End,
  fan,
  mirrored,
  oval,
  type Point,
  rake,
  type Stroke,
} from './symbol-shapes.ts'
import { feet, ownSymbols } from './symbol-table.ts'

export type { CurvePart, Point, Stroke } from './symbol-shapes.ts'

/** The sign of a stitch in a chart, as seen from the right side. */
export interface ChartSymbol {
  /** Cells that it is wide. */
  readonly cells: number
  readonly strokes: readonly Stroke[]
  /** The stitch's name. */
  readonly name: string
}

/** Stitches that show another's sign, because the fabric they make is the same loop for loop. */
export const sharedSymbols: Readonly<Record<StitchId, StitchId>> = {
  skp: 'ssk',
  ksp: 'k2tog',
  spp: 'p2tog',
  k2sp: 'k3tog',
  sp2p: 'p3tog',
  // On the right side the yarn is in back anyway.
  'sl wyib': 'sl',
}

/** No stitch is there: a tint, and thin lines that still tell it from a blank cell where tints are lost. */
export const noStitch: ChartSymbol = {
  cells: 1,
  strokes: [
    { kind: 'shade' },
    {
      kind: 'hatch',
      lines: [
        ...[1 / 3, 2 / 3, 1].map((at): [Point, Point] => [
          [0, at],
          [at, 0],
        ]),
        ...[1 / 3, 2 / 3].map((at): [Point, Point] => [
          [at, 1],
          [1, at],
        ]),
      ],
    },
  ],
  name: 'no stitch',
}

/** Signs that follow from the name: gatherings, increases in one stitch, nupps, crossings, stitches passed over a group. */
function fromName({ id, cells }: Stitch): Stroke[] | null {
  const gathering = /^([kp])(\d)tog( tbl)?$/.exec(id)
  if (gathering) return gathered(gathering[2] ?? '', gathering[1] === 'p', gathering[3] !== undefined)
  if (/^\(.*\) in 1$/.test(id))
    return rake([...id.matchAll(/k1|p1|yo/g)].map(([part]) => endOf(part)).reverse())
  if (/^nupp\d$/.test(id)) return [oval(0.14, 0.16, cells - 0.14, 0.84), digit(cells, cells / 2, 0.5, 0.54)]
  const crossed = /^(\d)\/(\d) ([RL])(P?)C$/.exec(id)
  if (crossed) {
    const toTheRight = crossing(Number(crossed[1]), Number(crossed[2]), crossed[4] === 'P')
    return crossed[3] === 'R' ? toTheRight : mirrored(toTheRight, cells)
  }
  return /^sl1 k\d psso$/.test(id) ? banded(cells, cells - 0.18) : null
}

const endOf = (part: string): End => (part === 'k1' ? 'knit' : part === 'p1' ? 'purl' : 'yarn over')

function gathered(count: string, purled: boolean, back: boolean): Stroke[] {
  const right = [
    ...fan([0.82, 0.14], feet, 0.52),
    digit(count, purled ? 0.58 : 0.5, 0.78, 0.5),
    ...(purled ? [dot(0.2, 0.78)] : []),
  ]
  return back ? mirrored(right) : right
}

function drawn(entry: Stitch): ChartSymbol {
  const strokes = ownSymbols[sharedSymbols[entry.id] ?? entry.id] ?? fromName(entry)
  if (strokes === null) throw new Error(`the stitch '${entry.id}' has no chart symbol`)
  return { cells: entry.cells, strokes, name: entry.name }
}

const symbols: ReadonlyMap<StitchId, ChartSymbol> = new Map(
  catalogue.map((entry) => [entry.id, drawn(entry)]),
)

/** The chart symbol of a stitch of the catalogue. */
export const symbolOf = (id: StitchId): ChartSymbol => symbols.get(id) ?? drawn(stitch(id))
