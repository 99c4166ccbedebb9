import type { Swatch } from './gauge.ts'
import type { Ball, Weighed } from './yarn.ts'

/** What a knitter tells of a piece that she plans. Lengths in millimetres; null for what she does not tell. */
export interface Wishes {
  /** Of the finished piece: after blocking where it is to be blocked. */
  readonly width: number | null
  readonly length: number | null
  readonly blocked: boolean
  /** Decided already; they go before the width and the length. */
  readonly repeats: number | null
  readonly through: number | null
  /** Plain edge stitches that she adds, both sides together. */
  readonly added: number
  readonly swatch: Swatch
  readonly ball: Ball
  readonly weighed: Weighed | null
  /** Stitches that a measured length of yarn made. */
  readonly measuredYarn: { readonly stitches: number; readonly length: number } | null
  /** Stitches a minute. */
  readonly pace: number | null
  /** Millimetres. */
  readonly needle: number | null
}
