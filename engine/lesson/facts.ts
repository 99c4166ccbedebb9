import { same } from '../base/index.ts'
import type { Proof } from '../counts/index.ts'
import { type Pattern, type Row, stitchesUsed } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'

/** A row with anything but knits, purls and slips. */
const isPatterned = (row: Row): boolean =>
  [...stitchesUsed(row.items)].some(
    (id) => !['plain', 'twisted', 'slip', 'bind off'].includes(stitch(id).family),
  )

/** 'flat, patterned on the right side only', found from the rows. */
export function kindWords({ worked, setUp, rows }: Pattern): string {
  if (worked === 'round') return 'in the round'
  const sides = new Set([...setUp, ...rows].filter(isPatterned).map((row) => row.side))
  if (sides.size === 2) return 'flat, patterned on both sides'
  if (sides.has('RS')) return 'flat, patterned on the right side only'
  return sides.has('WS') ? 'flat, patterned on the wrong side only' : 'flat, without patterned rows'
}

/** Whether the count stays, comes back, or grows, found from the proof. */
export function countBehaviour(
  pattern: Pattern,
  proof: Proof,
): 'stays the same' | 'changes and comes back' | 'grows' {
  if (pattern.growing) return 'grows'
  return proof.rows.every(({ before, after }) => same(before, after))
    ? 'stays the same'
    : 'changes and comes back'
}
