import { type Plan, rowName, type Suspect, sectionWords } from '../../engine/mistakes/index.ts'
import { stitch } from '../../engine/stitches/index.ts'

/** 'a', 'a or b', 'a, b or c'. */
export const either = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} or ${parts.at(-1)}`

/** The name of the stitch that belongs to a step. */
export function stitchAt(plan: Plan, row: number, step: number): string {
  const worked = plan.worked.rows[row]?.steps[step]
  return worked ? stitch(worked.stitch).name : 'stitch'
}

/** Which of its section's stitches a step is, from 1, in the order of working. */
function numberInSection(plan: Plan, row: number, step: number): number {
  const acts = plan.rows[row]?.acts ?? []
  const { section } = acts[step] ?? {}
  return acts.slice(0, step + 1).filter((act) => act.section === section).length
}

/** Where exactly to look: 'In row 3, repeat 2, in the order of working: stitch 2 or 6 (yarn over).' */
export function placeWords(plan: Plan, { row, section, everywhere, fittings }: Suspect): string | null {
  const steps = [
    ...new Set(fittings.flatMap(({ trace: { mistake } }) => (mistake.step === null ? [] : [mistake.step]))),
  ]
  if (steps.length === 0 || section === null) return null
  const byName = new Map<string, number[]>()
  for (const step of steps.sort((a, b) => a - b)) {
    const name = stitchAt(plan, row, step)
    byName.set(name, [...(byName.get(name) ?? []), numberInSection(plan, row, step)])
  }
  const parts = [...byName].map(([name, numbers]) => `${either([...new Set(numbers)].map(String))} (${name})`)
  const where = everywhere ? 'every repeat' : sectionWords(plan, section)
  return `${rowName(plan, row)}, ${where}, in the order of working: stitch ${either(parts)}.`
}
