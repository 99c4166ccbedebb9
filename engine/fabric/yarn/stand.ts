import type { Fabric, FabricLoop, FabricLoopId } from '../fabric.ts'
import type { LoopFacts } from './facts.ts'
import { form } from './form.ts'
import type { Frame } from './frames.ts'
import { dot, minus, type Point, plus } from './points.ts'

/** All loops of a fabric with their frames. */
export interface Setting {
  readonly fabric: Fabric
  readonly bases: readonly Frame[]
  readonly heads: readonly Frame[]
  readonly facts: readonly LoopFacts[]
}

/** Where a loop stands, and how far its feet are from there. */
export interface Stand {
  readonly at: Point
  readonly foot: number
}

/** Whether a loop was made with others in one loop. */
export function isSibling({ fabric, facts }: Setting, { id }: FabricLoop): boolean {
  const step = facts[id]?.step ?? []
  const parents = new Set(step.flatMap((one) => fabric.loops[one]?.parents ?? []))
  return parents.size > 0 && parents.size < step.length
}

/** From one sibling to the next. */
export const pitchOf = (siblings: number): number =>
  Math.min(form.siblings.pitch, form.siblings.most / Math.max(1, siblings - 1))

/** A loop stands at its base; but close together with others in one parent's head. */
export function standOf(setting: Setting, loop: FabricLoop): Stand {
  const base = setting.bases[loop.id]?.at ?? [Number.NaN, Number.NaN]
  const parent = setting.heads[loop.parents[0] ?? -1]
  if (parent === undefined) return { at: base, foot: form.foot }
  if (loop.kind === 'below') {
    const side = dot(minus(base, parent.at), parent.right) < 0 ? -1 : 1
    return { at: plus(parent.at, parent.right, side * form.below), foot: form.siblings.foot }
  }
  return isSibling(setting, loop) ? amongSiblings(setting, loop, parent) : { at: base, foot: form.foot }
}

function amongSiblings({ bases, facts }: Setting, { id }: FabricLoop, parent: Frame): Stand {
  const step = facts[id]?.step ?? [id]
  const placeOf = (one: FabricLoopId | undefined): Point => bases[one ?? -1]?.at ?? parent.at
  const onward = dot(minus(placeOf(step.at(-1)), placeOf(step[0])), parent.right) > 0 ? 1 : -1
  const away = onward * (step.indexOf(id) - (step.length - 1) / 2) * pitchOf(step.length)
  return { at: plus(parent.at, parent.right, away), foot: form.siblings.foot }
}
