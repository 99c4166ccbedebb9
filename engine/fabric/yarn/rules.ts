import type { Fabric, FabricLoop } from '../fabric.ts'
import type { LoopFacts } from './facts.ts'
import type { Rule } from './order.ts'
import type { Draft } from './pieces.ts'
import type { LoopShape } from './shape.ts'

interface Own {
  readonly legs: number[]
  readonly head: number[]
}

/** What must lie beneath what, from who is drawn through whom. */
export function rulesOf(fabric: Fabric, drafts: readonly Draft[], shapes: readonly LoopShape[], facts: readonly LoopFacts[]): Rule[] {
  const own = fabric.loops.map((): Own => ({ legs: [], head: [] }))
  for (const [i, { loop, part }] of drafts.entries()) {
    if (part === 'leg') own[loop]?.legs.push(i)
    if (part === 'head') own[loop]?.head.push(i)
  }
  const rules: Rule[] = []
  const lay = (below: readonly number[], above: readonly number[], softness: Rule['softness'] = 0): void => {
    for (const b of below) for (const a of above) rules.push({ below: b, above: a, softness })
  }
  const parts = (id: number): Own => own[id] ?? { legs: [], head: [] }
  for (const loop of fabric.loops) {
    const { legs } = parts(loop.id)
    for (const id of loop.parents) {
      const { head } = parts(id)
      if (looksKnit(fabric, loop, id)) lay(head, legs)
      else lay(legs, head)
    }
    stack(loop, parts, lay)
    crossLegs(shapes[loop.id], drafts, legs, lay)
  }
  for (const [i, draft] of drafts.entries()) {
    const loop = draft.at === null ? undefined : fabric.loops[draft.at]
    if (loop === undefined) continue
    if (draft.part === 'float') lay([i], [...parts(loop.id).legs, ...parts(loop.id).head])
    else if (draft.part === 'sinker') {
      for (const id of loop.parents) {
        const all = [...parts(id).legs, ...parts(id).head]
        if (looksKnit(fabric, loop, id)) lay([i], all)
        else lay(all, [i])
      }
    }
  }
  crossings(fabric, facts, parts, lay)
  return rules
}

type Lay = (below: readonly number[], above: readonly number[], softness?: Rule['softness']) => void

/** On the knit face a loop comes out over the heads of its parents, and its feet lie behind them. */
function looksKnit(_fabric: Fabric, loop: FabricLoop, _parent: number): boolean {
  return loop.face === 'knit'
}

/** The parents of a decrease lie in a stack, and what is in front stays in front all along. */
function stack({ parents }: FabricLoop, parts: (id: number) => Own, lay: Lay): void {
  for (const [i, front] of parents.entries()) {
    const behind = parents[i + 1]
    if (behind === undefined) continue
    layLoops(parts(behind), parts(front), lay)
  }
}

function layLoops(behind: Own, front: Own, lay: Lay): void {
  lay(behind.head, front.head, 0)
  lay(behind.legs, front.head, 1)
  lay(behind.head, front.legs, 2)
  lay(behind.legs, front.legs, 3)
}

/** In a twisted loop one leg crosses over the other. */
function crossLegs(shape: LoopShape | undefined, drafts: readonly Draft[], legs: readonly number[], lay: Lay): void {
  if (shape === undefined || shape.crossed === null) return
  // The leg that leans left begins at the right foot.
  const front = shape.crossed === 'left' ? 'right' : 'left'
  lay(
    legs.filter((i) => drafts[i]?.side !== front),
    legs.filter((i) => drafts[i]?.side === front),
  )
}

/** The loops that travel in front lie over all those that travel behind. */
function crossings(fabric: Fabric, facts: readonly LoopFacts[], parts: (id: number) => Own, lay: Lay): void {
  for (const [id, { step, crossesInFront }] of facts.entries()) {
    if (crossesInFront !== true) continue
    const mine = fabric.loops[id]?.parents ?? []
    const others = step.filter((other) => facts[other]?.crossesInFront === false)
    for (const front of mine) {
      for (const behind of others.flatMap((other) => fabric.loops[other]?.parents ?? [])) {
        layLoops(parts(behind), parts(front), lay)
      }
    }
  }
}
