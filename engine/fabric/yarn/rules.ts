import type { Fabric, FabricLoop, FabricLoopId } from '../fabric.ts'
import type { Draft } from './draft.ts'
import type { LoopFacts } from './facts.ts'
import type { Rule } from './order.ts'
import type { LoopShape } from './shape.ts'
import type { YarnPart } from './yarn.ts'

/** Whether a loop comes out over the heads of a parent, seen from the right side; otherwise its feet lie over that parent. */
export function comesOver({ loops }: Pick<Fabric, 'loops'>, loop: FabricLoop, parent: FabricLoopId): boolean {
  const knit = loop.face === 'knit'
  return isBarred(loops, loop, parent) ? !knit : knit
}

/**
 * Through the back leg of a loop that another one was drawn through the front of: it goes in from the other face, and
 * the old loop lies across its feet as a bar.
 */
function isBarred(loops: readonly FabricLoop[], loop: FabricLoop, parent: FabricLoopId): boolean {
  if (loop.twisted[loop.parents.indexOf(parent)] !== true) return false
  const [eldest] = loops[parent]?.children ?? []
  const first = loops[eldest ?? -1]
  return first !== undefined && first.id !== loop.id && first.twisted[first.parents.indexOf(parent)] === false
}

interface Table {
  readonly fabric: Fabric
  readonly drafts: readonly Draft[]
  readonly shapes: readonly LoopShape[]
  readonly facts: readonly LoopFacts[]
  readonly rules: Rule[]
  readonly own: readonly Readonly<Record<YarnPart, number[]>>[]
}

/** What must lie beneath what: from who is drawn through whom, and from nothing else. */
export function rulesOf(
  fabric: Fabric,
  drafts: readonly Draft[],
  shapes: readonly LoopShape[],
  facts: readonly LoopFacts[],
): readonly Rule[] {
  const own = fabric.loops.map(
    (): Record<YarnPart, number[]> => ({
      leg: [],
      head: [],
      sinker: [],
      float: [],
      edge: [],
      strand: [],
      belt: [],
      tail: [],
    }),
  )
  for (const [i, { loop, part }] of drafts.entries()) own[loop]?.[part].push(i)
  const table: Table = { fabric, drafts, shapes, facts, own, rules: [] }
  for (const loop of fabric.loops) {
    throughParents(table, loop)
    throughRing(table, loop)
    stack(table, loop)
    crossLegs(table, loop)
  }
  for (const [i, one] of drafts.entries()) besides(table, i, one)
  crossings(table)
  return table.rules
}

function lay(
  { rules }: Table,
  below: readonly number[],
  above: readonly number[],
  softness: Rule['softness'] = 0,
): void {
  for (const b of below) for (const a of above) rules.push({ below: b, above: a, softness })
}

const of = ({ own }: Table, id: FabricLoopId, ...parts: YarnPart[]): number[] =>
  parts.flatMap((part) => own[id]?.[part] ?? [])

/** Either way round, as the loop comes over its parent or goes behind it. */
function laid(table: Table, over: boolean, below: readonly number[], above: readonly number[]): void {
  if (over) lay(table, below, above)
  else lay(table, above, below)
}

function throughParents(table: Table, loop: FabricLoop): void {
  for (const id of loop.parents)
    laid(table, comesOver(table.fabric, loop, id), of(table, id, 'head'), of(table, loop.id, 'leg'))
}

/** A cast-on loop comes through the ring that the tail lays round its foot, an increase through the strand that it lifts. */
function throughRing(table: Table, loop: FabricLoop): void {
  const knit = loop.face === 'knit'
  for (const i of of(table, loop.id, 'edge', 'strand')) {
    const piece = table.drafts[i]
    // What goes to the neighbours' feet lies beside them, a leg begins at a foot; the rest is the head.
    if (piece?.part === 'strand' && piece.beside !== null) continue
    if (piece?.side === null) laid(table, knit, [i], of(table, loop.id, 'leg'))
    laid(table, knit, of(table, loop.id, 'sinker'), [i])
  }
  const front = loop.kind === 'strand' ? frontFoot(table.facts[loop.id]?.made?.strandTwist ?? 'left') : 'left'
  for (const part of ['edge', 'strand'] as const) cross(table, of(table, loop.id, part), front)
}

/** The leg that leans left begins at the right foot. */
const frontFoot = (twist: 'left' | 'right'): 'left' | 'right' => (twist === 'left' ? 'right' : 'left')

function cross(
  table: Table,
  legs: readonly number[],
  front: 'left' | 'right',
  softness: Rule['softness'] = 0,
): void {
  const isFront = (i: number): boolean => table.drafts[i]?.side === front
  const both = legs.filter((i) => table.drafts[i]?.side !== null)
  lay(
    table,
    both.filter((i) => !isFront(i)),
    both.filter(isFront),
    softness,
  )
}

/** In a twisted loop one leg crosses over the other. */
function crossLegs(table: Table, loop: FabricLoop): void {
  const crossed = table.shapes[loop.id]?.crossed ?? null
  if (crossed === null) return
  cross(table, of(table, loop.id, 'leg'), frontFoot(crossed))
  cross(table, of(table, loop.id, 'sinker'), frontFoot(crossed), 2)
}

/** The parents of a decrease lie in a stack, and what is in front stays in front all along. */
function stack(table: Table, { parents }: FabricLoop): void {
  for (const [i, front] of parents.entries()) {
    const behind = parents[i + 1]
    if (behind !== undefined) layLoops(table, behind, front)
  }
}

/** The more of two loops the rules bind, the softer: low down, where they stand apart, another order does no harm. */
function layLoops(table: Table, behind: FabricLoopId, front: FabricLoopId): void {
  lay(table, of(table, behind, 'head'), of(table, front, 'head'), 0)
  lay(table, of(table, behind, 'leg'), of(table, front, 'head'), 1)
  lay(table, of(table, behind, 'head'), of(table, front, 'leg'), 2)
  lay(table, of(table, behind, 'leg'), of(table, front, 'leg'), 3)
}

/** Yarn beside loops: sinkers pass the parents of their loop, floats slipped loops, belts the necks in them. */
function besides(table: Table, i: number, { part, beside, inFront, loop: owner }: Draft): void {
  const loop = beside === null ? undefined : table.fabric.loops[beside]
  if (loop === undefined) return
  const itself = of(table, loop.id, 'leg', 'head')
  if (part === 'float') laid(table, !inFront, [i], itself)
  else if (part === 'tail') laid(table, !inFront, [i], of(table, loop.id, 'head'))
  else if (part === 'belt') {
    for (const id of table.facts[owner]?.step ?? []) laid(table, !inFront, [i], of(table, id, 'leg', 'head'))
  } else if (part === 'sinker' || part === 'strand') {
    for (const id of loop.parents)
      laid(table, comesOver(table.fabric, loop, id), [i], of(table, id, 'leg', 'head'))
  }
}

/** The loops that travel in front lie over all those that travel behind. */
function crossings(table: Table): void {
  const { facts, fabric } = table
  for (const [id, { step, crossesInFront }] of facts.entries()) {
    if (crossesInFront !== true) continue
    const others = step.filter((other) => facts[other]?.crossesInFront === false)
    for (const front of fabric.loops[id]?.parents ?? []) {
      for (const behind of others.flatMap((other) => fabric.loops[other]?.parents ?? []))
        layLoops(table, behind, front)
    }
  }
}
