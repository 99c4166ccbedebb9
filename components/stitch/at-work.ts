import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import { type Item, type Pattern, type Side, takesAndMakes } from '../../engine/pattern/index.ts'
import type { Stitch, StitchId } from '../../engine/stitches/index.ts'

/** A stitch in a row of plain knitting, and where in the row it is worked. */
export interface AtWork {
  readonly worked: WorkedPattern
  /** Indices into the worked rows, and into the row's steps. */
  readonly rowIndex: number
  readonly stepIndex: number
}

/** Plain stitches on each side. */
const beside = 5

const span = { start: 0, end: 0 }
const plain = (id: StitchId): Item => ({ kind: 'across', stitch: id, until: { kind: 'end' }, span })

/** Plain rows, and above them a right-side row with the stitch in its middle. */
export function atWork(stitch: Stitch): AtWork {
  const { family, id, effect } = stitch
  const knits: Item = { kind: 'stitch', stitch: 'k', times: beside, span }
  const isBindOff = family === 'bind off'
  // Nothing is passed over before the second of a bind-off; what is joined to held loops ends its row.
  const items: readonly Item[] = isBindOff
    ? [{ kind: 'bindOff', stitch: id, count: 2, leavesOne: true, span }, knits]
    : [knits, { kind: 'stitch', stitch: id, times: 1, span }, ...(effect.held > 0 ? [] : [knits])]
  const rows = [[plain('k')], [plain('p')], items]
  const { worked } = work(patternOf(stitch, rows), 1)
  if (!worked) throw new Error(`'${id}' cannot be worked in a row of plain knitting`)
  return { worked, rowIndex: rows.length - 1, stepIndex: isBindOff ? 1 : beside }
}

function patternOf({ name, effect }: Stitch, rows: readonly (readonly Item[])[]): Pattern {
  const side = (index: number): Side => (index % 2 === 0 ? 'RS' : 'WS')
  return {
    title: name,
    castOn: { fixed: takesAndMakes(rows.at(-1) ?? [])?.takes ?? 0 },
    worked: 'flat',
    firstSide: 'RS',
    setUp: [],
    rows: rows.map((items, i) => ({ number: i + 1, side: side(i), items, text: '', span })),
    growing: true,
    edges: { before: [], after: [] },
    doubleYarnOver: 'two',
    bindOffLeaves: 'extra',
    held: effect.held,
    draft: false,
    about: { also: [], notToConfuseWith: [], teaches: [], corrections: [] },
  }
}
