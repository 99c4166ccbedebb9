import { consequenceOf, fabricText, modelOf, sectionWords, type Trace, workWrong } from '../mistakes/index.ts'
import type { Choice } from './exercise.ts'
import { type Fault, planIn, slipsIn } from './faults.ts'
import { byWeight, type Random, shuffled } from './luck.ts'
import type { Table } from './table.ts'
import { capital, stitches } from './words.ts'

/** The row as it lies in the fabric, the same for the same loops. */
function rowText(table: Table, { edits, mistake }: Trace): string {
  const { worked, rows } = workWrong(planIn(table), edits, 1, { unnoticed: true })
  return fabricText(worked)[rows[0]?.index ?? mistake.row] ?? ''
}

/** What a reader finds of it: the count of the stretch, and what the eye sees. */
function found(
  table: Table,
  trace: Trace,
  section: number,
): { readonly count: number; readonly eye: string } {
  const plan = planIn(table)
  const follows = consequenceOf(plan, trace.mistake)
  const meant = plan.rows[trace.mistake.row]?.makes[section] ?? 0
  return {
    count: follows?.counts.find((one) => one.section === section)?.now ?? meant,
    eye: (follows?.eye ?? []).join(' '),
  }
}

/** Mistakes of other kinds that could have been made in the same stretch, each of which gives another fabric. */
function others(table: Table, { trace, section }: Fault, random: Random): Trace[] {
  const own = rowText(table, trace)
  const all = slipsIn(table, trace.mistake.row).filter((one) => one.section === section)
  const alike = new Set([trace.mistake.kind])
  for (const one of all) if (rowText(table, one) === own) alike.add(one.mistake.kind)
  const kinds = new Set<string>(alike)
  return byWeight(all, ({ weight }) => weight, random).filter(({ mistake: { kind } }) => {
    if (kinds.has(kind)) return false
    kinds.add(kind)
    return true
  })
}

const nameOf = ({ mistake }: Trace): string => `${capital(modelOf(mistake.kind).name)}.`

/** What would be found if it had been this one instead. */
function otherwise(table: Table, trace: Trace, { section, row }: Fault): string {
  const { count, eye } = found(table, trace, section)
  const plan = planIn(table)
  const where = plan.sections[section] === 'body' ? '' : ` in ${sectionWords(plan, section)}`
  const has = row.counts[section] ?? 0
  return count === has
    ? `That would leave ${stitches(count)}${where} as well, but it looks otherwise: ${eye}`
    : `That would leave ${stitches(count)}${where}, and there are ${has}. ${eye}`
}

/** Kinds of mistakes to choose from, one of which was made; null where no other could have been. */
export function whatWasDone(table: Table, fault: Fault, random: Random): Choice[] | null {
  const truth = found(table, fault.trace, fault.section)
  const wrong = others(table, fault, random)
    .filter((trace) => {
      const { count, eye } = found(table, trace, fault.section)
      return eye !== '' && (count !== truth.count || eye !== truth.eye)
    })
    .slice(0, 3)
  if (wrong.length === 0) return null
  const right: Choice = {
    id: 'm0',
    words: nameOf(fault.trace),
    right: true,
    reply: `Yes. ${truth.eye}`,
  }
  const rest = wrong.map((trace, i) => ({
    id: `m${i + 1}`,
    words: nameOf(trace),
    right: false,
    reply: otherwise(table, trace, fault),
  }))
  return shuffled([right, ...rest], random)
}
