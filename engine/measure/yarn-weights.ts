/** A category of the trade body's yarn standard, by what it states for stocking stitch. */
export interface YarnCategory {
  readonly number: number
  readonly name: string
  /** Stitches in 4 inches of stocking stitch; null where open. */
  readonly gauge: readonly [number | null, number]
  /** Millimetres; null where open. */
  readonly needle: readonly [number, number | null]
}

const fourInches = 101.6

/** Guidelines for stocking stitch. Copies of the standard agree; sources in tests/reference/yarn-weights.json. */
export const yarnCategories: readonly YarnCategory[] = [
  { number: 0, name: 'Lace', gauge: [33, 40], needle: [1.5, 2.25] },
  { number: 1, name: 'Super Fine', gauge: [27, 32], needle: [2.25, 3.25] },
  { number: 2, name: 'Fine', gauge: [23, 26], needle: [3.25, 3.75] },
  { number: 3, name: 'Light', gauge: [21, 24], needle: [3.75, 4.5] },
  { number: 4, name: 'Medium', gauge: [16, 20], needle: [4.5, 5.5] },
  { number: 5, name: 'Bulky', gauge: [12, 15], needle: [5.5, 8] },
  { number: 6, name: 'Super Bulky', gauge: [7, 11], needle: [8, 12.75] },
  { number: 7, name: 'Jumbo', gauge: [null, 6], needle: [12.75, null] },
]

/**
 * The categories whose stocking-stitch gauge takes in so many stitches over so many millimetres, to the nearest stitch.
 * Two where the standard's ranges overlap (Fine and Light), none beyond its ends.
 */
export function categoriesOfGauge(stitches: number, over: number): readonly YarnCategory[] {
  const count = Math.round((stitches / over) * fourInches)
  return yarnCategories.filter(({ gauge: [least, most] }) => count >= (least ?? 1) && count <= most)
}
