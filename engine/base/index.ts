/**
 * What every other folder stands on: places in a text, problems and their words, limits, exact counts, seeded random.
 * Knows nothing of knitting but the sentences of the problems.
 */
export type * from './issue.ts'
export * from './limits.ts'
export * from './linear.ts'
export * from './random.ts'
export * from './sentences.ts'
export * from './source.ts'
