import { readFileSync } from 'node:fs'
import { checkPattern } from '../../engine/intake/index.ts'
import { type WorkedPattern, work } from '../../engine/needles/index.ts'
import type { Item, Pattern, Row, Side } from '../../engine/pattern/index.ts'
import { stitch } from '../../engine/stitches/index.ts'

const span = { start: 0, end: 0 }

export const worksOf = (stitch: string, times = 1): Item => ({ kind: 'stitch', stitch, times, span })
const across = (stitch: string): Item => ({ kind: 'across', stitch, until: { kind: 'end' }, span })

/** Rows of our own over so many stitches, the first of them on the right side. */
export function rowsOver(
  castOn: number,
  rows: readonly (readonly Item[])[],
  more: Partial<Pattern> = {},
): WorkedPattern {
  const pattern: Pattern = {
    title: 'Swatch',
    castOn: { fixed: castOn },
    worked: 'flat',
    firstSide: 'RS',
    setUp: [],
    rows: rows.map((items, i): Row => ({ number: i + 1, side: sideOf(i, more), items, text: '', span })),
    growing: true,
    edges: { before: [], after: [] },
    doubleYarnOver: 'two',
    bindOffLeaves: 'extra',
    held: 0,
    draft: false,
    about: { also: [], notToConfuseWith: [], teaches: [], corrections: [] },
    ...more,
  }
  const { worked, issues } = work(pattern, 1)
  if (worked === null) throw new Error(`not worked: ${JSON.stringify(issues)}`)
  return worked
}

const sideOf = (i: number, { worked = 'flat' }: Partial<Pattern>): Side =>
  worked === 'flat' && i % 2 === 1 ? 'WS' : 'RS'

/** A stitch in a swatch with a few holes, and where it is worked. */
export interface Swatch {
  readonly worked: WorkedPattern
  readonly rowIndex: number
  readonly stepIndex: number
}

/** `around`: stitches of the swatch's row before and after the stitch that is shown; six of them fill the picture. */
export function swatchOf(id: string, side: Side, around = 6): Swatch {
  const { takes, effect, motions } = stitch(id)
  const isJoin = effect.held > 0
  const count = around + takes + (isJoin ? 0 : around)
  const plain = side === 'RS' ? 'k' : 'p'
  const bindsOff = motions.some(({ do: motion }) => motion === 'pass') && effect.chain !== null
  const first = bindsOff ? [worksOf(plain, around - 1), worksOf(id)] : [worksOf(plain, around)]
  const row = [...first, worksOf(id), ...(isJoin ? [] : [across(plain)])]
  const holes = [worksOf('k', 3), worksOf('yo'), worksOf('k2tog'), across('k')]
  const rows = side === 'RS' ? [holes, [across('p')], row] : [[across('k')], [across('p')], holes, row]
  const worked = rowsOver(count, rows, isJoin ? { held: 3 } : {})
  return { worked, rowIndex: rows.length - 1, stepIndex: around }
}

export function patternWorked(slug: string, repeats: number): WorkedPattern {
  const text = readFileSync(new URL(`../../content/patterns/${slug}.yaml`, import.meta.url), 'utf8')
  const { pattern, sound } = checkPattern({ name: slug, text })
  const { worked } = pattern ? work(pattern, repeats) : { worked: null }
  if (!sound || worked === null) throw new Error(`${slug} is not worked`)
  return worked
}
