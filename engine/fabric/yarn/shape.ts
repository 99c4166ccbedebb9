import type { Twist } from '../../stitches/index.ts'
import type { Fabric, FabricLayout, FabricLoop } from '../fabric.ts'
import { type LoopFacts, twistOf } from './facts.ts'
import { form, type LegForm, legForms } from './form.ts'
import { baseFrames, type Frame, headFrames } from './frames.ts'
import { apart, dot, minus, type Point, plus, turnedRight, unit } from './points.ts'
import { isSibling, pitchOf, type Setting, type Stand, standOf } from './stand.ts'

/** One value for the left leg and one for the right, as seen from the right side. */
export type Sides<T> = { readonly left: T; readonly right: T }
export type Side = keyof Sides<unknown>
export const otherOf = (side: Side): Side => (side === 'left' ? 'right' : 'left')
export const signOf = (side: Side): 1 | -1 => (side === 'left' ? -1 : 1)
const sides = <T>(of: (side: Side, sign: 1 | -1) => T): Sides<T> => ({
  left: of('left', -1),
  right: of('right', 1),
})

/** Where the yarn of one loop goes. */
export interface LoopShape {
  readonly loop: FabricLoop
  readonly base: Frame
  readonly head: Frame
  /** From where it stands to its head. */
  readonly axis: Point
  /** Where it dives from one face of its parents to the other. */
  readonly foot: Sides<Point>
  /** Half way up each leg, and the direction up the leg there. */
  readonly mid: Sides<Point>
  readonly rise: Sides<Point>
  /** The top of the head: one point, or two where it holds several loops. */
  readonly top: Sides<Point>
  readonly headWidth: number
  /** Which way the leg in front leans where the legs cross. */
  readonly crossed: Twist | null
}

export function shapesOf(
  fabric: Fabric,
  layout: FabricLayout,
  facts: readonly LoopFacts[],
): readonly LoopShape[] {
  const bases = baseFrames(fabric, layout)
  const setting: Setting = { fabric, bases, heads: headFrames(fabric, layout, bases), facts }
  return fabric.loops.map((loop) => shapeOf(setting, loop))
}

function shapeOf(setting: Setting, loop: FabricLoop): LoopShape {
  const [base, head] = [setting.bases[loop.id], setting.heads[loop.id]]
  if (base === undefined || head === undefined) throw new Error(`yarn: no place for loop ${loop.id}`)
  const stand = standOf(setting, loop)
  const axis = unit(minus(head.at, stand.at), base.up)
  const across = turnedRight(axis)
  const crossed = crossingOf(setting, loop)
  const nest = nestOf(setting, loop)
  const legs = formOf(setting, loop, crossed)
  const reach = reachOf(setting, loop, head)
  const centre = plus(plus(head.at, head.right, nest.aside), head.up, legs.head + nest.rise)
  const frame = { loop, base, head, axis, crossed, headWidth: legs.headWidth }
  const belt = isBelt(setting, loop)
  const parent = setting.heads[loop.parents[0] ?? -1]
  const lead = parent === undefined || loop.kind === 'chain' ? axis : onwards(axis, parent.up)
  const middle = plus(stand.at, lead, apart(stand.at, head.at) * legs.midAt)
  if (legs === legForms.slim && parent !== undefined)
    return { ...frame, ...slimLegs(setting, loop, stand, parent), top: sides(() => centre) }
  return {
    ...frame,
    foot: sides((_, sign) => footOf(loop, base, stand, across, sign)),
    mid: sides((side, sign) =>
      belt
        ? plus(head.at, head.right, reach[side] + sign * form.belt)
        : plus(middle, across, sign * legs.mid),
    ),
    rise: sides((_, sign) => unit(plus(belt ? head.up : axis, across, sign * 0.22), axis)),
    top: sides((side) => plus(centre, head.right, reach[side])),
  }
}

function formOf(setting: Setting, loop: FabricLoop, crossed: Twist | null): LegForm {
  if (loop.kind === 'chain') return legForms.chain
  if (loop.kind === 'over' && crossed === null) return legForms.over
  if (siblingsInHead(setting, loop) < 2) return legForms.plain
  return isSibling(setting, loop) ? legForms.slim : legForms.gathered
}

