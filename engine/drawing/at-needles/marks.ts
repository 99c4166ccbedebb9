import type { LoopId, Step, WorkedRow } from '../../needles/index.ts'
import { countMarks } from './count-marks.ts'
import { heightAt, mix, type Point } from './geometry.ts'
import { labelMarks } from './label-marks.ts'
import { holderBelow } from './loop-shapes.ts'
import type { LoopLabel, Mark } from './mark.ts'
import { sizes } from './sizes.ts'
import { drawnOn, type HungLoop, loopIdOf, type Staged } from './staged.ts'

/** All that is said in a scene. */
export function marksIn(shot: Staged, labels: readonly LoopLabel[]): Mark[] {
  const labelled = labelMarks(shot, labels)
  // A loop that has words already need not be called new.
  const isSaid = ({ key }: Mark): boolean =>
    labelled.some((label) => label.key === key.replace('new', 'label'))
  return [
    ...lineMarks(shot),
    ...takenMarks(shot),
    ...newMarks(shot).filter((mark) => !isSaid(mark)),
    ...markerMarks(shot),
    ...beadMarks(shot),
    ...countMarks(shot),
    ...labelled,
  ]
}

/** The middle of the needle where a loop hangs. */
export const onNeedle = ({ stage }: Staged, { on, x }: Pick<HungLoop, 'on' | 'x'>): Point => [
  x,
  heightAt(on === 'right' ? stage.right.line : stage.left.line, x) - (on === 'holder' ? holderBelow : 0),
]

const badgeAbove = 0.98

/** Loops about to be taken are ringed and numbered while all rests; on their way they keep their numbers. */
function takenMarks(shot: Staged): Mark[] {
  const { context, isFirst, isLast, loops } = shot
  const { step, rowIndex, worked } = context
  const coming = isLast ? worked.rows[rowIndex]?.steps[step.step] : step
  if (coming === undefined) return []
  const held = isLast ? [] : [...context.numbers.keys()].filter((name) => name.startsWith('held'))
  const taken = coming.taken.map((id) =>
    loops.find((one) => loopIdOf(shot, one.loop) === id && (one.name?.startsWith('old') ?? isLast)),
  )
  const others = held.map((name) => loops.find((one) => one.name === name))
  const found = [...taken, ...others].flatMap((hanging, i) => {
    const id = hanging === undefined ? null : loopIdOf(shot, hanging.loop)
    return hanging === undefined || id === null || hanging.feet === null ? [] : [{ id, turn: i + 1, hanging }]
  })
  const places = spreadOut(found.map(({ hanging }) => hanging.x))
  return found.flatMap(({ id, turn, hanging }, i): Mark[] => {
    const at = onNeedle(shot, hanging)
    // Where another loop is held up above it, there is no room for its number.
    const isHidden =
      shot.scene.lifted !== null || (shot.scene.through.size > 0 && shot.scene.tip.at === 'rest')
    const badge: Mark = {
      kind: 'badge',
      key: `badge-${id}`,
      at: [places[i] ?? at[0], at[1] + badgeAbove],
      text: String(turn),
    }
    if (!isFirst && !isLast) return isHidden ? [] : [badge]
    return [{ kind: 'ring', key: `ring-${id}`, at }, badge]
  })
}

/** Badges that would hide each other are moved apart. */
function spreadOut(xs: readonly number[]): number[] {
  const least = 0.74
  const middle = xs.reduce((sum, x) => sum + x, 0) / Math.max(1, xs.length)
  const isTight = xs.some((x, i) => i > 0 && Math.abs(x - (xs[i - 1] ?? x)) < least - 0.1)
  return isTight ? xs.map((_, i) => middle + ((xs.length - 1) / 2 - i) * least) : [...xs]
}

/** How wide the words over new loops are. */
const roomForWords = 1.6

function newMarks(shot: Staged): Mark[] {
  const { context, isFirst, isLast, loops, stage } = shot
  const moment = isLast ? context.after : context.before
  if (!isFirst && !isLast) return []
  const { step, rowIndex, worked } = context
  const done: Step | undefined = isLast ? step : worked.rows[rowIndex]?.steps[step.step - 2]
  const found = (done?.made ?? []).flatMap((id) => {
    const hanging = loops.find((one) => one.on === 'right' && loopIdOf(shot, one.loop) === id)
    return hanging && Math.abs(hanging.x) <= sizes.reach ? [{ id, hanging }] : []
  })
  const fresh = found.filter(
    ({ id }) => worked.loops[id]?.row === rowIndex && worked.loops[id]?.step === (done?.step ?? 0) - 1,
  )
  const word = fresh.length > 0 ? 'new' : 'slipped'
  // The words stand over the one farthest from the yarn that has room for them.
  const told = found.findIndex(({ hanging }) => hanging.x < sizes.picture.side - roomForWords)
  const chain = moment.right[0]
  const bound: Mark[] =
    chain?.id === null
      ? [
          {
            kind: 'new',
            key: 'chain',
            at: [chain.x, heightAt(stage.right.line, chain.x) + 0.62],
            edge: 'left',
            text: 'not counted',
          },
        ]
      : []
  return [
    ...bound,
    ...found.map(({ id, hanging }, i): Mark => {
      const [x, y] = onNeedle(shot, hanging)
      const text = i !== told ? '' : found.length > 1 ? `${found.length} ${word}` : word
      return { kind: 'new', key: `new-${id}`, at: [x, y + 0.62], edge: 'left', text }
    }),
  ]
}

