import type { StitchId } from '../stitches/index.ts'

/** Why an adaptation cannot be done. */
export interface Refusal {
  readonly code: RefusalCode
  /** A row of the pattern given; null where it is about the whole. */
  readonly row: number | null
  readonly stitch: StitchId | null
  readonly sentence: string
  /** What to try instead; null where there is nothing. */
  readonly hint: string | null
}

export type RefusalCode =
  | 'not-proved'
  | 'too-large'
  | 'already'
  | 'growing'
  | 'no-repeat'
  | 'row-not-plain-stitches'
  | 'edges-change-the-count'
  | 'no-twin'
  | 'no-straight-line'
  | 'no-family'
  | 'no-doubles'
  | 'no-place'
  | 'round-has-no-sides'
  | 'do-not-match'
  | 'does-not-come-out'

export interface Refused {
  readonly ok: false
  readonly refusal: Refusal
}

export function refuse(
  code: RefusalCode,
  sentence: string,
  more: { readonly row?: number; readonly stitch?: StitchId; readonly hint?: string } = {},
): Refused {
  const { row, stitch, hint } = more
  return {
    ok: false,
    refusal: { code, row: row ?? null, stitch: stitch ?? null, sentence, hint: hint ?? null },
  }
}

/** Whether something is a refusal instead of what was wanted. */
export const isRefused = (value: object): value is Refused => 'refusal' in value
