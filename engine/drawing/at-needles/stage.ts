import type { Hanging } from './bend.ts'
import { heightAt, type Line, type Point, plus } from './geometry.ts'
import type { Moment } from './moment.ts'
import type { Name, Scene } from './scene.ts'
import { sizes } from './sizes.ts'

/** A needle where it lies: its tip, and the line of its middle. */
export interface NeedlePlace {
  readonly line: Line
  readonly tip: number
  /** From here on toward its tip it lies on the other side of the other needle; where that is past the tip, nowhere. */
  readonly split: number
}

/** Where everything is that the hands hold. Unit: stitch widths, x from the middle of the picture. */
export interface Stage {
  readonly left: NeedlePlace
  readonly right: NeedlePlace
  /** How far the loops have moved on from before the stitch, 0, to after it, 1. */
  readonly moved: number
  readonly hanging: Hanging
  /** The loops of the stitch that are on a needle. */
  readonly places: ReadonlyMap<Name, { readonly on: 'left' | 'right' | 'cable' | 'both'; readonly x: number }>
  /** Where the right tip goes through loops of the left needle, or to something below them. */
  readonly hole: Point
  /** How far the loops that wait hang from their places, away from the tip. */
  readonly pushed: number
  /** How far right of the middle the working yarn keeps clear of a loop that was just drawn through. */
  readonly aside: number
  /** Where lifted loops are held. */
  readonly top: Point | null
}

/** How far past the hole a tip goes that is through, and how far before it one stops that is not. */
const deep = { knit: 1.42, purl: 1.2 } as const
const shallow = -0.12
/** How steep the needles cross, and how far the left one rises for it. */
const crossing = { right: -0.42, left: 0.22, lift: 0.42 } as const
/** How far the loops that wait are pushed from one that the tip is in. */
const pushed = 0.72
/** The middle of a hole below the middle of the left needle. */
export const holeBelow = 0.4

export function stageOf(before: Moment, after: Moment, scene: Scene, isLast: boolean): Stage {
  const slide = {
    left: after.shift.waiting - before.shift.waiting,
    right: after.shift.made - before.shift.made,
  }
  const { hands } = scene
  const onRight = isLast ? [] : hands.right
  const reachedX = (n: number): number => before.left[n - 1]?.x ?? lastX(before) - (n - before.left.length)
  const firstRight = before.right[0]?.x ?? sizes.first + 1
  const gapAt = (moved: number): number =>
    firstRight + slide.right * moved - leftX(hands.left, reachedX, slide.left * moved)
  const wanted = 0.62 * onRight.length + 0.95 - gapAt(0)
  const growth = slide.right - slide.left
  const moved = isLast
    ? 1
    : slide.left < 0.1
      ? madePart(scene, before, after)
      : growth > 0.1
        ? Math.min(0.92, Math.max(0, wanted / growth))
        : 0
  const from = (n: number): number => reachedX(n) + slide.left * moved
  const places = new Map<Name, { on: 'left' | 'right' | 'cable' | 'both'; x: number }>()
  if (!isLast) placeLeft(places, hands.left, from, scene)
  const leftEdge = isLast
    ? (after.left[0]?.x ?? -sizes.first)
    : (places.get(hands.left[0] ?? 'before 1')?.x ?? from(taken(hands) + 1))
  const newest = isLast
    ? (after.right[0]?.x ?? sizes.first)
    : placeRight(places, scene, onRight, firstRight + slide.right * moved, leftEdge)
  for (const [i, name] of (hands.cable?.loops ?? []).entries())
    places.set(name, { on: 'cable', x: from(i + 1) + 0.35 })
  if (before.right[0]?.id === null && !isLast && !scene.passed)
    places.set('before 1', { on: 'right', x: firstRight + slide.right * moved })
  const middle = isLast ? 0 : (leftEdge + Math.max(newest, leftEdge + 1.2)) / 2
  const frame = { middle, leftEdge, newest, places, scene }
  const needles = needlesOf(frame)
  return {
    ...needles,
    moved,
    places,
    aside: scene.through.size > 0 && scene.tip.at === 'rest' ? 0.55 : 0,
    pushed: scene.tip.at === 'loops' && scene.tip.deep ? pushed : 0,
    hanging: {
      waiting: before.shift.waiting + slide.left * moved,
      made: before.shift.made + slide.right * moved,
      lag: before.lag + (after.lag - before.lag) * Math.max(moved, madePart(scene, before, after)),
      middle,
      left: needles.left.line,
      right: needles.right.line,
    },
  }
}