/** How many loops the first of its children was drawn through. */
const siblingsInHead = ({ fabric }: Setting, { children }: FabricLoop): number =>
  fabric.loops[children[0] ?? -1]?.parents.length ?? 0

/** Passed over loops that have parents of their own, a loop lies round their necks. */
const isBelt = ({ fabric }: Setting, { children }: FabricLoop): boolean =>
  children.length > 1 && children.some((id) => (fabric.loops[id]?.parents.length ?? 0) > 1)

/** However the fabric folds, a loop leaves its parent upward: not back over the legs that it came up between. */
function onwards(axis: Point, up: Point): Point {
  const along = dot(axis, up)
  const least = 0.35
  return along >= least ? axis : unit(plus(plus(axis, up, -along), up, least), up)
}

/** Siblings rise side by side, straight over the head of their parent; only then are they gathered, in whatever order. */
function slimLegs(
  { facts }: Setting,
  { id, parents }: FabricLoop,
  stand: Stand,
  parent: Frame,
): Pick<LoopShape, 'foot' | 'mid' | 'rise'> {
  const half = pitchOf(facts[id]?.step.length ?? 1) * form.slim.wide
  const at = (sign: 1 | -1, up: number): Point =>
    plus(plus(stand.at, parent.right, sign * half), parent.up, up)
  const dive = parents.length > 1 ? form.gatheredDive : form.dive
  return {
    foot: sides((_, sign) => at(sign, dive)),
    mid: sides((_, sign) => at(sign, form.slim.high)),
    rise: sides(() => parent.up),
  }
}

function footOf(loop: FabricLoop, base: Frame, stand: Stand, across: Point, sign: 1 | -1): Point {
  if (loop.kind === 'chain')
    return plus(base.at, unit(plus(base.right, across), across), sign * form.chainFoot)
  const { length } = loop.parents
  const dive = length > 1 ? form.gatheredDive : length === 1 ? form.dive : 0
  return plus(plus(stand.at, base.right, sign * stand.foot), base.up, dive)
}

/** How far a head that holds several loops reaches past its middle on each side: to where they stand. */
function reachOf(setting: Setting, { children }: FabricLoop, head: Frame): Sides<number> {
  if (children.length < 2) return { left: 0, right: 0 }
  const at = children.flatMap((id) => {
    const child = setting.fabric.loops[id]
    return child === undefined ? [] : [dot(minus(standOf(setting, child).at, head.at), head.right)]
  })
  return { left: Math.min(...at), right: Math.max(...at) }
}

/** How the head of a gathered loop lies among the others: those behind lie outside those in front. */
function nestOf(
  { fabric, bases }: Setting,
  loop: FabricLoop,
): { readonly rise: number; readonly aside: number } {
  const child = fabric.loops[loop.children[0] ?? -1]
  const base = bases[child?.id ?? -1]
  if (child === undefined || base === undefined || child.parents.length < 2) return { rise: 0, aside: 0 }
  const place = child.parents.indexOf(loop.id)
  const rank = child.face === 'knit' ? place : child.parents.length - 1 - place
  const step = Math.min(form.nest.step, form.nest.most / (child.parents.length - 1))
  const away = (id: number): number => {
    const other = bases[id]
    return other === undefined ? 0 : dot(minus(other.at, base.at), base.right)
  }
  const widest = Math.max(1e-6, ...child.parents.map((id) => Math.abs(away(id))))
  return { rise: rank * step, aside: (away(loop.id) / widest) * form.nest.aside }
}

/** A loop whose first child goes through its back leg is twisted shut; a later one only lies in it crosswise. */
function crossingOf({ fabric, facts }: Setting, loop: FabricLoop): Twist | null {
  // Cast on in mid-row, a loop is the yarn laid across itself.
  if (loop.kind === 'cast on' && loop.row >= 0) return 'left'
  const child = fabric.loops[loop.children[0] ?? -1]
  const fact = facts[child?.id ?? -1]
  return child === undefined || fact === undefined
    ? null
    : twistOf(child, child.parents.indexOf(loop.id), fact)
}
