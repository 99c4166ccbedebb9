import type { Twist } from '../../stitches/index.ts'
import type { Fabric, FabricLayout, FabricLoop, FabricLoopId } from '../fabric.ts'
import type { LoopFacts } from './facts.ts'
import { twistOf } from './facts.ts'
import { baseFrames, type Frame, headFrames } from './frames.ts'
import { dot, minus, mix, type Point, plus, turnedRight, unit } from './points.ts'

/** One value for the left leg and one for the right, as seen from the right side. */
export type Sides<T> = { readonly left: T; readonly right: T }
export type Side = keyof Sides<unknown>
export const otherOf = (side: Side): Side => (side === 'left' ? 'right' : 'left')
export const signOf = (side: Side): 1 | -1 => (side === 'left' ? -1 : 1)
const sides = <T>(of: (side: Side) => T): Sides<T> => ({ left: of('left'), right: of('right') })

/** The form of a loop in stitch widths: tuned by eye on plain stocking stitch, where loop and sinker are one arc. */
export const form = {
  foot: 0.145,
  /** How far above the base the yarn dives from one face to the other; higher where the legs of several parents cross below. */
  dive: 0.05,
  mid: 0.245,
  /** Where the legs' lower halves end, in parts of the height. */
  midAt: 0.52,
  head: 0.33,
  headWidth: 0.44,
  over: { mid: 0.33, midAt: 0.5 },
  gathered: { dive: 0.15, mid: 0.21, midAt: 0.46, headWidth: 0.36, nest: 0.07, nestMost: 0.24, spread: 0.05 },
  /** The chain of a bind-off, which lies along the edge. */
  chain: { foot: 0.11, mid: 0.18, midAt: 0.5, head: 0.24, headWidth: 0.3 },
  /** Loops drawn through one parent: how near to each other their feet stand, and how narrow each is there. */
  siblings: { pitch: 0.36, most: 1.5, foot: 0.1 },
  /** How far a loop passed over several reaches past the outer ones. */
  belt: 0.34,
  /** A loop drawn through a loop under its row stands in that one's head, beside the loop that is there already. */
  below: 0.24,
} as const

/** Where the yarn of one loop goes. Directions point away from the loop's middle: down at the feet, up at the legs. */
export interface LoopShape {
  readonly loop: FabricLoop
  readonly base: Frame
  readonly head: Frame
  readonly axis: Point
  readonly foot: Sides<Point>
  readonly mid: Sides<Point>
  /** Up along each leg. */
  readonly rise: Sides<Point>
  readonly top: Sides<Point>
  readonly headWidth: number
  /** Which way the leg in front leans where the legs cross. */
  readonly crossed: Twist | null
}

export function shapesOf(fabric: Fabric, layout: FabricLayout, facts: readonly LoopFacts[]): readonly LoopShape[] {
  const bases = baseFrames(fabric, layout)
  const heads = headFrames(fabric, layout, bases)
  return fabric.loops.map((loop) => {
    const [base, head] = [bases[loop.id], heads[loop.id]]
    if (base === undefined || head === undefined) throw new Error(`yarn: no place for loop ${loop.id}`)
    return shapeOf(fabric, loop, base, head, bases, heads, facts)
  })
}

function shapeOf(
  fabric: Fabric,
  loop: FabricLoop,
  base: Frame,
  head: Frame,
  bases: readonly Frame[],
  heads: readonly Frame[],
  facts: readonly LoopFacts[],
): LoopShape {
  const axis = unit(minus(head.at, base.at), base.up)
  const across = turnedRight(axis)
  const nest = nestOf(fabric, loop, bases)
  // Passed over loops that have parents of their own, it lies round their necks.
  const isBelt = loop.children.length > 1 && loop.children.some((id) => (fabric.loops[id]?.parents.length ?? 0) > 1)
  const crossed = crossingOf(fabric, loop, facts)
  const isChain = loop.kind === 'chain'
  const { mid, midAt } = isChain
    ? form.chain
    : loop.kind === 'over' && crossed === null
      ? form.over
      : nest === null
        ? form
        : form.gathered
  const middle = mix(base.at, head.at, midAt)
  const width = isChain ? form.chain.headWidth : nest === null ? form.headWidth : form.gathered.headWidth
  const centre = plus(plus(head.at, head.right, nest?.shift ?? 0), head.up, (isChain ? form.chain.head : form.head) + (nest?.rise ?? 0))
  const standing = (id: FabricLoopId): Point => {
    const [child, at] = [fabric.loops[id], bases[id]]
    return child === undefined || at === undefined ? head.at : standOf(fabric, child, at, bases, heads, facts).at
  }
  const reach = reachOf(loop, head, standing)
  const dive = loop.parents.length > 1 ? form.gathered.dive : loop.parents.length === 1 ? form.dive : 0
  const stand = standOf(fabric, loop, base, bases, heads, facts)
  return {
    loop,
    base,
    head,
    axis,
    foot: sides((side) =>
      isChain
        ? plus(base.at, unit(plus(base.right, across), across), signOf(side) * form.chain.foot)
        : plus(plus(stand.at, base.right, signOf(side) * stand.foot), base.up, dive),
    ),
    mid: sides((side) =>
      isBelt ? plus(head.at, head.right, reach[side] + signOf(side) * form.belt) : plus(middle, across, signOf(side) * mid),
    ),
    rise: sides((side) => unit(plus(isBelt ? head.up : axis, across, signOf(side) * 0.22), axis)),
    top: sides((side) => plus(centre, head.right, reach[side])),
    headWidth: width,
    crossed,
  }
}