const lastX = ({ left }: Moment): number => left.at(-1)?.x ?? -sizes.first + 1

/** Loops of the left needle that are gone from it. */
function taken({ left, right, cable, parked }: Scene['hands']): number {
  const gone = [...right, ...(cable?.loops ?? []), ...parked].filter((name) => name.startsWith('old')).length
  const numbers = left.flatMap((name) => (name.startsWith('old') ? [Number(name.slice(4))] : []))
  return numbers.length > 0 ? Math.min(...numbers) - 1 : gone
}

type LeftX = (n: number) => number

function leftX(left: readonly Name[], reachedX: LeftX, slide: number): number {
  const first = left.find((name) => name.startsWith('old'))
  return (first === undefined ? reachedX(1) : reachedX(Number(first.slice(4)))) + slide
}

type Places = Map<Name, { on: 'left' | 'right' | 'cable' | 'both'; x: number }>

/** Loops that were there stay where they are; what came to the tip hangs before them, what was put among them between. */
function placeLeft(places: Places, left: readonly Name[], from: LeftX, scene: Scene): void {
  const known = left.map((name) => (name.startsWith('old') ? from(Number(name.slice(4))) : null))
  for (const [i, name] of left.entries()) {
    const x = known[i]
    const next = known.findIndex((one, at) => at > i && one !== null)
    const previous = places.get(left[i - 1] ?? 'before 1')?.x
    const beyond = known[next]
    const gap = name.startsWith('strand') ? 0.6 : 1
    const put =
      x ??
      (previous !== undefined
        ? previous - 0.55
        : beyond !== undefined && beyond !== null
          ? beyond + gap * (next - i)
          : from(taken(scene.hands) + 1) + gap * (left.length - i))
    places.set(name, { on: 'left', x: put })
  }
  const { tip } = scene
  if (tip.at !== 'loops') return
  // The tip goes through several loops at one place, so they are pushed together.
  const together = tip.loops.length < 2 ? 0 : Math.min(0.46, 0.75 / (tip.loops.length - 1))
  const first = places.get(tip.loops[0] ?? 'before 1')?.x ?? -sizes.first
  for (const [i, name] of tip.loops.entries())
    places.set(name, { on: tip.way === 'knit back' ? 'both' : 'left', x: first - i * together })
  if (!tip.deep) return
  for (const name of left.filter((one) => !tip.loops.includes(one))) {
    const place = places.get(name)
    if (place !== undefined) places.set(name, { ...place, x: place.x - pushed })
  }
}

/** Loops of the stitch on the right needle follow those that were there, nearer together where there is less room. */
function placeRight(
  places: Places,
  scene: Scene,
  right: readonly Name[],
  older: number,
  leftEdge: number,
): number {
  const room = older - (leftEdge + 0.95)
  const pitch = right.length < 2 ? 1 : Math.max(0.3, Math.min(0.72, room / right.length))
  for (const [i, name] of right.entries()) places.set(name, { on: 'right', x: older - (i + 1) * pitch })
  // What hangs through loops on the left needle still hangs right beside them.
  const drawn = right.filter((name) => scene.through.has(name))
  for (const [i, name] of drawn.entries()) {
    const own = places.get(name)?.x ?? older
    const near = leftEdge + 0.16 + 0.5 * (drawn.length - 1 - i)
    places.set(name, { on: 'right', x: Math.min(own, near) })
  }
  return Math.min(older - right.length * pitch, drawn.length > 0 ? leftEdge + 0.16 : older)
}

interface Frame {
  readonly middle: number
  readonly leftEdge: number
  readonly newest: number
  readonly places: Places
  readonly scene: Scene
}

