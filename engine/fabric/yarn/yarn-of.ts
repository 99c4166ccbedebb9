import type { Fabric, FabricLayout } from '../fabric.ts'
import { factsOf } from './facts.ts'
import { type Link, linksOf, sidesOf } from './links.ts'
import { depthsOf } from './order.ts'
import { type Draft, linkPieces, loopPieces } from './pieces.ts'
import { rulesOf } from './rules.ts'
import { shapesOf } from './shape.ts'
import { thickness, type Yarn } from './yarn.ts'

export interface YarnOptions {
  readonly tails?: boolean
}

/** The yarn of a fabric, from its tail to the ball, seen from the right side. */
export function yarnOf(fabric: Fabric, layout: FabricLayout, _options: YarnOptions = {}): Yarn {
  const facts = factsOf(fabric)
  const shapes = shapesOf(fabric, layout, facts)
  const into = new Map<number, Link>(linksOf(fabric).map((link) => [link.to, link]))
  const drafts: Draft[] = []
  let strand = 0
  for (const [index, course] of fabric.courses.entries()) {
    const { first } = sidesOf(fabric.rightToLeft[index] ?? false)
    for (const id of course) {
      const link = into.get(id)
      if (link !== undefined) drafts.push(...linkPieces(shapes, link, strand))
      strand = drafts.at(-1)?.strand ?? strand
      const shape = shapes[id]
      if (shape !== undefined) drafts.push(...loopPieces(shape, first, strand))
    }
  }
  const depths = depthsOf(drafts.length, rulesOf(fabric, drafts, shapes, facts))
  return {
    side: 'right',
    pieces: drafts.map(({ loop, part, curve, strand, ends }, i) => ({
      loop, part, curve, strand, ends, depth: depths[i] ?? 0, face: fabric.loops[loop]?.face ?? 'knit',
    })),
    beads: [],
    thickness,
  }
}
