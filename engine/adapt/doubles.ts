import type { Item, Pattern, Row } from '../pattern/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'
import { type Adaptation, type Change, easy, hard } from './adaptation.ts'
import { finished, rowsOf, setUpOf } from './make.ts'
import { refuse } from './refusal.ts'
import { capital, listed, rowsNamed } from './say.ts'

/** How a double decrease is to lie on the right side. */
export type Lean = 'left' | 'centre' | 'right'

/** The plainest double decrease of each lean on a right-side row. Their wrong-side forms are their twins. */
const ofLean: Readonly<Record<Lean, StitchId>> = { left: 'sk2p', centre: 's2kp', right: 'k3tog' }

/** Every double decrease that makes one loop of three, as another that lies `lean`: the same loops, in another order. */
export function leanDoubles(pattern: Pattern, lean: Lean): Adaptation {
  const changed = [...pattern.setUp, ...pattern.rows].filter((row) => anySwap(row, lean))
  if (changed.length === 0) {
    const doubles = [...pattern.setUp, ...pattern.rows].some((row) =>
      [...doublesIn(row.items)].some((id) => leanOf(id, row) !== null),
    )
    if (doubles) return refuse('already', `Its double decreases lie ${leanWord[lean]} already.`)
    return refuse('no-doubles', 'It has no double decrease that makes one stitch of three.')
  }
  const swap = (row: Row): Item[] => swapped(row.items, row, lean)
  const draft = {
    ...pattern,
    setUp: setUpOf(pattern.setUp.map(swap), pattern),
    rows: rowsOf(pattern.rows.map(swap), 1, pattern),
  }
  return finished(draft, changesOf(pattern, changed, lean))
}

const isDouble = (id: StitchId): boolean => {
  const { family, takes, makes } = stitch(id)
  return family === 'double decrease' && takes === 3 && makes === 1
}

function* doublesIn(items: readonly Item[]): Generator<StitchId> {
  for (const item of items) {
    if (item.kind === 'stitch' && isDouble(item.stitch)) yield item.stitch
    if (item.kind === 'group' || item.kind === 'repeat') yield* doublesIn(item.items)
  }
}

/** How a stitch lies on the right side of the fabric. */
function leanOf(id: StitchId, { side }: Pick<Row, 'side'>): Lean | null {
  return side === 'RS' ? stitch(id).lean : stitch(stitch(id).wrongSideTwin ?? id).lean
}

/** What is purled on a right-side row stays purled, and what lies so already stays as it is. */
function wanted(id: StitchId, row: Pick<Row, 'side'>, lean: Lean): StitchId {
  const is = leanOf(id, row)
  if (!isDouble(id) || is === null || is === lean) return id
  const seen = ofLean[lean]
  return row.side === 'RS' ? seen : (stitch(seen).wrongSideTwin ?? id)
}

const anySwap = (row: Row, lean: Lean): boolean =>
  [...doublesIn(row.items)].some((id) => wanted(id, row, lean) !== id)

function swapped(items: readonly Item[], row: Row, lean: Lean): Item[] {
  return items.map((item): Item => {
    if (item.kind === 'stitch') return { ...item, stitch: wanted(item.stitch, row, lean) }
    if (item.kind === 'group' || item.kind === 'repeat')
      return { ...item, items: swapped(item.items, row, lean) }
    return item
  })
}

const leanWord: Readonly<Record<Lean, string>> = {
  left: 'to the left',
  right: 'to the right',
  centre: 'upright',
}

function changesOf({ worked }: Pattern, rows: readonly Row[], lean: Lean): Change[] {
  const what = worked === 'round' ? 'round' : 'row'
  const numbers = rows.map(({ number }) => number)
  const was = [...new Set(rows.flatMap((row) => [...doublesIn(row.items)].map((id) => leanOf(id, row))))]
  const from = was.filter((one) => one !== null && one !== lean).map((one) => leanWord[one as Lean])
  const into = new Set(rows.flatMap((row) => [...doublesIn(row.items)].map((id) => wanted(id, row, lean))))
  const names = [...into].map((id) => `\`${stitch(id).us}\``)
  const sentence = `${capital(rowsNamed(numbers, what))}: the double decrease is ${listed(names)} and lies ${leanWord[lean]} instead of ${listed(from)}. It takes the same three stitches, so no count changes.`
  const pair = was.includes('left') && was.includes('right')
  return [
    easy(sentence, numbers),
    ...(pair
      ? [hard('The doubles leaned toward each other as a mirrored pair; now both lie the same way.', numbers)]
      : []),
    ...(lean === 'centre'
      ? [
          hard(
            'The centred double slips two stitches at once and passes both over: loose stitches in the row before make it easier for stiff hands. Where it hurts, take another; pain that stays is for a doctor or physiotherapist.',
            numbers,
          ),
        ]
      : []),
  ]
}
