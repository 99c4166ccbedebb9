import { withRowsOf } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import type { Desk } from './desk.ts'

/**
 * Puts the rows, edges and cast-on of a pattern that was made from the draft (worked in the round, mirrored, wider) in
 * the place of the draft's own. Everything else of the draft stays, and one Undo brings the old rows back.
 */
export function takeRows(desk: Pick<Desk, 'draft' | 'change'>, pattern: Pattern): void {
  desk.change(withRowsOf(desk.draft(), pattern))
}
