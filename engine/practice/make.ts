import { comesNext } from './comes-next.ts'
import { type Exercise, type ExerciseKind, exerciseKinds, type NoExercise } from './exercise.ts'
import { fillTheRow } from './fill-the-row.ts'
import { luckOf, type Random } from './luck.ts'
import { mendIt } from './mend-it.ts'
import { readTheFabric } from './read-the-fabric.ts'
import { rowInOrder } from './row-in-order.ts'
import type { Table } from './table.ts'
import { wrongRepeat } from './wrong-repeat.ts'

type Maker = (table: Table, random: Random) => Omit<Exercise, 'kind' | 'number'> | string

const makers: Readonly<Record<ExerciseKind, Maker>> = {
  'comes-next': comesNext,
  'fill-the-row': fillTheRow,
  'read-the-fabric': readTheFabric,
  'row-in-order': rowInOrder,
  'wrong-repeat': wrongRepeat,
  'mend-it': mendIt,
}

/** What each kind is called, and what it is good for. */
export const kindWords: Readonly<Record<ExerciseKind, { readonly title: string; readonly aim: string }>> = {
  'comes-next': { title: 'What comes next?', aim: 'Say the stitch and the count before you see them.' },
  'fill-the-row': { title: 'Fill in the row', aim: 'From a row in full to a row of counts alone.' },
  'read-the-fabric': { title: 'Read the fabric', aim: 'Know a stitch by how its loops lie.' },
  'row-in-order': {
    title: 'Put the row in order',
    aim: 'Where holes and decreases belong, when no count tells.',
  },
  'wrong-repeat': { title: 'Which one is wrong?', aim: 'Find a slip, and say what the hands did.' },
  'mend-it': { title: 'Which mend is it?', aim: 'Tell what mends the fabric from what mends the count.' },
}

/** The exercise of a kind under a number, the same each time; or why the pattern has none of that kind. */
export function exerciseOf(table: Table, kind: ExerciseKind, number: number): Exercise | NoExercise {
  const made = makers[kind](table, luckOf(number, exerciseKinds.indexOf(kind)))
  return typeof made === 'string' ? { kind, why: made } : { kind, number, ...made }
}

export const isExercise = (one: Exercise | NoExercise): one is Exercise => 'parts' in one
