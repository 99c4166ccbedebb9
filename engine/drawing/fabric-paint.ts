import type { Look } from './display.ts'

/** What a piece of yarn is painted as: the ground, every other row of it a little darker; a mark; or a loop that a close-up tells from the others. */
export type Tint =
  | 'plain'
  | 'other-row'
  | 'over'
  | 'decrease'
  | 'edge'
  | 'repeat'
  | 'new'
  | `parent-${number}`

export const ink = '#3a332c'

/** At the yarn's sides, and along its middle, which catches the light. */
type Colours = readonly [string, string]

const ground: Colours = ['#d3bd98', '#ecdfc6']
const otherRow: Colours = ['#c4ab82', '#dcc7a1']
const marks: Readonly<Record<string, Colours>> = {
  over: ['#4f9fc4', '#86c6e0'],
  decrease: ['#d97d3a', '#f0a871'],
  edge: ['#98a57b', '#c0cba6'],
  repeat: ['#b99cc7', '#d9c6e2'],
  new: ['#cf4a2c', '#ee7a58'],
}
/** Told apart by how light they are as well as by hue. */
const parents: readonly Colours[] = [
  ['#1d5f94', '#3583bd'],
  ['#5daa7c', '#93d1aa'],
  ['#d9b32f', '#f3d869'],
  ['#7d58a6', '#a57fcd'],
  ['#2c8a8a', '#5fbcba'],
  ['#c98bb4', '#ecbcd9'],
  ['#6c6a2a', '#9a9850'],
  ['#86a9d6', '#b9d2f1'],
  ['#4a4a52', '#77777f'],
]

const coloursOf = (tint: Tint): Colours =>
  (tint === 'other-row' ? otherRow : marks[tint]) ??
  parents[(Number(/^parent-(\d+)$/.exec(tint)?.[1] ?? 0) - 1) % parents.length] ??
  ground

/** Marks are told by a pattern on the yarn too: beads of ink along a yarn over, bars across a decrease, a thread along an edge. */
const signs: Readonly<Record<string, Look & { readonly strokeWidth: number }>> = {
  over: { strokeWidth: 0.05, cap: 'round', dash: [0.0001, 0.12] },
  decrease: { strokeWidth: 0.11, dash: [0.024, 0.08] },
  edge: { strokeWidth: 0.02 },
}

/** How thick yarn is and how large its picture: both in units, the second for one stitch. */
export interface YarnSize {
  readonly thickness: number
  readonly units: number
}

/**
 * The coats of paint of yarn, the lowest first. What is lighter along the middle runs past the outlines,
 * so that pieces join without a line across the yarn.
 */
export function coatsOf(size: YarnSize, tint: Tint): Look[] {
  const name = tint === 'plain' ? '' : ` yarn-${tint in marks && tint !== 'new' ? 'mark-' : ''}${tint}`
  const [side, middle] = coloursOf(tint)
  return [
    lineCoat(size),
    { className: `yarn-fill${name}`, stroke: side, strokeWidth: size.thickness },
    {
      className: `yarn-shade${name}`,
      stroke: middle,
      strokeWidth: round(size.thickness * 0.64),
      cap: 'round',
    },
    ...signCoats(tint, size.units),
  ]
}

/** The outline, as wide as it shows on both sides of the yarn; it has its ink from the group round all yarn. */
const lineCoat = ({ thickness, units }: YarnSize): Look => ({
  className: 'yarn-line',
  strokeWidth: round(thickness + 0.036 * units),
})

/** What holds for all yarn unless a coat says otherwise. */
export const inked: Look = { fill: 'none', stroke: ink, join: 'round' }

function signCoats(tint: Tint, units: number): Look[] {
  const sign = signs[tint]
  if (sign === undefined) return []
  const { strokeWidth, dash = [], ...rest } = sign
  const dashes = dash.length === 0 ? {} : { dash: dash.map((length) => round(length * units)) }
  return [{ className: 'yarn-sign', strokeWidth: round(strokeWidth * units), ...rest, ...dashes }]
}

const round = (value: number): number => Math.round(value * 100) / 100

/** The same coats for yarn that ends: drawn round. */
export const roundEnded = (coats: readonly Look[]): Look[] => coats.map((coat) => ({ ...coat, cap: 'round' }))
