/** A knitting needle's size in three numberings; null where a numbering has none. Millimetres are the safe key. */
export interface NeedleSize {
  readonly mm: number
  readonly us: string | null
  /** Britain's old numbers, which fall as needles grow. */
  readonly uk: string | null
  /** Where makers or charts disagree. */
  readonly disputed?: string
}

type Line = readonly [mm: number, us: string | null, uk: string | null, disputed?: string]

/** As published charts agree; each with its sources and certainty in tests/reference/needles.json. */
const lines: readonly Line[] = [
  [1.5, '000', '17'],
  [1.75, '00', null],
  [2, '0', '14'],
  [2.25, '1', '13'],
  [2.5, '1.5', null],
  [2.75, '2', '12'],
  [3, '2.5', '11', 'one maker sells 3 mm as US 2, another as US 2.5'],
  [3.25, '3', '10'],
  [3.5, '4', null],
  [3.75, '5', '9'],
  [4, '6', '8'],
  [4.5, '7', '7'],
  [5, '8', '6'],
  [5.5, '9', '5'],
  [6, '10', '4'],
  [6.5, '10.5', '3'],
  [7, null, '2'],
  [7.5, null, '1'],
  [8, '11', '0'],
  [9, '13', '00', 'one chart calls 9 mm old UK 0'],
  [10, '15', '000', 'one chart calls 10 mm old UK 0'],
  [12.75, '17', null, 'some charts call 12 mm US 17'],
  [15, '19', null, 'some charts call 16 mm US 19'],
  [19, '35', null, 'some charts call 20 mm US 35'],
  [25, '50', null],
]

export const needleSizes: readonly NeedleSize[] = lines.map(([mm, us, uk, disputed]) => ({
  mm,
  us,
  uk,
  ...(disputed !== undefined && { disputed }),
}))

/** The size of that number in a numbering ('10.5', '000'); null where there is none. */
export const needleNumbered = (numbering: 'us' | 'uk', number: string): NeedleSize | null =>
  needleSizes.find((size) => size[numbering] === number) ?? null

/** The size of so many millimetres, or the two that it lies between; fewer where it lies off the table. */
export function needlesNear(mm: number): readonly NeedleSize[] {
  const exact = needleSizes.filter((size) => size.mm === mm)
  if (exact.length > 0) return exact
  const below = needleSizes.filter((size) => size.mm < mm).slice(-1)
  const above = needleSizes.filter((size) => size.mm > mm).slice(0, 1)
  return [...below, ...above]
}