function needlesOf(frame: Frame): Pick<Stage, 'left' | 'right' | 'hole' | 'top'> {
  const { middle, leftEdge, newest, scene, places } = frame
  const rest = {
    left: { rise: sizes.fall.left, height: sizes.fall.left * (0.5 - middle) },
    right: { rise: -sizes.fall.right, height: sizes.fall.right * (0.5 + middle) },
  }
  const left: NeedlePlace = { line: rest.left, tip: Math.max(middle - 0.1, leftEdge + 0.62), split: 99 }
  const right: NeedlePlace = { line: rest.right, tip: Math.min(middle + 0.1, newest - 0.62), split: -99 }
  const { tip, lifted, taking } = scene
  if (tip.at === 'loops') return crossed(frame, tip, left)
  if (tip.at === 'below') {
    const hole: Point =
      tip.of === 'next'
        ? [leftEdge, heightAt(rest.left, leftEdge) - 1.02]
        : [newest, heightAt(rest.right, newest) - 1.7]
    const line = through(hole, tip.of === 'next' ? -0.35 : -0.2)
    return { left, right: { line, tip: hole[0] - 0.75, split: hole[0] }, hole, top: null }
  }
  if (lifted !== null) {
    const xs = lifted.over.map((name) => places.get(name)?.x ?? newest)
    const x = lifted.by === 'left' ? Math.min(newest, ...xs) : Math.max(leftEdge, ...xs)
    const on = lifted.by === 'left' ? rest.right : rest.left
    const top: Point = plus([x, heightAt(on, x)], [lifted.by === 'left' ? -0.16 : 0.16, 0.86])
    if (lifted.by === 'left') {
      const rise = Math.min(
        0.42,
        (top[1] - 0.1 - heightAt(rest.left, leftEdge)) / Math.max(0.6, top[0] - leftEdge),
      )
      return {
        left: { line: through(plus(top, [0, -0.1]), rise), tip: top[0] + 0.3, split: leftEdge + 0.4 },
        right,
        hole: top,
        top,
      }
    }
    const rise = Math.max(
      -0.42,
      (heightAt(rest.right, newest) - top[1] + 0.1) / Math.max(0.6, newest - top[0]),
    )
    return {
      left,
      right: { line: through(plus(top, [0, -0.1]), rise), tip: top[0] - 0.3, split: newest - 0.4 },
      hole: top,
      top,
    }
  }
  if (scene.through.size > 0) {
    // What was drawn through is held up above the left needle, before it or behind it.
    const held: Point = [newest, heightAt(rest.left, leftEdge) + 0.56]
    return { left, right: { ...right, line: through(held, -0.26) }, hole: held, top: null }
  }
  const far = taking.length === 0 ? null : Math.max(...taking.map((name) => places.get(name)?.x ?? newest))
  const nearer =
    far === null
      ? left
      : {
          ...left,
          tip: far + 0.35,
          split: leftEdge + 0.4,
          line: through([newest, heightAt(rest.right, newest) + 0.06], rest.left.rise),
        }
  return { left: nearer, right, hole: [leftEdge, heightAt(rest.left, leftEdge) - holeBelow], top: null }
}

const through = ([x, y]: Point, rise: number): Line => ({ rise, height: y - rise * x })

function crossed(
  { places, leftEdge }: Frame,
  tip: Scene['tip'] & { at: 'loops' },
  rest: NeedlePlace,
): Pick<Stage, 'left' | 'right' | 'hole' | 'top'> {
  const xs = tip.loops.map((name) => places.get(name)?.x ?? leftEdge)
  const x = xs.reduce((sum, one) => sum + one, 0) / Math.max(1, xs.length)
  const line = through([leftEdge, heightAt(rest.line, leftEdge) + crossing.lift], crossing.left)
  const hole: Point = [x, heightAt(line, x) - holeBelow]
  const reach = !tip.deep ? shallow : tip.way === 'purl' || tip.way === 'purl back' ? deep.purl : deep.knit
  const right: NeedlePlace = {
    line: through(hole, crossing.right),
    tip: x - reach,
    split: tip.way === 'knit' ? x : -99,
  }
  return { left: { ...rest, line }, right, hole, top: null }
}

/** How much of what the step makes hangs on the right needle. */
function madePart({ hands }: Scene, before: Moment, after: Moment): number {
  const fresh = after.right.length - before.right.length
  return fresh < 1 ? 0 : Math.min(1, hands.right.length / fresh)
}
