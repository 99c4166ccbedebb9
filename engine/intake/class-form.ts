import type { ClassPlan } from '../lesson/index.ts'
import { type ClassKey, classSchema, planOf, savedPlan, wanted } from './class-file-schema.ts'

export interface ClassForm {
  /** What the fields say; what no class can say is left out, and told. */
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

/** Numbers that an entry may have until its field says one that can be. */
const least = { patterns: { repeats: 1 }, parts: { minutes: 0 } } as const

/** The entries of a list; where one has a number that cannot be, its words stay. */
function mendedList(key: keyof typeof least, value: unknown): unknown {
  if (!Array.isArray(value)) return value
  return value.map((entry: unknown) =>
    classSchema.shape[key].safeParse([entry]).success ? entry : { ...Object(entry), ...least[key] },
  )
}

/** A class from the values of a form's fields. */
export function readClassForm(values: Readonly<Record<string, unknown>>): ClassForm {
  const parsed = classSchema.safeParse(values)
  if (parsed.success) return { plan: planOf(parsed.data), problems: [] }
  const keys = [...new Set(parsed.error.issues.map(({ path }) => String(path[0] ?? '')))] as ClassKey[]
  const problems = keys.map((key) => `${fields[key] ?? key}: this wants ${wanted[key] ?? 'something else'}.`)
  const lists = {
    patterns: mendedList('patterns', values.patterns),
    parts: mendedList('parts', values.parts),
  }
  return { plan: savedPlan({ ...values, ...lists }), problems }
}
