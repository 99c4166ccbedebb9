import type { Look } from './look.ts'
import type { Fitting } from './match.ts'
import type { MistakeKind } from './mistake.ts'
import type { Casebook } from './traces.ts'
import { sightsFor } from './traces.ts'

/** One kind of mistake in one place that agrees with the evidence. */
export interface Suspect {
  readonly kind: MistakeKind
  /** Index into the worked rows. */
  readonly row: number
  /** Index into the plan's sections; null where it is a whole row or the cast-on. */
  readonly section: number | null
  readonly everywhere: boolean
  /** Everything that it could have been exactly, likeliest first. */
  readonly fittings: readonly Fitting[]
  /** Its share among all suspects, 0 to 1. */
  readonly share: number
  /** What there is to see of the likeliest of them, the most striking first. */
  readonly looks: readonly Look[]
}

const groupKey = ({ trace: { mistake, section } }: Fitting): string =>
  `${mistake.kind}|${mistake.row}|${section ?? ''}|${mistake.everywhere}`

/** Gathers what differs only by the exact stitch. Likeliest first. */
export function suspectsOf(book: Casebook, fittings: readonly Fitting[]): Suspect[] {
  const groups = new Map<string, Fitting[]>()
  for (const fitting of fittings) {
    const key = groupKey(fitting)
    const group = groups.get(key)
    if (group) group.push(fitting)
    else groups.set(key, [fitting])
  }
  const weights = [...groups.values()].map(weightOf)
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  const suspects = [...groups.values()].map((group, i): Suspect => {
    const [first] = group as [Fitting, ...Fitting[]]
    const { mistake, section } = first.trace
    return {
      kind: mistake.kind,
      row: mistake.row,
      section,
      everywhere: mistake.everywhere,
      fittings: group,
      share: all === 0 ? 0 : (weights[i] ?? 0) / all,
      looks: looksNow(book, first),
    }
  })
  return suspects.sort((a, b) => b.share - a.share)
}

/** Many places for one kind make it likelier, though not as many times as there are places. */
const weightOf = (group: readonly Fitting[]): number =>
  Math.max(...group.map((one) => one.weight)) * Math.sqrt(group.length)

/** What a reader can see of a mistake by now. */
export function looksNow(book: Casebook, { trace, ago }: Fitting): Look[] {
  return [...new Set(sightsFor(book, trace).flatMap(({ look, later }) => (later <= ago ? [look] : [])))]
}
