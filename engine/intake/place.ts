import * as z from 'zod/mini'

/** How a reader carries the yarn. */
export type Hold = 'English' | 'Continental'

/** The stitch that a reader has come to in a lesson. */
export interface Place {
  readonly repeats: number
  /** Index into the worked pattern's rows, set-up rows first. */
  readonly row: number
  /** Index into that row's steps. */
  readonly step: number
  readonly hold: Hold
}

/** What a reader chose once for every lesson. */
export interface Habits {
  readonly hold: Hold
  readonly slower: boolean
}

/** Pattern repeats side by side that a lesson can show. */
export const mostRepeats = 6
/** No row and no pattern that the engine works has more; a place beyond that was never left by a reader. */
const mostSteps = 20_000
/** What is stored has some 70 characters. */
const mostCharacters = 500

const hold = z.enum(['English', 'Continental'])
const index = z.int().check(z.gte(0), z.lt(mostSteps))

const placeSchema = z.strictObject({
  repeats: z.int().check(z.gte(1), z.lte(mostRepeats)),
  row: index,
  step: index,
  hold,
})

const habitsSchema = z.strictObject({ hold, slower: z.boolean() })

/** A place as it was stored; null for anything that is not one. Whether a pattern has that stitch is asked later. */
export const parsePlace = (stored: unknown): Place | null => parsed(placeSchema, stored)

/** Habits as they were stored; null for anything that is not them. */
export const parseHabits = (stored: unknown): Habits | null => parsed(habitsSchema, stored)

function parsed<T>(schema: z.ZodMiniType<T>, stored: unknown): T | null {
  if (typeof stored !== 'string' || stored.length > mostCharacters) return null
  try {
    return schema.safeParse(JSON.parse(stored)).data ?? null
  } catch {
    return null
  }
}
