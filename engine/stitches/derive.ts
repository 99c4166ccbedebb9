import { numbersTo } from './effect.ts'
import { type Likeness, likenesses, lookOf, type View } from './look.ts'
import { perform } from './perform.ts'
import type { Effect, Made, Stitch, StitchEntry, StitchId } from './stitch.ts'

/** A stitch that gives the look of another, and how like it is. */
export interface Twin {
  readonly stitch: StitchId
  readonly likeness: Likeness
}

export interface Twins {
  readonly wrongSide: Twin | null
  readonly mirror: Twin | null
}

type Performed = StitchEntry & { readonly effect: Effect }

/** Builds the stitches of a catalogue: each with its effect, and with its twins among the others. */
export function deriveAll(
  entries: readonly StitchEntry[],
): { readonly stitch: Stitch; readonly twins: Twins }[] {
  const performed = entries.map((entry): Performed => ({ ...entry, effect: perform(entry.motions) }))
  const here = looksOf(performed, { workedOn: 'RS', mirrored: false })
  const fromBehind = looksOf(performed, { workedOn: 'WS', mirrored: false })
  const inMirror = looksOf(performed, { workedOn: 'RS', mirrored: true })
  return performed.map((each) => {
    const twins = {
      wrongSide: twinOf(each, here, fromBehind, 'same place'),
      mirror: twinOf(each, here, inMirror, 'first'),
    }
    return { stitch: derived(each, twins), twins }
  })
}

/** All looks of a catalogue from one view, at one likeness. */
interface Looks {
  readonly likeness: Likeness
  readonly of: ReadonlyMap<Performed, string>
  readonly alike: ReadonlyMap<string, readonly Performed[]>
}

const looksOf = (all: readonly Performed[], view: View): readonly Looks[] =>
  likenesses.map((likeness) => {
    const of = new Map(all.map((each) => [each, lookOf(each.effect, view, likeness)]))
    return { likeness, of, alike: Map.groupBy(all, (each) => of.get(each) ?? '') }
  })

/**
 * Finds whose look, seen the other way, is the look of a stitch here. The stitch itself is taken where it
 * serves; a less exact likeness only where no more exact one is to be had. A twin may lose a twist, but none
 * is put where the stitch has none.
 *
 * Of several that look alike, a mirror takes the first of the catalogue: it is the plainest (skp gives
 * k2tog). For the wrong side the one is taken that stands where the stitch stands among its own likes, so
 * that m1 gives m1p where m1l gives m1lp, and what passes a stitch over gives what passes one over.
 */
function twinOf(
  stitch: Performed,
  here: readonly Looks[],
  there: readonly Looks[],
  take: 'first' | 'same place',
): Twin | null {
  for (const [i, { likeness, of, alike }] of here.entries()) {
    const look = of.get(stitch) ?? ''
    const found = (there[i]?.alike.get(look) ?? []).filter(
      ({ effect }) => hasTwist(stitch.effect) || !hasTwist(effect),
    )
    if (found.includes(stitch)) return { stitch: stitch.id, likeness }
    const place = take === 'first' ? 0 : (alike.get(look)?.indexOf(stitch) ?? 0)
    const twin = found[Math.min(place, found.length - 1)]
    if (twin !== undefined) return { stitch: twin.id, likeness }
  }
  return null
}

const hasTwist = (effect: Effect): boolean =>
  effect.made.some((made) => made.twisted.includes(true) || made.strandTwist !== null)

function derived(entry: Performed, twins: Twins): Stitch {
  const { effect } = entry
  return {
    ...entry,
    takes: effect.takes,
    makes: effect.made.length,
    frontToBack: frontToBackOf(effect),
    lean: leanOf(effect),
    twisted: hasTwist(effect),
    wrongSideTwin: twins.wrongSide?.stitch ?? null,
    mirrorTwin: twins.mirror?.stitch ?? null,
    cells: Math.max(1, effect.made.length),
  }
}

function frontToBackOf(effect: Effect): readonly number[] {
  const first = effect.made[0] ?? effect.chain
  if (first === undefined || first === null) return []
  if (effect.inFront.length > 0) return [...effect.inFront, ...behindIn(effect)]
  if (first.slipped !== null && first.through.length === 0) return [first.slipped]
  return first.face === 'knit' ? first.through : first.through.toReversed()
}

const behindIn = ({ takes, inFront }: Effect): number[] =>
  numbersTo(takes).filter((n) => !inFront.includes(n))

function leanOf(effect: Effect): Stitch['lean'] {
  if (effect.inFront.length > 0) return effect.inFront.includes(1) ? 'left' : 'right'
  const [first] = effect.made
  if (first === undefined || first.face === 'purl') return null
  if (first.from === 'strand') return first.strandTwist
  if (first.from === 'below') return first.below === 'next' ? 'right' : 'left'
  return effect.made.length === 1 ? leanOfStack(first) : null
}

/**
 * The top loop tilts toward the middle of the group, where the new loop draws it: one from the left leans
 * right.
 */
function leanOfStack({ through }: Made): Stitch['lean'] {
  const [top] = through
  if (top === undefined || through.length < 2) return null
  const middle = (Math.min(...through) + Math.max(...through)) / 2
  return top === middle ? 'centre' : top > middle ? 'right' : 'left'
}
