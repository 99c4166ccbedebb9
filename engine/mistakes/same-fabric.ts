import type { Loop, LoopId, WorkedPattern } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'

/** Names that do not hang on the order in which loops came into the table: by row, and by place in it. */
function placesOf(worked: WorkedPattern): Map<LoopId, string> {
  const places = new Map<LoopId, string>()
  for (let id = 0; id < worked.castOn; id++) places.set(id, `cast on ${id}`)
  for (const [row, { steps }] of worked.rows.entries()) {
    let at = 0
    for (const id of steps.flatMap((step) => step.made)) if (!places.has(id)) places.set(id, `${row} ${at++}`)
  }
  return places
}

const isOver = (loop: Loop): boolean => stitch(loop.stitch).family === 'yarn over'

/** One loop in the fabric: what it is drawn through and how. How it sits on the needle is past once it is worked. */
function told(loop: Loop, places: ReadonlyMap<LoopId, string>, live: boolean): string {
  const parents = loop.parents.map(
    (id, i) => `${places.get(id) ?? 'off'}${loop.twisted[i] ? ' twisted' : ''}`,
  )
  const base = loop.parents.length > 0 ? parents.join('+') : isOver(loop) ? 'over' : loop.stitch
  return `${base} ${isOver(loop) ? '' : loop.face} ${live ? loop.mount : ''}`
}

/** A worked piece as lines of text, one for each row, the same for the same fabric whatever its loops are numbered. */
export function fabricText(worked: WorkedPattern): string[] {
  const places = placesOf(worked)
  const live = new Set([...(worked.rows.at(-1)?.after ?? []), ...(worked.rows.at(-1)?.unworked ?? [])])
  return worked.rows.map((row) => {
    const loops = row.after.map((id) => worked.loops[id] as Loop)
    return loops.map((loop) => told(loop, places, live.has(loop.id))).join(', ')
  })
}

/** Whether two pieces are the same fabric, loop for loop, up to the loops' numbers. */
export function sameFabric(a: WorkedPattern, b: WorkedPattern): boolean {
  const [one, other] = [fabricText(a), fabricText(b)]
  return one.length === other.length && one.every((line, i) => line === other[i])
}
