import type { Fabric, FabricLayout, FabricLoopId } from '../fabric.ts'
import { beltPieces, isBelt } from './belt.ts'
import type { Draft } from './draft.ts'
import { castOnPieces, lastPieces, strangers } from './ends.ts'
import { factsOf, type LoopFacts } from './facts.ts'
import { liftedPieces, liftedStrands, lifterOf } from './lifted.ts'
import { linkPieces } from './link-pieces.ts'
import { type Link, linksOf, sidesOf } from './links.ts'
import { loopPieces } from './loop-pieces.ts'
import { depthsOf } from './order.ts'
import { mix } from './points.ts'
import { rulesOf } from './rules.ts'
import { type LoopShape, shapesOf } from './shape.ts'
import { thickness, type Yarn, type YarnBead, type YarnPiece } from './yarn.ts'

/** The yarn of a fabric, from its tail to the ball, seen from the right side. */
export function yarnOf(fabric: Fabric, layout: FabricLayout): Yarn {
  const facts = factsOf(fabric)
  const shapes = shapesOf(fabric, layout, facts)
  const drafts = draftsOf(fabric, shapes, facts)
  const depths = depthsOf(drafts.length, rulesOf(fabric, drafts, shapes, facts))
  let strand = 0
  const pieces = drafts.map(({ loop, part, curve, ends, cut }, i): YarnPiece => {
    if (cut) strand += 1
    const { face } = known(fabric.loops[loop])
    return { loop, part, curve, strand, ends, depth: depths[i] ?? 0, face }
  })
  const places = shapes.map(({ base, head }) => ({ base: base.at, head: head.at }))
  return { fabric, side: 'right', pieces, beads: beadsOf(shapes, facts), places, thickness }
}

/** A bead sits on both legs of its loop, right above its parent. */
function beadsOf(shapes: readonly LoopShape[], facts: readonly LoopFacts[]): YarnBead[] {
  return shapes
    .filter(({ loop }) => facts[loop.id]?.made?.beaded === true)
    .map(({ loop, base, head, axis }) => ({ loop: loop.id, at: mix(base.at, head.at, 0.6), along: axis }))
}

/** All pieces as the yarn runs. */
export function draftsOf(fabric: Fabric, shapes: readonly LoopShape[], facts: readonly LoopFacts[]): Draft[] {
  const shapeOf = (id: FabricLoopId): LoopShape => known(shapes[id])
  const links = new Map(linksOf(fabric).map((link) => [link.to, link]))
  const lifted = liftedStrands(fabric)
  const pieceLink = (link: Link): Draft[] => {
    const lifter = fabric.loops[lifterOf(link, lifted) ?? -1]
    if (lifter !== undefined) return liftedPieces(shapeOf, link, lifter)
    return isBelt(link, facts) ? beltPieces(shapeOf, link, facts) : linkPieces(shapeOf, link)
  }
  const rows = fabric.courses.flatMap((course, index) => {
    const { first } = sidesOf(fabric.rightToLeft[index] ?? false)
    return course.flatMap((id) => {
      const link = links.get(id)
      return [...(link === undefined ? [] : pieceLink(link)), ...loopPieces(shapeOf(id), first)]
    })
  })
  return [
    ...castOnPieces(fabric, shapeOf),
    ...rows,
    ...lastPieces(fabric, shapeOf),
    ...strangers(fabric, shapeOf),
  ]
}

/** What must be there. Throws where it is not: a stray number would tangle the yarn without a word. */
function known<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('yarn: there is no such loop')
  return value
}
