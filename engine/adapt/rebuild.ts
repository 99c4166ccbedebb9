import type { Pattern } from '../pattern/index.ts'
import { itemsOf } from './fold.ts'
import { rowsOf, setUpOf } from './make.ts'
import { makesOf, type Shown, type ShownRow, takesOf } from './shown.ts'

/** The pattern with other rows, and the cast-on that they want. Edges stay. */
export function rebuilt(pattern: Pattern, { setUp, rows }: Shown): Pattern {
  return {
    ...pattern,
    castOn: castOnOf(setUp[0] ?? rows[0]),
    setUp: setUpOf(setUp.map(itemsOf), pattern),
    rows: rowsOf(rows.map(itemsOf), 1, pattern),
  }
}

function castOnOf(first: ShownRow | undefined): { multiple: number; plus: number } {
  if (first === undefined) return { multiple: 1, plus: 0 }
  const multiple = takesOf(first.repeat)
  return { multiple, plus: takesOf(first.right) + takesOf(first.left) - first.fewer * multiple }
}

/** Whether all rows are on one count: none gives more loops than it takes. */
export const keepsCount = (rows: readonly ShownRow[]): boolean =>
  rows.every(({ repeat }) => takesOf(repeat) === makesOf(repeat))
