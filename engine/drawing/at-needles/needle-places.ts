import { heightAt, type Line, type Point, plus } from './geometry.ts'
import type { Name, Scene } from './scene.ts'
import { sizes } from './sizes.ts'
import type { Placed } from './stage.ts'

/** A needle where it lies: its tip, and the line of its middle. */
export interface NeedlePlace {
  readonly line: Line
  readonly tip: number
  /** From here to its tip it lies on the other side of the other needle; past the tip where it does so nowhere. */
  readonly split: number
}

export interface Needles {
  readonly left: NeedlePlace
  readonly right: NeedlePlace
  /** Where the right tip goes through loops of the left needle, or to something below them. */
  readonly hole: Point
  /** Where lifted loops are held. */
  readonly top: Point | null
}

/** What the needles are laid for. */
interface Setting {
  /** Between the loops that wait and those that are made, and the loops nearest to it. */
  readonly middle: number
  readonly leftEdge: number
  readonly newest: number
  readonly places: ReadonlyMap<Name, Placed>
  readonly scene: Scene
}

/** How far past the hole a tip goes that is through, and how far before it one stops that is not. */
const reach = { knit: 1.42, purl: 1.2, short: -0.12 } as const
/** How steep the needles cross, and how far the left one rises for it. */
const crossing = { right: -0.42, left: 0.22, lift: 0.42 } as const
/** The middle of a hole below the middle of the left needle, and the head of the loop below. */
export const holeBelow = 0.4
const headBelow = 1.02
/** How far above its needle a lifted loop is held, how far the tip that holds it goes on, and how steep it may be. */
const lifting = { high: 0.86, beyond: 0.3, steep: 0.42, aside: 0.16 } as const
/** How far a tip stands out of the loop nearest to it, at least. */
const bare = 0.62
const nowhere = 99

export function needlesIn(setting: Setting): Needles {
  const { tip, lifted, taking, through } = setting.scene
  const rest = atRest(setting)
  if (tip.at === 'loops') return crossed(setting, rest, tip)
  if (tip.at === 'below') return dipped(setting, rest)
  if (lifted?.by === 'left') return liftedByLeft(setting, rest, lifted.over)
  if (lifted?.by === 'right') return liftedByRight(setting, rest, lifted.over)
  if (through.size > 0) return drawn(setting, rest)
  return taking.length > 0 ? met(setting, rest, taking) : rest
}

function atRest({ middle, leftEdge, newest }: Setting): Needles {
  const left = { rise: sizes.fall.left, height: sizes.fall.left * (0.5 - middle) }
  const right = { rise: -sizes.fall.right, height: sizes.fall.right * (0.5 + middle) }
  return {
    left: { line: left, tip: Math.max(middle - 0.1, leftEdge + bare), split: nowhere },
    right: { line: right, tip: Math.min(middle, newest - bare), split: -nowhere },
    hole: [leftEdge, heightAt(left, leftEdge) - holeBelow],
    top: null,
  }
}

const throughPoint = ([x, y]: Point, rise: number): Line => ({ rise, height: y - rise * x })

/** The right tip goes under the left needle and comes up behind it or before it, to the left of the loops. */
function crossed({ places, leftEdge }: Setting, rest: Needles, tip: Scene['tip'] & { at: 'loops' }): Needles {
  const xs = tip.loops.map((name) => places.get(name)?.x ?? leftEdge)
  const x = xs.reduce((sum, one) => sum + one, 0) / Math.max(1, xs.length)
  const line = throughPoint([leftEdge, heightAt(rest.left.line, leftEdge) + crossing.lift], crossing.left)
  const hole: Point = [x, heightAt(line, x) - holeBelow]
  const far = !tip.deep ? reach.short : tip.way.startsWith('purl') ? reach.purl : reach.knit
  return {
    left: { ...rest.left, line, tip: Math.max(rest.left.tip, ...xs.map((one) => one + bare)) },
    right: {
      line: throughPoint(hole, crossing.right),
      tip: x - far,
      split: tip.way === 'knit' ? x : -nowhere,
    },
    hole,
    top: null,
  }
}

/** The right tip goes into the head that the next loop stands in. */
function dipped({ leftEdge }: Setting, rest: Needles): Needles {
  const hole: Point = [leftEdge, heightAt(rest.left.line, leftEdge) - headBelow]
  return { ...rest, right: { line: throughPoint(hole, -0.32), tip: hole[0] - 0.75, split: hole[0] }, hole }
}

function liftedByLeft({ places, leftEdge, newest }: Setting, rest: Needles, over: readonly Name[]): Needles {
  const x = Math.min(newest, ...over.map((name) => places.get(name)?.x ?? newest))
  const top = plus([x, heightAt(rest.right.line, x)], [-lifting.aside, lifting.high])
  const hold = plus(top, [0, -0.1])
  const climb = (hold[1] - heightAt(rest.left.line, leftEdge)) / Math.max(0.6, hold[0] - leftEdge)
  const line = throughPoint(hold, Math.min(lifting.steep, climb))
  return { ...rest, left: { line, tip: hold[0] + lifting.beyond, split: leftEdge + 0.4 }, hole: top, top }
}

function liftedByRight({ places, leftEdge, newest }: Setting, rest: Needles, over: readonly Name[]): Needles {
  const x = Math.max(leftEdge, ...over.map((name) => places.get(name)?.x ?? leftEdge))
  const top = plus([x, heightAt(rest.left.line, x)], [lifting.aside, lifting.high])
  const hold = plus(top, [0, -0.1])
  const climb = (heightAt(rest.right.line, newest) - hold[1]) / Math.max(0.6, newest - hold[0])
  const line = throughPoint(hold, Math.max(-lifting.steep, climb))
  return { ...rest, right: { line, tip: hold[0] - lifting.beyond, split: newest - 0.4 }, hole: top, top }
}

/** What was drawn through is held up above the left needle, before it or behind it. */
function drawn({ leftEdge, newest }: Setting, rest: Needles): Needles {
  const held: Point = [newest, heightAt(rest.left.line, leftEdge) + 0.56]
  return { ...rest, right: { ...rest.right, line: throughPoint(held, -0.26) }, hole: held }
}

/** The left tip goes into loops of the right needle, tip to tip. */
function met({ places, leftEdge, newest }: Setting, rest: Needles, taking: readonly Name[]): Needles {
  const far = Math.max(...taking.map((name) => places.get(name)?.x ?? newest))
  const line = throughPoint([newest, heightAt(rest.right.line, newest) + 0.06], rest.left.line.rise)
  return { ...rest, left: { line, tip: far + 0.35, split: leftEdge + 0.4 } }
}
