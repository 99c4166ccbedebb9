import type { ClassPlan } from '../lesson/index.ts'
import { type ClassKey, classSchema, planOf, savedPlan, wanted } from './class-file-schema.ts'

export interface ClassForm {
  /** What the fields say; where one says what no class can, that part is as if it were not said. */
  readonly plan: ClassPlan
  /** What is not as it should be, in sentences, the field first. */
  readonly problems: readonly string[]
}

const fields: Readonly<Record<ClassKey, string>> = {
  title: 'Name',
  guild: 'Guild or shop',
  date: 'Day and time',
  place: 'Place',
  yarn: 'Yarn',
  needle: 'Needles',
  patterns: 'Patterns',
  parts: 'Running order',
  bring: 'Bring',
  homework: 'Until next time',
  sections: 'On the paper',
  terms: 'Words',
  paper: 'Paper',
  print: 'Print',
}

/** A class from the values of a form's fields. */
export function readClassForm(values: Readonly<Record<string, unknown>>): ClassForm {
  const parsed = classSchema.safeParse(values)
  if (parsed.success) return { plan: planOf(parsed.data), problems: [] }
  const keys = [...new Set(parsed.error.issues.map(({ path }) => String(path[0] ?? '')))] as ClassKey[]
  const sentences = keys.map((key) => `${fields[key] ?? key}: this wants ${wanted[key] ?? 'something else'}.`)
  return { plan: savedPlan(values), problems: sentences }
}
