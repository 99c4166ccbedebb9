import fc from 'fast-check'
import {
  type Exercise,
  type ExerciseKind,
  exerciseOf,
  isExercise,
  type Table,
  tableOf,
} from '../../engine/practice/index.ts'
import { library, libraryPattern } from '../fabric/support.ts'
import { check } from '../support.ts'

export const runs = Number(process.env.OPENWORK_RUNS ?? 60)

const laid = new Map<string, Table>()

/** A pattern of the library laid out for practice, once. */
export function tableFor(file: string): Table {
  const table = laid.get(file) ?? tableOf(libraryPattern(file))
  if (!table) throw new Error(`${file} cannot be practised`)
  laid.set(file, table)
  return table
}

/** A sound pattern of a test's own, laid out. */
export function tableFrom(castOn: string, rows: readonly string[], more = ''): Table {
  const { pattern, sound, issues } = check(castOn, rows, more)
  const table = pattern && sound ? tableOf(pattern) : null
  if (!table) throw new Error(`not sound: ${JSON.stringify(issues)}`)
  return table
}

/** The exercise of a kind; fails the test where there is none. */
export function given(table: Table, kind: ExerciseKind, number: number): Exercise {
  const one = exerciseOf(table, kind, number)
  if (!isExercise(one)) throw new Error(`${table.pattern.title} has no ${kind}: ${one.why}`)
  return one
}

export const anyFile = fc.constantFrom(...library)
export const anyNumber = fc.nat(9999)

/** A property of the exercises of a kind over the whole library and any number. */
export function forAny(
  kind: ExerciseKind,
  holds: (exercise: Exercise, table: Table) => void,
  numRuns = runs,
): void {
  fc.assert(
    fc.property(anyFile, anyNumber, (file, number) => {
      const table = tableFor(file)
      holds(given(table, kind, number), table)
    }),
    { numRuns },
  )
}
