/** What the engine takes on at most. They count expanded work, so that a short text cannot ask for hours of it. */
export const limits = {
  /** Characters in one pattern file. A long published pattern has about 5,000. */
  fileCharacters: 200_000,
  /** Rows in one pattern, set-up rows included. */
  rows: 1_000,
  /** Characters in one row as written. */
  rowCharacters: 20_000,
  /** How deep brackets may stand within brackets. */
  nesting: 12,
  /** A number as written in a row (k2000 is the widest plausible stitch run). */
  writtenNumber: 1_000_000,
  /** Stitches in one row once its repeats are laid out. */
  stitchesInRow: 20_000,
  /** Steps in one worked pattern. */
  steps: 400_000,
  /** Problems told for one file; the rest are counted. */
  problems: 200,
} as const