/** How far a head that holds several loops reaches past its middle on each side: to where they stand. */
function reachOf({ children }: FabricLoop, head: Frame, standing: (id: FabricLoopId) => Point): Sides<number> {
  if (children.length < 2) return { left: 0, right: 0 }
  const at = children.map((id) => dot(minus(standing(id), head.at), head.right))
  return { left: Math.min(...at), right: Math.max(...at) }
}

/** Whether loops of one stitch stand in fewer loops than they are: an increase in one stitch. */
function isIncrease(fabric: Fabric, step: readonly FabricLoopId[]): boolean {
  const parents = new Set(step.flatMap((id) => fabric.loops[id]?.parents ?? []))
  return parents.size > 0 && parents.size < step.length
}

/** Where a loop stands: at its base, but close together with others in one parent's head. */
function standOf(
  fabric: Fabric,
  loop: FabricLoop,
  base: Frame,
  bases: readonly Frame[],
  heads: readonly Frame[],
  facts: readonly LoopFacts[],
): { at: Point; foot: number } {
  const step = facts[loop.id]?.step ?? []
  const parent = heads[loop.parents[0] ?? -1]
  if (parent === undefined) return { at: base.at, foot: form.foot }
  if (loop.kind === 'below') {
    const side = dot(minus(base.at, parent.at), parent.right) < 0 ? -1 : 1
    return { at: plus(parent.at, parent.right, side * form.below), foot: form.siblings.foot }
  }
  if (!isIncrease(fabric, step)) return { at: base.at, foot: form.foot }
  const toRight = dot(minus(placeOf(step.at(-1), bases), placeOf(step[0], bases)), parent.right) > 0 ? 1 : -1
  const place = toRight * (step.indexOf(loop.id) - (step.length - 1) / 2)
  const pitch = Math.min(form.siblings.pitch, form.siblings.most / (step.length - 1))
  return { at: plus(parent.at, parent.right, place * pitch), foot: form.siblings.foot }
}

const placeOf = (id: FabricLoopId | undefined, frames: readonly Frame[]): Point => frames[id ?? -1]?.at ?? [0, 0]

/** How the head of a gathered loop lies among the others: those behind lie outside those in front. */
function nestOf(fabric: Fabric, loop: FabricLoop, bases: readonly Frame[]): { rise: number; shift: number } | null {
  const child = fabric.loops[loop.children[0] ?? -1]
  const base = bases[child?.id ?? -1]
  if (child === undefined || base === undefined || child.parents.length < 2) return null
  const place = child.parents.indexOf(loop.id)
  const rank = child.face === 'knit' ? place : child.parents.length - 1 - place
  const step = Math.min(form.gathered.nest, form.gathered.nestMost / (child.parents.length - 1))
  const from = (id: number): number => {
    const other = bases[id]
    return other === undefined ? 0 : dot(minus(other.at, base.at), base.right)
  }
  const widest = Math.max(1e-6, ...child.parents.map((id) => Math.abs(from(id))))
  return { rise: rank * step, shift: (from(loop.id) / widest) * form.gathered.spread }
}

/** A loop whose first child goes through its back leg is twisted shut; a later one only lies in it crosswise. */
function crossingOf(fabric: Fabric, loop: FabricLoop, facts: readonly LoopFacts[]): Twist | null {
  // Cast on in mid-row, a loop is the yarn laid across itself.
  if (loop.kind === 'cast on' && loop.row >= 0) return 'left'
  const child = fabric.loops[loop.children[0] ?? -1]
  const fact = facts[child?.id ?? -1]
  return child === undefined || fact === undefined ? null : twistOf(child, child.parents.indexOf(loop.id), fact)
}
