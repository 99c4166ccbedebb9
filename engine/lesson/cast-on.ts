import { at, type LinearCount } from '../base/index.ts'
import { castOnCount, edgeTotals } from '../counts/index.ts'
import type { CastOn, Pattern } from '../pattern/index.ts'

export interface CastOnNumber {
  readonly repeats: number
  /** Stitches to cast on, edge stitches included. */
  readonly stitches: number
}

/** How many to cast on for each number of repeats; one entry where the number is fixed. */
export function castOnNumbers(pattern: Pattern, from = 2, to = 6): readonly CastOnNumber[] {
  const edges = edgeTotals(pattern).takes
  const count = castOnCount(pattern.castOn)
  if ('fixed' in pattern.castOn) return [{ repeats: 1, stitches: pattern.castOn.fixed + edges }]
  return Array.from({ length: to - from + 1 }, (_, i) => ({
    repeats: from + i,
    stitches: at(count, from + i) + edges,
  }))
}

/** The rule in words: 'multiple of 6 plus 1', '23 stitches'. */
export function castOnWords(castOn: CastOn): string {
  if ('fixed' in castOn) return `${castOn.fixed} stitches`
  return `multiple of ${castOn.multiple}${castOn.plus > 0 ? ` plus ${castOn.plus}` : ''}`
}

/** A count for any number of repeats, as it is written beside a row: '6 × repeats + 1', '23'. */
export function countText(count: LinearCount): string {
  if (count.perRepeat === 0) return String(count.plus)
  const plus = count.plus === 0 ? '' : count.plus > 0 ? ` + ${count.plus}` : ` − ${-count.plus}`
  return `${count.perRepeat} × repeats${plus}`
}