/** A line hangs between two loops of different repeats of the row. */
function lineMarks(shot: Staged): Mark[] {
  const { isFirst, isLast, loops, context } = shot
  if (!isFirst && !isLast) return []
  const repeats = repeatsByLoop(context.before.sheet.row)
  return (['left', 'right'] as const)
    .flatMap((side) => {
      const here = drawnOn(shot, side)
      return here.slice(1).flatMap((loop, i): Mark[] => {
        const nearer = here[i]
        const [a, b] = [nearer && loopIdOf(shot, nearer.loop), loopIdOf(shot, loop.loop)]
        if (nearer === undefined || a === null || a === undefined || b === null) return []
        if ((repeats.get(a) ?? null) === (repeats.get(b) ?? null)) return []
        return [
          { kind: 'line', key: `line-${a}`, at: mix(onNeedle(shot, nearer), onNeedle(shot, loop), 0.5) },
        ]
      })
    })
    .slice(0, loops.length)
}

/** Loops slipped in this row are both taken and made, by one step. */
function repeatsByLoop(row: WorkedRow): ReadonlyMap<LoopId, number | null> {
  const known = remembered.get(row)
  if (known !== undefined) return known
  const repeats = new Map<LoopId, number | null>()
  for (const { taken, made, repeat } of row.steps)
    for (const id of [...taken, ...made]) repeats.set(id, repeat)
  remembered.set(row, repeats)
  return repeats
}

const remembered = new WeakMap<WorkedRow, ReadonlyMap<LoopId, number | null>>()

/** Markers hang where the row has placed or slipped them so far. */
function markerMarks(shot: Staged): Mark[] {
  const { context, isLast } = shot
  const { row } = context.before.sheet
  const done = isLast ? context.step.step : context.step.step - 1
  const count = (steps: readonly Step[], of: 'taken' | 'made'): number =>
    steps.reduce((sum, step) => sum + step[of].length, 0)
  return row.markers.flatMap(({ action, beforeStep }, i): Mark[] => {
    const passed = beforeStep <= done
    if (passed ? action === 'remove' : action === 'place') return []
    const side = passed ? 'right' : 'left'
    const from = passed
      ? count(row.steps.slice(beforeStep - 1, done), 'made')
      : count(row.steps.slice(done, beforeStep - 1), 'taken')
    const here = drawnOn(shot, side)
    const [near, far] = [here[from - 1], here[from]]
    if (near === undefined && far === undefined) return []
    const beside = (loop: HungLoop, by: number): Point => onNeedle(shot, { on: side, x: loop.x + by })
    const outward = side === 'left' ? -0.5 : 0.5
    const at =
      near && far
        ? mix(onNeedle(shot, near), onNeedle(shot, far), 0.5)
        : near
          ? beside(near, outward)
          : far
            ? beside(far, -outward)
            : null
    return at === null ? [] : [{ kind: 'marker', key: `marker-${i}`, at }]
  })
}

function beadMarks(shot: Staged): Mark[] {
  const { scene, stage, context } = shot
  const own = context.before.sheet.after.beads
  const there = new Set([...context.before.made, ...(shot.isLast ? context.after.made : [])])
  const old = own.flatMap(({ loop, at: [x, y] }): Mark[] => {
    const row = context.before.sheet.after.fabric.loops[loop]?.row ?? -1
    if (row === context.rowIndex && !there.has(loop)) return []
    return [{ kind: 'bead', key: `bead-${loop}`, at: hungPlace(shot, [x, y]) }]
  })
  if (scene.bead === null) return old
  const first = stage.places.get('old 1')
  if (first === undefined) return old
  const [x, y] = onNeedle(shot, { on: 'left', x: first.x })
  return [...old, { kind: 'bead', key: 'bead', at: [x, y + (scene.bead === 'above' ? 0.95 : -0.5)] }]
}

/** Where a place of the row's end hangs now: with what the row has made. */
const hungPlace = ({ stage: { hanging } }: Staged, [x, y]: Point): Point => {
  const to = x + hanging.made
  return [to, y + heightAt(to > hanging.middle ? hanging.right : hanging.left, to)]
}
