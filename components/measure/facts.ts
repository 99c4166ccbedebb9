import { edgeTotals } from '../../engine/counts/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'

/** What the words on the page need to know of a pattern. */
export interface PieceFacts {
  /** The cast-on does not depend on repeats. */
  readonly fixed: boolean
  readonly growing: boolean
  readonly round: boolean
  readonly row: 'row' | 'round'
  readonly rows: number
  readonly setUp: number
  /** Stitches of a repeat, 0 for a fixed cast-on; what comes on top for the whole row; the pattern's own edges. */
  readonly multiple: number
  readonly plus: number
  readonly edges: number
}

export function pieceFacts(pattern: Pattern): PieceFacts {
  const { castOn, worked, growing, rows, setUp } = pattern
  const fixed = 'fixed' in castOn
  return {
    fixed,
    growing,
    round: worked === 'round',
    row: worked === 'round' ? 'round' : 'row',
    rows: rows.length,
    setUp: setUp.length,
    multiple: fixed ? 0 : castOn.multiple,
    plus: fixed ? castOn.fixed : castOn.plus,
    edges: edgeTotals(pattern).takes,
  }
}

/** '6 × 9 + 1 + 4 for the edges': how the cast-on comes about. */
export function castOnArithmetic(
  { fixed, multiple, plus, edges }: PieceFacts,
  repeats: number,
  added: number,
): string {
  const parts = [
    ...(fixed ? [] : [`${multiple} × ${repeats}`]),
    ...(plus > 0 ? [String(plus)] : []),
    ...(edges > 0 ? [`${edges} for the pattern's edges`] : []),
    ...(added > 0 ? [`${added} edge stitches of yours`] : []),
  ]
  return parts.join(' + ')
}
