import {
  type Loop,
  type LoopId,
  needlesAfter,
  type Step,
  type WorkedPattern,
  type WorkedRow,
} from '../needles/index.ts'
import { effectOf, type Mount, stitch } from '../stitches/index.ts'
import type { LoopShape, ParentShape } from './needle-loops.ts'

/** A moment in the work: the needles after the first `done` steps of a row. */
export interface NeedleView {
  readonly worked: WorkedPattern
  /** Index into the worked pattern's rows. */
  readonly rowIndex: number
  readonly done: number
  /** Where the yarn comes from: the right hand or the left forefinger. 'English' if not said. */
  readonly hold?: 'English' | 'Continental'
}

/** One loop of the moment. */
export interface SeenLoop {
  readonly id: LoopId
  readonly shape: LoopShape
  /** Made by the step just worked. */
  readonly isNew: boolean
  /** From 1 where the coming step takes it; null elsewhere. */
  readonly order: number | null
  /** The row's own repeat that it belongs to: by the step that made it, or that will take it. */
  readonly repeat: number | null
}

export interface SeenNeedles {
  readonly row: WorkedRow
  readonly worked: Step | null
  readonly coming: Step | null
  /** The loop nearest the tip comes first, on both needles. */
  readonly left: readonly SeenLoop[]
  readonly right: readonly SeenLoop[]
  /** Markers by how many loops lie between them and the tip. */
  readonly markers: { readonly left: readonly number[]; readonly right: readonly number[] }
}

/** What lies on both needles at a moment, as far as a picture needs it; null where the pattern has no such row. */
export function seenNeedles({ worked, rowIndex, done }: NeedleView): SeenNeedles | null {
  const row = worked.rows[rowIndex]
  if (!row) return null
  const { left, right } = needlesAfter(worked, rowIndex, done)
  const [step, coming] = [row.steps[done - 1] ?? null, row.steps[done] ?? null]
  const repeats = repeatsByLoop(row)
  const seen = (id: LoopId): SeenLoop => ({
    id,
    shape: shapeOf(worked, id, rowIndex, done),
    isNew: step?.made.includes(id) ?? false,
    order: coming?.taken.includes(id) ? coming.taken.indexOf(id) + 1 : null,
    repeat: repeats.get(id) ?? null,
  })
  return {
    row,
    worked: step,
    coming,
    left: left.map(seen),
    right: right.toReversed().map(seen),
    markers: markersOf(row, done),
  }
}

/** Loops slipped in this row are both taken and made, by one step. */
const repeatsByLoop = (row: WorkedRow): ReadonlyMap<LoopId, number | null> =>
  new Map(row.steps.flatMap((step) => [...step.taken, ...step.made].map((id) => [id, step.repeat] as const)))

function markersOf(row: WorkedRow, done: number): SeenNeedles['markers'] {
  const at = (steps: readonly Step[], of: 'taken' | 'made'): number =>
    steps.reduce((sum, step) => sum + step[of].length, 0)
  const left: number[] = []
  const right: number[] = []
  for (const { action, beforeStep } of row.markers) {
    const passed = beforeStep <= done
    if (passed && action !== 'remove') right.push(at(row.steps.slice(beforeStep - 1, done), 'made'))
    else if (!passed && action !== 'place') left.push(at(row.steps.slice(done, beforeStep - 1), 'taken'))
  }
  return { left, right }
}

function shapeOf(worked: WorkedPattern, id: LoopId, rowIndex: number, done: number): LoopShape {
  const loop = worked.loops[id]
  const side = worked.rows[rowIndex]?.side ?? 'RS'
  if (!loop) return { base: 'edge', seen: 'knit', mount: 'usual', parents: [] }
  return {
    base: baseOf(loop),
    seen: side === 'RS' ? loop.face : loop.face === 'knit' ? 'purl' : 'knit',
    mount: mountOf(worked, loop, rowIndex, done),
    parents: parentsOf(worked, loop, side),
  }
}

function baseOf(loop: Loop): LoopShape['base'] {
  if (loop.parents.length > 0) return 'stitch'
  const { family } = stitch(loop.stitch)
  if (family === 'increase') return 'strand'
  return family === 'cast on' || loop.row < 0 ? 'edge' : 'over'
}

/** A loop sits as it was made until a step slips it some other way. */
function mountOf(worked: WorkedPattern, loop: Loop, rowIndex: number, done: number): Mount {
  let mount: Mount = loop.mount
  for (let index = Math.max(0, loop.row); index <= rowIndex; index++) {
    const steps = worked.rows[index]?.steps.slice(0, index === rowIndex ? done : undefined) ?? []
    for (const step of steps) {
      if (!step.taken.includes(loop.id) || !step.made.includes(loop.id)) continue
      const place = step.taken.indexOf(loop.id) + 1
      const mounts = step.taken.map((id): Mount => (id === loop.id ? mount : 'usual'))
      mount = effectOf(step.stitch, mounts).made.find((made) => made.slipped === place)?.mount ?? mount
    }
  }
  return mount
}

/** A loop's parents from the back to the front, where each stands as seen from `side`. */
function parentsOf(worked: WorkedPattern, loop: Loop, side: 'RS' | 'WS'): ParentShape[] {
  const row = worked.rows[loop.row]
  const taken = row?.steps[loop.step]?.taken ?? []
  const order = [...taken, ...loop.parents.filter((id) => !taken.includes(id))].filter((id) =>
    loop.parents.includes(id),
  )
  // The loop taken first lies at the right of those who worked it, and at the left of those who look from behind.
  const turn = row?.side === side ? 1 : -1
  const shapes = loop.parents.map((id, i): ParentShape => {
    const parent = worked.loops[id]
    const place = order.length < 2 ? 0 : turn * (1 - (2 * order.indexOf(id)) / (order.length - 1))
    return {
      side: place,
      twisted: loop.twisted[i] ?? false,
      wide: parent !== undefined && baseOf(parent) === 'over',
    }
  })
  return side === 'RS' ? shapes.reverse() : shapes
}
