import type { Step } from '../needles/index.ts'
import { stitch } from '../stitches/index.ts'
import { least, repeatsIn, type Table } from './table.ts'
import { written } from './words.ts'

/** One of several times that the same stitches are worked. */
export interface Round {
  readonly name: string
  readonly row: number
  readonly steps: readonly Step[]
}

/** The same stitches worked three times: three repeats of a row, or a row in three turns of the pattern. */
export interface Again {
  readonly row: number
  readonly of: 'repeat' | 'time'
  readonly rounds: readonly Round[]
}

/** Equal stitches one after the other, as a row writes them. */
export interface Run {
  readonly stitch: string
  readonly times: number
  readonly words: string
  /** Stitches on both needles after it. */
  readonly total: number
}

const nth = ['First', 'Second', 'Third'] as const

/** Stitches gathered into runs. */
export function runsOf(steps: readonly Step[]): Run[] {
  const runs: { stitch: string; times: number; total: number }[] = []
  for (const { stitch: id, total } of steps) {
    const last = runs.at(-1)
    if (last?.stitch === id) Object.assign(last, { times: last.times + 1, total })
    else runs.push({ stitch: id, times: 1, total })
  }
  return runs.map((run) => ({ ...run, words: written(run.stitch, run.times) }))
}

function sideBySide({ worked }: Table, row: number): Again | null {
  const steps = worked.rows[row]?.steps ?? []
  if (repeatsIn({ steps }) < least) return null
  const rounds = nth.map((name, i) => ({
    name: `${name} repeat`,
    row,
    steps: steps.filter(({ repeat }) => repeat === i + 1),
  }))
  return { row, of: 'repeat', rounds }
}

/** A row without repeats of its own, in each turn of the pattern: only where it is the same row each time. */
function oneAbove({ worked, pattern, turns }: Table, row: number): Again | null {
  if (turns < least || pattern.growing) return null
  const rounds = nth.map((name, i) => {
    const at = row - (turns - 1 - i) * pattern.rows.length
    return { name: `${name} time`, row: at, steps: worked.rows[at]?.steps ?? [] }
  })
  const key = ({ steps }: Round): string => steps.map(({ stitch: id, total }) => `${id} ${total}`).join()
  const [first] = rounds
  return first && rounds.every((round) => key(round) === key(first)) ? { row, of: 'time', rounds } : null
}

const isLace = ({ rounds: [round] }: Again): boolean => {
  const ids = new Set(round?.steps.map(({ stitch: id }) => id))
  return ids.size > 1 && [...ids].some((id) => stitch(id).family !== 'plain')
}

/** More than one kind of stitch, and none of them bound off: that is counted in another way. */
function isMixed({ rounds: [round] }: Again): boolean {
  const ids = new Set(round?.steps.map((one) => one.stitch))
  return ids.size > 1 && ![...ids].some((id) => stitch(id).family === 'bind off')
}

/** Every row of the pattern in which the same stitches, more than one kind of them, are worked three times. */
export function againsIn(table: Table): Again[] {
  const all = table.rows.flatMap((row) => sideBySide(table, row) ?? oneAbove(table, row) ?? [])
  const mixed = all.filter(isMixed)
  const lace = mixed.filter(isLace)
  return lace.length > 0 ? lace : mixed
}
