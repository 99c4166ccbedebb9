import type { Hanging } from './cloth.ts'
import type { Point } from './geometry.ts'
import type { Moment } from './moment.ts'
import { type NeedlePlace, needlesIn } from './needle-places.ts'
import type { Name, Scene } from './scene.ts'
import { sizes } from './sizes.ts'

/** A loop of the stitch in the hands, and where along its needle it hangs. */
export interface Placed {
  readonly on: 'left' | 'right' | 'cable' | 'holder'
  readonly x: number
}

/** Where everything is that the hands hold. Unit: stitch widths, x from the middle of the picture. */
export interface Stage {
  readonly left: NeedlePlace
  readonly right: NeedlePlace
  readonly hanging: Hanging
  /** How far the loops that the stitch leaves alone have moved from their places before it. */
  readonly moved: { readonly left: number; readonly right: number }
  readonly places: ReadonlyMap<Name, Placed>
  /** Where the right tip goes through loops of the left needle, or to something below them. */
  readonly hole: Point
  /** How far right of the middle the working yarn keeps clear of a loop that was just drawn through. */
  readonly aside: number
  /** Where lifted loops are held. */
  readonly top: Point | null
}

/** How far loops that wait are pushed from one that the tip is in. */
const pushed = 0.72

/** `taken`: how many loops of the left needle the whole stitch takes. */
export function stageOf(before: Moment, after: Moment, scene: Scene, taken: number, isLast: boolean): Stage {
  const slide = {
    left: after.shift.waiting - before.shift.waiting,
    right: after.shift.made - before.shift.made,
  }
  const firstRight = before.right[0]?.x ?? sizes.first + 1
  const part = isLast ? 1 : partMoved(before, after, scene, taken, firstRight)
  const from = (n: number): number => reachedX(before, n) + slide.left * part
  const places = new Map<Name, Placed>()
  const older = firstRight + slide.right * part
  if (!isLast) {
    placeLeft(places, scene, taken, from)
    placeApart(places, scene, taken, from)
    if (before.right[0]?.id === null && !scene.passed) places.set('before 1', { on: 'right', x: older })
  }
  const leftEdge = isLast
    ? (after.left[0]?.x ?? -sizes.first)
    : (places.get(scene.hands.left[0] ?? 'none 0')?.x ?? from(taken + 1))
  const newest = isLast ? (after.right[0]?.x ?? sizes.first) : placeRight(places, scene, older, leftEdge)
  const middle = isLast ? 0 : (leftEdge + Math.max(newest, leftEdge + 1.2)) / 2
  const done = Math.max(part, madePart(scene, before, after))
  const mixed = (from: number, to: number): number => from + (to - from) * done
  const needles = needlesIn({ middle, leftEdge, newest, places, scene })
  const isIn = scene.tip.at === 'loops' && scene.tip.deep
  return {
    ...needles,
    places,
    moved: { left: slide.left * part - (isIn ? pushed : 0), right: slide.right * part },
    aside: scene.through.size > 0 && scene.tip.at === 'rest' ? 0.4 : 0,
    hanging: {
      waiting: before.shift.waiting + slide.left * part,
      made: before.shift.made + slide.right * part,
      straight: {
        low: mixed(before.straight.low, after.straight.low),
        made: mixed(before.straight.made, after.straight.made),
      },
      middle,
      left: needles.left.line,
      right: needles.right.line,
    },
  }
}

/** Where the nth loop of the left needle hung before the stitch. */
function reachedX({ left }: Moment, n: number): number {
  const known = left[n - 1]?.x
  return known ?? (left.at(-1)?.x ?? 1 - sizes.first) - (n - left.length)
}

/**
 * How far the fabric has moved on: with every loop that is done, and farther where what is new would find no room. A stitch
 * that takes no loop moves it with what it makes.
 */
function partMoved(before: Moment, after: Moment, scene: Scene, taken: number, firstRight: number): number {
  const slide = {
    left: after.shift.waiting - before.shift.waiting,
    right: after.shift.made - before.shift.made,
  }
  if (slide.left < 0.1) return madePart(scene, before, after)
  const done = taken === 0 ? 0 : 1 - oldLoops(scene.hands).length / taken
  const growth = slide.right - slide.left
  if (growth < 0.1) return done
  const gap = firstRight - reachedX(before, Math.max(1, numberOf(scene.hands.left.find(isOld))))
  const wanted = 0.5 * scene.hands.right.length + 0.95
  return Math.max(done, Math.min(0.92, (wanted - gap) / growth))
}

