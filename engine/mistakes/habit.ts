import { type Act, instead, stitchAct, stitchOf } from './acts.ts'
import { isDecrease, isPlain, narrower } from './kin.ts'
import type { RowPlan } from './plan.ts'

/** A stretch of a row's acts fitted to the loops that are there, as a knitter does who does not look back. */
export interface Fitted {
  readonly acts: readonly Act[]
  /** Loops that were left over when the words were done: they were worked plain. */
  readonly over: number
  /** Loops that the words asked for and were not there. */
  readonly short: number
}

const plains = new WeakMap<object, string>()

/** The plain stitch that the row is mostly made of. Found once. */
export function plainOf(row: Pick<RowPlan, 'acts' | 'side'>): string {
  const known = plains.get(row) ?? mostlyPlain(row)
  plains.set(row, known)
  return known
}

function mostlyPlain(row: Pick<RowPlan, 'acts' | 'side'>): string {
  const plain = row.acts.map(stitchOf).filter((id) => id !== null && isPlain(id)) as string[]
  const knits = plain.filter((id) => id === 'k').length
  return plain.length === 0 ? (row.side === 'RS' ? 'k' : 'p') : 2 * knits >= plain.length ? 'k' : 'p'
}

/** Works `acts` on `loops` loops: open stretches reach as far as there is room; the rest goes by the words. */
export function fit(acts: readonly Act[], loops: number, plain: string): Fitted {
  const meant = stretched(acts, loops)
  const done: Act[] = []
  let left = loops
  let short = 0
  for (const act of meant) {
    if (act.takes <= left) {
      if (short > 0 && act.takes === 0) continue
      done.push(act)
      left -= act.takes
    } else {
      short += act.takes - left
      if (left > 0) done.push(...withFewer(act, left))
      left = 0
    }
  }
  const last = meant.at(-1) ?? acts.at(-1)
  if (left > 0 && last) for (let i = 0; i < left; i++) done.push(plainAct(last, plain))
  return { acts: done, over: last ? left : 0, short }
}

/** An open stretch grows and shrinks with the loops; of several, the last. */
function stretched(acts: readonly Act[], loops: number): readonly Act[] {
  const lastOpen = acts.findLastIndex((act) => act.open)
  if (lastOpen < 0) return acts
  let more = loops - acts.reduce((sum, act) => sum + act.takes, 0)
  if (more === 0) return acts
  const found = [...acts]
  const model = found[lastOpen] as Act
  for (; more > 0; more--) found.splice(lastOpen, 0, { ...model, step: null })
  for (let at = lastOpen; at >= 0 && more < 0; at--) {
    if (!found[at]?.open) continue
    more += found[at]?.takes ?? 0
    found.splice(at, 1)
  }
  return found
}

/** What becomes of a stitch when only `left` loops are there for it. */
function withFewer(act: Act, left: number): Act[] {
  let id = stitchOf(act)
  if (id === null || !isDecrease(id)) return []
  for (let takes = act.takes; takes > left && id !== null; takes--) id = narrower(id)
  return id === null ? [] : [{ ...instead(act, id), step: act.step }]
}

/** A plain stitch where nothing was meant to be. */
function plainAct(beside: Act, plain: string): Act {
  if (beside.deed.do === 'stitch') return { ...instead(beside, plain), step: null }
  const span = { start: 0, end: 0 }
  const laid = { do: 'stitch', stitch: plain, span, repeat: null, position: null, part: 'row' } as const
  return stitchAct(laid, beside.section, false, null)
}
