import type { Likeness, Stitch } from '../../engine/stitches/index.ts'

const loops = (n: number): string => `${n} ${n === 1 ? 'loop' : 'loops'}`

/** '2 loops', '1 loop and 1 held one', 'none'. */
export function takesWords({ takes, effect: { held } }: Stitch): string {
  if (held > 0) return `${loops(takes)} and ${held} held`
  return takes === 0 ? 'none' : loops(takes)
}

export function makesWords({ makes, effect }: Stitch): string {
  if (effect.parked > 0) return `none; ${loops(effect.parked)} on the holder`
  return makes === 0 ? 'none' : loops(makes)
}

/** '+1', '−2', '0': what the count changes by. */
export function changeWords({ takes, makes }: Pick<Stitch, 'takes' | 'makes'>): string {
  const difference = makes - takes
  return difference > 0 ? `+${difference}` : difference < 0 ? `−${-difference}` : '0'
}

/** Lean is named for the right side only: 'left', 'centred'. */
export const leanWords = ({ lean }: Stitch): string | null => (lean === 'centre' ? 'centred' : lean)

/** Why no lean is named: published sources disagree about the purl side. */
export const noLeanWords = ({ takes, effect: { made } }: Stitch): string =>
  takes > 1 && made[0]?.face === 'purl' ? 'not named for a purl' : 'none'

/** How like a twin is, as a part of a sentence that names it. */
export const likenessWords: Readonly<Record<Likeness, string>> = {
  exact: 'the same loop for loop',
  'twisted either way': 'the same, but for the way in which a loop is twisted',
  'but for twists': 'the same, but for twists',
  'same on top': 'with the same loop on top; those behind it lie in another order',
  'as a knot': 'gathering the same loops; so many make a knot, and no single one shows',
}
