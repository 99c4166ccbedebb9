import { type Fabric, type FabricLoopId, fabricOf } from '../fabric/index.ts'
import { type WorkedPattern, work } from '../needles/index.ts'
import { type Item, type Pattern, type Side, takesAndMakes } from '../pattern/index.ts'
import { type Stitch, stitch } from '../stitches/index.ts'

/** A small swatch with one stitch in the middle of a plain ground, and the loops that the picture is about. */
export interface Swatch {
  readonly fabric: Fabric
  readonly stitch: Stitch
  /** What the stitch made; for a slipped stitch the loop slipped, for a held one the loop on the holder. */
  readonly made: readonly FabricLoopId[]
  /** What it took, nearest to the left needle's tip first. */
  readonly taken: readonly FabricLoopId[]
}

const span = { start: 0, end: 0 }
const some = (id: string, times: number): Item => ({ kind: 'stitch', stitch: id, times, span })
const all = (id: string): Item => ({ kind: 'across', stitch: id, until: { kind: 'end' }, span })

/** Plain stitches on each side, and plain rows below. */
const beside = 4
const below = 3

/** Works the swatch with the stitch on a right-side row. */
export function swatchOf(id: string): Swatch {
  const kind = stitch(id)
  const worked = work(patternFor(kind), 1).worked
  if (worked === null) throw new Error(`close-up: a swatch with ${id} cannot be worked`)
  const fabric = fabricOf(worked)
  return { fabric, stitch: kind, ...loopsOf(worked, fabric, kind) }
}

/** Binding off shows as a chain, so three are bound off in a row. */
const timesOf = ({ family }: Stitch): number => (family === 'bind off' ? 3 : 1)

function patternFor(kind: Stitch): Pattern {
  const sides = Array.from({ length: below + 3 }, (_, i): Side => (i % 2 === 0 ? 'WS' : 'RS'))
  const items = sides.map((side, i): readonly Item[] => {
    if (i === below) return [...before(kind, 'k'), middleOf(kind), ...after(kind, 'k')]
    return i === below + 1 ? rowAfter(kind) : [all(side === 'RS' ? 'k' : 'p')]
  })
  return {
    title: kind.name,
    castOn: { fixed: takesOf([...before(kind, 'k'), middleOf(kind), ...after(kind, 'k')]) },
    worked: 'flat',
    firstSide: 'WS',
    setUp: [],
    rows: items.map((row, i) => ({ number: i + 1, side: sides[i] ?? 'RS', items: row, text: '', span })),
    growing: true,
    edges: { before: [], after: [] },
    doubleYarnOver: 'two',
    bindOffLeaves: 'extra',
    held: kind.effect.held,
    draft: false,
    about: { also: [], notToConfuseWith: [], teaches: [], corrections: [] },
  }
}

/** Binding off begins a row; what joins a loop of another piece ends it. */
const before = ({ family }: Stitch, id: string): Item[] => (family === 'bind off' ? [] : [some(id, beside)])
const after = ({ effect }: Stitch, id: string): Item[] => (effect.held > 0 ? [] : [some(id, beside)])

const takesOf = (items: readonly Item[]): number => takesAndMakes(items)?.takes ?? 0

const middleOf = (kind: Stitch): Item =>
  kind.family === 'bind off'
    ? { kind: 'bindOff', stitch: kind.id, count: timesOf(kind), leavesOne: true, span }
    : some(kind.id, 1)

/** Purled back; but a nupp is gathered, and of two wraps one is purled and one knitted. */
function rowAfter({ id, makes }: Stitch): readonly Item[] {
  if (id.startsWith('nupp')) return [some('p', beside), some(`p${makes}tog`, 1), some('p', beside)]
  if (id === 'yo2') return [some('p', beside), some('p', 1), some('k', 1), some('p', beside)]
  return [all('p')]
}

function loopsOf(worked: WorkedPattern, fabric: Fabric, kind: Stitch): Pick<Swatch, 'made' | 'taken'> {
  const first = takesOf(before(kind, 'k'))
  const steps = worked.rows[below]?.steps.slice(first, first + timesOf(kind)) ?? []
  const numbers = new Map(fabric.loops.map(({ id, loop }) => [loop, id]))
  const known = (ids: readonly number[]): FabricLoopId[] => ids.flatMap((id) => numbers.get(id) ?? [])
  const taken = known(steps.flatMap((step) => step.taken))
  const chains = fabric.loops.filter(({ kind }) => kind === 'chain').map(({ id }) => id)
  const made = kind.family === 'bind off' ? chains : known(steps.flatMap((step) => step.made))
  // Held loops and the loop under a lifted increase were not on the left needle, but the new loop is drawn through them.
  const others = made.filter((id) => !taken.includes(id)).flatMap((id) => fabric.loops[id]?.parents ?? [])
  return { made, taken: [...new Set([...taken, ...others.filter((id) => !made.includes(id))])] }
}