/** How much of what the stitch makes hangs on the right needle. */
function madePart({ hands }: Scene, before: Moment, after: Moment): number {
  const fresh = after.right.length - before.right.length
  return fresh < 1 ? 0 : Math.min(1, hands.right.length / fresh)
}

const isOld = (name: Name): boolean => name.startsWith('old')
const numberOf = (name: Name | undefined): number => Number(name?.split(' ')[1] ?? 0)

/** Loops that the stitch found on the left needle and that still hang on something. */
const oldLoops = ({ left, right, cable, parked }: Scene['hands']): Name[] =>
  [...left, ...right, ...(cable?.loops ?? []), ...parked].filter(isOld)

type Places = Map<Name, Placed>

/**
 * Loops that were there stay where they are, as long as all those behind them do; what came to the tip hangs before them, what
 * was put among them between.
 */
function placeLeft(places: Places, scene: Scene, taken: number, from: (n: number) => number): void {
  const { left } = scene.hands
  const end = from(taken + 1)
  const known = left.map((name, i) => {
    const behind = left.slice(i + 1).filter(isOld).length
    return isOld(name) && behind === taken - numberOf(name) ? from(numberOf(name)) : null
  })
  for (const [i, name] of left.entries()) {
    const next = known.findIndex((x, at) => at > i && x !== null)
    const previous = isOld(name) ? undefined : places.get(left[i - 1] ?? 'none 0')?.x
    const gap = name.startsWith('strand') ? 0.6 : 1
    const before = next < 0 ? end + gap * (left.length - i) : (known[next] ?? end) + gap * (next - i)
    places.set(name, { on: 'left', x: known[i] ?? (previous === undefined ? before : previous - 0.55) })
  }
  pushTogether(places, scene, end)
}

/** The tip goes through several loops at one place, so they come together, and the others make way. */
function pushTogether(places: Places, { tip, hands, through }: Scene, end: number): void {
  const loops = tip.at === 'loops' ? tip.loops : ([...through.values()].at(-1) ?? [])
  const pitch = loops.length < 2 ? 0 : Math.min(0.46, 0.75 / (loops.length - 1))
  // A loop of a lower row comes up on the tip before the first.
  const first =
    places.get(loops[0] ?? 'none 0')?.x ?? (places.get(hands.left[0] ?? 'none 0')?.x ?? end) + 0.72
  for (const [i, name] of loops.entries()) places.set(name, { on: 'left', x: first - i * pitch })
  if (tip.at !== 'loops' || !tip.deep) return
  for (const name of hands.left.filter((one) => !loops.includes(one))) {
    const place = places.get(name)
    if (place !== undefined) places.set(name, { ...place, x: place.x - pushed })
  }
}

/** Loops on a cable needle, and those that wait on a holder beside the last loop of the row. */
function placeApart(
  places: Places,
  { hands: { cable, left, right, worked }, holds }: Scene,
  taken: number,
  from: (n: number) => number,
): void {
  const waiting = cable?.loops ?? []
  const near = from(taken - left.filter(isOld).length + 1) + 0.35
  for (const [i, name] of waiting.entries()) places.set(name, { on: 'cable', x: near + waiting.length - i })
  const isFetched = [...left, ...right, ...worked].some((name) => name.startsWith('held'))
  if (holds && !isFetched) places.set('held 1', { on: 'holder', x: from(1) - 1.5 })
}

/** Loops of the stitch on the right needle follow those that were there, nearer together where there is less room. */
function placeRight(places: Places, scene: Scene, older: number, leftEdge: number): number {
  const { right } = scene.hands
  const room = older - (leftEdge + 0.95)
  const pitch = right.length < 2 ? 1 : Math.max(0.3, Math.min(0.72, room / right.length))
  for (const [i, name] of right.entries()) places.set(name, { on: 'right', x: older - (i + 1) * pitch })
  // What hangs through loops on the left needle still hangs right beside them, with what was made since.
  const first = right.findIndex((name) => name.startsWith('new') && scene.through.has(name))
  if (first < 0) return older - right.length * pitch
  const hanging = right.slice(first)
  const close = Math.max(0.36, Math.min(0.5, 2.4 / hanging.length))
  for (const [i, name] of hanging.entries()) {
    const near = leftEdge + 0.16 + close * (hanging.length - 1 - i)
    places.set(name, { on: 'right', x: Math.min(near, older - 0.4) })
  }
  return Math.min(older - right.length * pitch, leftEdge + 0.16)
}
