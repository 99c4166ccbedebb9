import type { Deed, LaidStitch } from '../needles/index.ts'
import { effectOf, type Motion, perform, type StitchId } from '../stitches/index.ts'

/** A deed with what it does to the count, and the stretch between two markers that its loops come to lie in. */
export interface Act {
  readonly deed: Deed
  readonly takes: number
  readonly makes: number
  /** Index into the plan's sections. */
  readonly section: number
  /** Worked as often as there are loops: 'purl to the end'. */
  readonly open: boolean
  /** Index of the right row's step that stands here; null for what was never meant. */
  readonly step: number | null
}

const totals = new Map<readonly Motion[], readonly [number, number]>()

/** Takes and makes of changed motions, found by performing them. */
function totalsOf(motions: readonly Motion[]): readonly [number, number] {
  const known = totals.get(motions)
  if (known) return known
  const { takes, made } = perform(motions)
  const found = [takes, made.length] as const
  totals.set(motions, found)
  return found
}

export function stitchAct(laid: LaidStitch, section: number, open: boolean, step: number | null): Act {
  if (laid.motions) {
    const [takes, makes] = totalsOf(laid.motions)
    return { deed: laid, takes, makes, section, open, step }
  }
  const { takes, made } = effectOf(laid.stitch)
  return { deed: laid, takes, makes: made.length, section, open, step }
}

/** The stitch that an act works; null for a loop that falls or is lifted. */
export const stitchOf = (act: Act | undefined): StitchId | null =>
  act?.deed.do === 'stitch' ? act.deed.stitch : null

/** Another stitch in the place of an act, perhaps with motions of its own. */
export function instead(act: Act, stitch: StitchId, motions: readonly Motion[] | null = null): Act {
  if (act.deed.do !== 'stitch') return act
  const { do: kind, span, repeat, position, part } = act.deed
  const laid: LaidStitch = { do: kind, stitch, span, repeat, position, part, ...(motions ? { motions } : {}) }
  return stitchAct(laid, act.section, false, act.step)
}

/** The same act in another section: a marker lies on its other side. */
export const moved = (act: Act, section: number): Act => ({ ...act, section })

/** A loop that slides off the left needle in front of an act. */
export const fallBefore = (act: Act): Act => ({
  deed: { do: 'fall' },
  takes: 1,
  makes: 0,
  section: act.section,
  open: false,
  step: null,
})

/** A loop of the right needle lifted over the `over` loops after it. */
export const liftAfter = (act: Act, over: number): Act => ({
  deed: { do: 'lift', over },
  takes: 0,
  makes: -1,
  section: act.section,
  open: false,
  step: null,
})
