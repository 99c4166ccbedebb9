import { seededRandom } from '../base/index.ts'

export type Random = () => number

/** Numbers that can be read out: four digits. */
const numbers = 10_000

/** As it is read out and stands in the address: '0407'. */
export const numberText = (number: number): string => String(number).padStart(4, '0')

/** A number from its four digits; null for anything else. */
export const readNumber = (text: unknown): number | null =>
  typeof text === 'string' && /^\d{4}$/.test(text) ? Number(text) : null

/**
 * The number after a number, for everyone the same, so that a class that goes on goes on together. The walk jumps about and
 * meets every number once before it comes round: a multiplier one more than a multiple of 20 and an odd step that 5 does not
 * divide see to that (Hull and Dobell, Random Number Generators, SIAM Review 4, 1962; from memory, and tested).
 */
export const nextNumber = (number: number): number => (number * 4321 + 2731) % numbers

/** The luck of one exercise: each kind has its own under the same number. */
export const luckOf = (number: number, kind: number): Random => seededRandom(number * 64 + kind + 1)

/** One of a list. Throws for an empty one: a programming error. */
export function drawn<T>(list: readonly T[], random: Random): T {
  const one = list[Math.floor(random() * list.length)]
  if (one === undefined) throw new Error('nothing to draw from')
  return one
}

export function shuffled<T>(list: readonly T[], random: Random): T[] {
  const mixed = [...list]
  for (let i = mixed.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1))
    ;[mixed[i], mixed[j]] = [mixed[j] as T, mixed[i] as T]
  }
  return mixed
}

/** The list in an order in which what weighs more tends to come first. */
export function byWeight<T>(list: readonly T[], weight: (one: T) => number, random: Random): T[] {
  return list
    .map((one) => ({ one, at: random() ** (1 / Math.max(weight(one), 1e-6)) }))
    .sort((a, b) => b.at - a.at)
    .map(({ one }) => one)
}
