import type { WorkedPattern } from '../../engine/needles/index.ts'

/** The stitch that is shown. Indices from 0. */
export interface Spot {
  readonly repeats: number
  readonly row: number
  readonly step: number
}

export type Move =
  | { readonly do: 'next' | 'back' }
  /** To a row's first stitch. */
  | { readonly do: 'row'; readonly row: number }
  /** To where a repeat begins, of this row or of the next that has one: `by` 1 onward, -1 backward. */
  | { readonly do: 'repeat'; readonly by: 1 | -1 }
  /** The same stitch on a piece of another width. */
  | { readonly do: 'repeats'; readonly repeats: number }
  /** To the very first stitch. */
  | { readonly do: 'begin' }
  /** To row 1, where the pattern is worked again. */
  | { readonly do: 'again' }

/** The pattern worked over so many repeats; null where that is too much work. */
export type Widths = (repeats: number) => WorkedPattern | null

type Stop = Omit<Spot, 'repeats'>

const stopsKnown = new WeakMap<WorkedPattern, readonly Stop[]>()

function stopsOf(worked: WorkedPattern): readonly Stop[] {
  const stops =
    stopsKnown.get(worked) ?? worked.rows.flatMap(({ steps }, row) => steps.map((_, step) => ({ row, step })))
  stopsKnown.set(worked, stops)
  return stops
}

const sameStop = (a: Stop, b: Stop): boolean => a.row === b.row && a.step === b.step

const isBefore = (a: Stop, b: Stop): boolean => a.row < b.row || (a.row === b.row && a.step < b.step)

const onlyRow =
  (row: number) =>
  (stop: Stop): boolean =>
    stop.row === row

export const isFirst = (worked: WorkedPattern, spot: Spot): boolean => {
  const first = stopsOf(worked)[0]
  return first !== undefined && sameStop(first, spot)
}

export const isLast = (worked: WorkedPattern, spot: Spot): boolean => {
  const last = stopsOf(worked).at(-1)
  return last !== undefined && sameStop(last, spot)
}

/** The stitches before and after one, as far as there are any; the one after comes first. */
export function beside(worked: WorkedPattern, spot: Spot): Spot[] {
  const stops = stopsOf(worked)
  const here = stops.findIndex((stop) => sameStop(stop, spot))
  return [stops[here + 1], stops[here - 1]].flatMap((stop) => (stop ? [{ ...spot, ...stop }] : []))
}

/** Whether the pattern has that stitch. */
export const exists = (worked: WorkedPattern, { row, step }: Stop): boolean =>
  worked.rows[row]?.steps[step] !== undefined

export function firstSpot(worked: WorkedPattern): Spot {
  return { ...(stopsOf(worked)[0] ?? { row: 0, step: 0 }), repeats: worked.repeats }
}

/** Where a move leads. The same spot again where it leads nowhere. */
export function moved(widths: Widths, spot: Spot, move: Move): Spot {
  const worked = widths(spot.repeats)
  if (!worked) return spot
  if (move.do === 'repeats') return widened(worked, widths(move.repeats), spot)
  const stops = stopsOf(worked)
  const to = stopFor(worked, stops, spot, move)
  return to && !sameStop(to, spot) ? { ...spot, ...to } : spot
}

function stopFor(
  worked: WorkedPattern,
  stops: readonly Stop[],
  spot: Spot,
  move: Exclude<Move, { do: 'repeats' }>,
): Stop | undefined {
  const here = stops.findIndex((stop) => sameStop(stop, spot))
  switch (move.do) {
    case 'next':
      return stops[here + 1]
    case 'back':
      return stops[here - 1]
    case 'row':
      return stops.find(onlyRow(move.row))
    case 'begin':
      return stops[0]
    case 'again':
      return stops.find(onlyRow(worked.pattern.setUp.length))
    case 'repeat': {
      const begins = stops.filter((stop) => beginsRepeat(worked, stop))
      return move.by === 1
        ? begins.find((stop) => isBefore(spot, stop))
        : begins.findLast((stop) => isBefore(stop, spot))
    }
  }
}

/** The first stitch of a repeat; in a row without repeats, its first stitch. */
function beginsRepeat(worked: WorkedPattern, { row, step }: Stop): boolean {
  const steps = worked.rows[row]?.steps ?? []
  return steps.some((one) => one.repeat !== null) ? steps[step]?.position === 1 : step === 0
}

/** The same stitch of the same repeat where the other width has it, else the row's last that it has. */
function widened(from: WorkedPattern, to: WorkedPattern | null, spot: Spot): Spot {
  if (!to) return spot
  const [old, steps] = [from.rows[spot.row]?.steps[spot.step], to.rows[spot.row]?.steps ?? []]
  const twin = steps.findIndex(
    (one) =>
      one.part === old?.part &&
      one.repeat === old.repeat &&
      one.position === old.position &&
      one.repeat !== null,
  )
  const step = twin >= 0 ? twin : Math.max(0, Math.min(spot.step, steps.length - 1))
  return { repeats: to.repeats, row: spot.row, step }
}
