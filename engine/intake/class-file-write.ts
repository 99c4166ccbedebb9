import { Document, isMap, isSeq } from 'yaml'
import { type ClassPlan, emptyClass } from '../lesson/index.ts'
import { classKeys, classSchema, planOf } from './class-file-schema.ts'
import { isWithin, partsOf } from './stored.ts'

const isAsEmpty = (plan: ClassPlan, key: keyof ClassPlan): boolean =>
  JSON.stringify(plan[key]) === JSON.stringify(emptyClass[key])

/** A part of the class without the aims that it does not name. */
const partOf = ({ minutes, what, ...aims }: ClassPlan['parts'][number]): Record<string, unknown> => ({
  minutes,
  what,
  ...Object.fromEntries(Object.entries(aims).filter(([, words]) => words !== '')),
})

/** A class as the text of a class file. Read back it is the same class. */
export function writeClass(plan: ClassPlan): string {
  const always: readonly string[] = ['title', 'patterns']
  const said = classKeys.filter((key) => always.includes(key) || !isAsEmpty(plan, key))
  const keys = Object.fromEntries(
    said.map((key) => [key, key === 'parts' ? plan.parts.map(partOf) : plan[key]]),
  )
  const document = new Document(keys)
  for (const list of ['patterns', 'sections']) {
    const node: unknown = document.get(list, true)
    if (!isSeq(node)) continue
    if (list === 'sections') node.flow = true
    for (const entry of node.items) if (isMap(entry)) entry.flow = true
  }
  return document.toString({ lineWidth: 0, flowCollectionPadding: true })
}

export interface KeptClass {
  /** Milliseconds since 1970. */
  readonly saved: number
  readonly plan: ClassPlan
}

const mostCharacters = 200_000

/** A class as the browser kept it; null for anything that is not one. */
export function parseKeptClass(stored: unknown): KeptClass | null {
  const parts = partsOf(stored, ['saved', 'plan'], mostCharacters)
  if (!parts || !isWithin(parts.saved, 0, Number.MAX_SAFE_INTEGER)) return null
  const plan = classSchema.safeParse(parts.plan)
  return plan.success ? { saved: parts.saved, plan: planOf(plan.data) } : null
}

/** The library's class that a link names ('#saltmarket-first-evening'); null for anything that cannot be an address. */
export function parseClassLink(hash: unknown): string | null {
  const found = typeof hash === 'string' ? /^#([a-z0-9][a-z0-9-]{0,99})$/.exec(hash) : null
  return found?.[1] ?? null
}
