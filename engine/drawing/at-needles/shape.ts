import type { FabricLoopId } from '../../fabric/index.ts'
import type { Curve } from './geometry.ts'
import type { Name } from './scene.ts'

/**
 * What a piece is painted as: yarn of a loop on a needle, of the fabric below, of loops that are taken next or have just
 * come, and the working yarn; a needle's body, its outline, and its shine.
 */
export type Look = 'yarn' | 'below' | 'next' | 'new' | 'working' | 'needle' | 'line' | 'gleam'

/** A piece as it lies in one scene. */
export interface Shape {
  readonly key: string
  readonly curve: Curve
  readonly layer: number
  readonly look: Look
  readonly loop: FabricLoopId | null
  /** The half of a loop that lies before its needle. */
  readonly front?: true
}

/** What the pieces of a loop are called by. Loops that come to nothing have no number. */
export const keyOf = (loop: FabricLoopId, name: Name | null): string =>
  loop < 0 || name === 'strand 0' ? `${name}` : `${loop}`
