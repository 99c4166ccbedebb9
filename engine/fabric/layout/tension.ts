import type { FabricState } from '../fabric.ts'

/**
 * How a fabric is held in a state: lengths at rest in stitch widths of the plain ground, stiffness in spring units.
 * Tuned by eye on drawn lace, not measured on yarn.
 */
export interface Tension {
  /** From one loop to the next in a row. */
  readonly width: number
  /** From a loop's base to its head. */
  readonly height: number
  /** To a yarn over from the loop beside it. */
  readonly over: number
  readonly overStiffness: number
  /** How far each length may be off, as a share of it: hands are not even. */
  readonly noise: number
}

const free: Tension = { width: 1, height: 0.8, over: 0.85, overStiffness: 0.35, noise: 0 }
const stretched = { across: 1.18, up: 1.12 } as const

export const tensions: Readonly<Record<FabricState, Tension>> = {
  pinned: free,
  free,
  unblocked: { width: 0.92, height: 0.72, over: 0.55, overStiffness: 0.8, noise: 0.06 },
  blocked: { ...free, width: stretched.across, height: 0.8 * stretched.up, over: stretched.across },
}
