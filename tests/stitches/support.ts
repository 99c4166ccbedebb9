import type { Effect } from '../../engine/stitches/index.ts'

/**
 * The stack of a purl-faced decrease worked on the wrong side: its knit face is the right side, seen from
 * there.
 */
export const turnedStack = ({ takes, held, made }: Effect): number[] =>
  (made[0]?.through ?? []).map((number) => takes + held + 1 - number)
