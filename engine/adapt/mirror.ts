import { type Item, type Pattern, type Row, takesAndMakes, type Until } from '../pattern/index.ts'
import { type StitchId, stitch, twinsOf } from '../stitches/index.ts'
import { type Adaptation, type Change, easy, hard } from './adaptation.ts'
import { finished, rowsOf, setUpOf } from './make.ts'
import { offersIn } from './offers.ts'
import { isRefused, type Refused, refuse } from './refusal.ts'
import { listed, rowsNamed } from './say.ts'

/**
 * The pattern in a mirror: every row from its end to its beginning, each stitch by its mirror twin, so that what
 * leaned left leans right. Refused where a row cannot run the other way.
 */
export function mirror(pattern: Pattern): Adaptation {
  const setUp = mirroredRows(pattern.setUp)
  if (isRefused(setUp)) return setUp
  const rows = mirroredRows(pattern.rows)
  if (isRefused(rows)) return rows
  const { before, after } = pattern.edges
  const edges = { before: mirrored(after), after: mirrored(before) }
  const draft = { ...pattern, edges, setUp: setUpOf(setUp, pattern), rows: rowsOf(rows, 1, pattern) }
  return finished(draft, changesOf(pattern), { offers: offersIn(draft) })
}

function mirroredRows(rows: readonly Row[]): Item[][] | Refused {
  for (const row of rows) {
    const stuck = whyNot(row)
    if (stuck !== null) return stuck
  }
  return rows.map(({ items }) => mirrored(items))
}

/** What happens at one end of a row because the yarn is there cannot happen at its other end. */
const oneWay: Readonly<Record<string, string>> = {
  bindOff: 'binds off where the row begins or on the way, and the yarn would not be there',
  turn: 'is turned before its end',
  joinRound: 'joins the work into a ring',
  resume: 'takes up stitches from a holder',
}

function whyNot({ number, items }: Row): Refused | null {
  const item = items.find(({ kind }) => kind in oneWay)
  const who = number >= 1 ? `Row ${number}` : 'A set-up row'
  if (item !== undefined)
    return refuse('row-not-plain-stitches', `${who} ${oneWay[item.kind]}, so it cannot run the other way.`, {
      row: number,
      hint: 'for an edging on the other side, begin it on a wrong-side row',
    })
  const id = [...namedIn(items)].find((one) => stitch(one).mirrorTwin === null)
  if (id === undefined) return null
  const sentence = `${who} works \`${stitch(id).us}\` (${stitch(id).name}), and no stitch is its mirror image.`
  return refuse('no-twin', sentence, { row: number, stitch: id })
}

function* namedIn(items: readonly Item[]): Generator<StitchId> {
  for (const item of items) {
    if (item.kind === 'stitch' || item.kind === 'across') yield item.stitch
    if (item.kind === 'group' || item.kind === 'repeat') yield* namedIn(item.items)
  }
}

const twin = (id: StitchId): StitchId => stitch(id).mirrorTwin ?? id

/** Items from last to first. A repeat then goes as far as what now follows it leaves. */
function mirrored(items: readonly Item[]): Item[] {
  const turned = items.filter(({ kind }) => kind !== 'yarn').toReversed()
  return turned.map((item, i): Item => {
    if (item.kind === 'stitch') return { ...item, stitch: twin(item.stitch) }
    if (item.kind === 'group') return { ...item, items: mirrored(item.items) }
    if (item.kind === 'across')
      return { ...item, stitch: twin(item.stitch), until: endOf(turned.slice(i + 1)) }
    if (item.kind !== 'repeat') return item
    const until = item.until.kind === 'times' ? item.until : endOf(turned.slice(i + 1))
    return { ...item, items: mirrored(item.items), until }
  })
}

function endOf(after: readonly Item[]): Exclude<Until, { kind: 'times' }> {
  const takes = takesAndMakes(after)?.takes ?? 0
  return takes === 0 ? { kind: 'end' } : { kind: 'last', stitches: takes }
}

function changesOf(pattern: Pattern): Change[] {
  const what = pattern.worked === 'round' ? 'round' : 'row'
  const changes: Change[] = [
    easy(`Every ${what} is worked from its end to its beginning, and what leans left leans right.`),
  ]
  const all = [...pattern.setUp, ...pattern.rows]
  const used = new Set(all.flatMap(({ items }) => [...namedIn(items)]))
  const swapped = [...used].filter((id) => twin(id) !== id)
  if (swapped.length > 0) {
    const pairs = swapped.map((id) => `\`${stitch(id).us}\` becomes \`${stitch(twin(id)).us}\``)
    changes.push(easy(`${listed(pairs)}.`))
  }
  const endSlips = all.filter(({ items }) => beginsWithSlip(items)).map(({ number }) => number)
  if (endSlips.length > 0)
    changes.push(
      hard(
        `The slipped edge stitch now ends ${rowsNamed(endSlips, what)}: slip it, turn, and draw the yarn snug.`,
        endSlips,
      ),
    )
  for (const id of used) {
    const likeness = twinsOf(id).mirror?.likeness ?? 'exact'
    if (likeness === 'exact' || symmetric(id)) continue
    const rows = all.filter(({ items }) => [...namedIn(items)].includes(id)).map(({ number }) => number)
    const sentence = `\`${stitch(id).us}\` has no exact mirror image; \`${stitch(twin(id)).us}\` comes nearest, in ${rowsNamed(rows, what)}.`
    changes.push(hard(sentence, rows))
  }
  return changes
}

/** A stitch that stays itself shows no difference that a knitter would look for. */
const symmetric = (id: StitchId): boolean => twin(id) === id

const beginsWithSlip = ([first]: readonly Item[]): boolean =>
  first?.kind === 'stitch' && stitch(first.stitch).family === 'slip'
