import { type Casebook, type MistakeKind, tracesIn } from '../../engine/mistakes/index.ts'

export interface ClassMend {
  readonly title: string
  readonly words: string
}

/** Mends that a teacher shows at the table, by the mistakes that they mend. Common practice, no source. */
const mends: readonly (ClassMend & { readonly of: readonly MistakeKind[] })[] = [
  {
    title: 'A hole is missing',
    of: ['yarn over left out', 'yarn over dropped on the return', 'yarn over half made'],
    words:
      'Work to the place. Lift the strand that lies between the two stitches onto the tip, from front to back, and work it as the yarn over. It comes out a little tight; blocking eases it.',
  },
  {
    title: 'A hole too many',
    of: ['yarn over too many', 'yarn over made twice', 'yarn left in front'],
    words:
      'In the next row let that yarn over slide off the needle: it opens no further than its own row. Ease its slack into the stitches beside it.',
  },
  {
    title: 'The slipped stitch was not passed over',
    of: ['pass over forgotten'],
    words:
      'In the next row, work to that place. Lift the slipped stitch, which stands taller than the others, over the stitch that was worked after it.',
  },
  {
    title: 'A decrease was left out',
    of: ['decrease left out', 'single for double'],
    words:
      'In the next row work to the two stitches that belong together, put them in the right order and work them as one. The lean is a row too high; only you will see it.',
  },
  {
    title: 'A stitch has dropped',
    of: ['stitch dropped'],
    words:
      'Hold it at once with a safety pin or a removable marker. Then hook it up through the strands of the ladder, one after the other. Close the pin, and keep it from children.',
  },
  {
    title: 'One stretch is short, the next is over',
    of: ['yarn over jumped the marker', 'marker not moved'],
    words: 'Nothing is knitted wrongly. Lift the stitch back to the other side of the marker.',
  },
]

/** The mends that this pattern needs most: by how often the mistakes that can be made in it are made. */
export function classMends(book: Casebook, most = 3): ClassMend[] {
  const of = new Map<MistakeKind, { most: number; places: number }>()
  for (const { index } of book.plan.rows) {
    for (const { mistake, weight } of tracesIn(book, index)) {
      const { most: known, places } = of.get(mistake.kind) ?? { most: 0, places: 0 }
      of.set(mistake.kind, { most: Math.max(known, weight), places: places + 1 })
    }
  }
  // Many places make a kind likelier, though not as many times as there are places.
  const weigh = (kinds: readonly MistakeKind[]): number =>
    Math.max(...kinds.map((kind) => (of.get(kind)?.most ?? 0) * Math.sqrt(of.get(kind)?.places ?? 0)))
  return mends
    .map((mend) => ({ mend, weight: weigh(mend.of) }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .slice(0, most)
    .map(({ mend: { title, words } }) => ({ title, words }))
}
