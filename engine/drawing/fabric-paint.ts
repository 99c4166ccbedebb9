import type { Look } from './display.ts'

/** What a piece of yarn is painted as. */
export type Tint = 'plain' | 'over' | 'decrease' | 'edge' | 'repeat'

/** The yarn's own colour at its sides and along its middle, which catches the light. */
const colours: Readonly<Record<Tint, readonly [string, string]>> = {
  plain: ['#d3bd98', '#e8d9bd'],
  over: ['#5fa9c9', '#8fcbe3'],
  decrease: ['#de8743', '#f2ae78'],
  edge: ['#a9b48c', '#c9d2b1'],
  repeat: ['#c3a9cf', '#ddcbe5'],
}
export const ink = '#3a332c'

/** The coats of paint of yarn, the lowest first; widths in units. Fills run past the outlines, so that pieces join without a line. */
export function coatsOf(thickness: number, tint: Tint): Look[] {
  const name = tint === 'plain' ? '' : ` yarn-mark-${tint}`
  const [side, middle] = colours[tint]
  return [
    { className: 'yarn-line', stroke: ink, strokeWidth: thickness + 3.6 },
    { className: `yarn-fill${name}`, stroke: side, strokeWidth: thickness - 0.4 },
    { className: `yarn-shade${name}`, stroke: middle, strokeWidth: thickness * 0.64, cap: 'round' },
  ]
}
