import type { WorkedPattern } from '../needles/index.ts'
import type { Both, Consequence, Shows } from './consequence-facts.ts'
import { consequenceWords } from './consequence-words.ts'
import { actAt, lastRowOf } from './edits.ts'
import type { RowOutcome } from './follow.ts'
import { lookWords, type Sight } from './look.ts'
import type { Mistake } from './mistake.ts'
import { editsOf, modelOf } from './models.ts'
import { outcomes } from './outcomes.ts'
import { type Plan, rowAfter } from './plan.ts'
import { sightsOf } from './see.ts'
import { type Casebook, planFrom } from './traces.ts'
import { workWrong } from './work-wrong.ts'

/** The latest row in which a mistake makes itself known. */
function showsIn(plan: Plan, mistake: Mistake, rows: readonly RowOutcome[], sights: readonly Sight[]): Shows {
  const turned = (at: number) => rows.slice(1, at + 1).some((one, i) => one.row <= (rows[i]?.row ?? -1))
  const misfit = rows.findIndex((one) => one.at !== null)
  const off = rows[misfit]
  if (off) return { by: 'row end', row: off.row, nextTurn: turned(misfit), off: off.over - off.short }
  const counted = rows.findIndex((one) => differs(plan, one))
  if (counted >= 0) return { by: 'count', row: rows[counted]?.row ?? null, nextTurn: turned(counted), off: 0 }
  if (sights.length === 0) return { by: 'nothing', row: null, nextTurn: false, off: 0 }
  const row = nextLace(plan, mistake.row + Math.max(...sights.map((sight) => sight.later)))
  return { by: 'eye', row, nextTurn: row !== null && row <= mistake.row, off: 0 }
}

function settledIn(plan: Plan, rows: readonly RowOutcome[], last: number): Both {
  const done = rows.find((one) => one.row >= last) ?? rows.at(-1)
  const meant = plan.rows[done?.row ?? 0]?.makes.reduce((sum, count) => sum + count, 0) ?? 0
  return { meant, now: done?.total ?? meant }
}

const differs = (plan: Plan, { row, counts }: RowOutcome): boolean =>
  counts.some((count, section) => count !== plan.rows[row]?.makes[section])

/** The next row with holes or decreases of its own: there a reader looks at what stands below. */
function nextLace(plan: Plan, row: number): number | null {
  let at = rowAfter(plan, Math.min(row, plan.rows.length - 1))
  for (let tries = 0; at !== null && tries < plan.rows.length; tries++) {
    if (!plan.rows[at]?.resting) return at
    at = rowAfter(plan, at)
  }
  return at
}

/**
 * What follows from a mistake: the counts now, when it shows at the latest, whether later rows still fit, what the eye
 * sees. All of it is found by working the wrong rows; null where the mistake cannot be made there.
 */
export function consequenceOf(source: WorkedPattern | Plan | Casebook, mistake: Mistake): Consequence | null {
  const plan = planFrom(source)
  const edits = editsOf(plan, mistake)
  if (!edits) return null
  const rows = outcomes(plan, edits, 'markers', plan.rows.length + 1)
  const [first] = rows
  const right = first && plan.rows[first.row]
  if (!first || !right) return null
  const sights = sightsOf(plan, mistake, edits)
  const counts = first.counts.flatMap((now, section) => {
    const meant = right.makes[section] ?? 0
    return meant === now ? [] : [{ section, meant, now }]
  })
  const known: Omit<Consequence, 'words'> = {
    mistake,
    name: modelOf(mistake.kind).name,
    counts,
    total: { meant: right.makes.reduce((sum, count) => sum + count, 0), now: first.total },
    settled: settledIn(plan, rows, lastRowOf(edits)),
    rowEnd: first.over - first.short,
    shows: showsIn(plan, mistake, rows, sights),
    laterRowsFit: rows.every((row) => row.at === null),
    knittedRightly: sights.length > 0 && sights.every(({ look }) => look === 'marker beside its place'),
    sights,
    eye: [...new Set(sights.map(({ look }) => lookWords[look]))],
    wrong: workWrong(plan, edits, 2),
  }
  return {
    ...known,
    words: consequenceWords(plan, known, actAt(plan, mistake.row, mistake.step)?.section ?? null),
  }
}
