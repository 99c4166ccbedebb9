import type { ChartRow } from '../../engine/chart/index.ts'
import { escapeText, neighboursOf } from '../../engine/drawing/index.ts'
import { type DraftPlace, textAt, type WrittenAt } from '../../engine/intake/index.ts'
import { balanceAt, statusOf } from '../../engine/lesson/index.ts'
import { type edgesOf, type Item, type Row, stitchesUsed } from '../../engine/pattern/index.ts'
import { handSteps, stitch } from '../../engine/stitches/index.ts'
import { actOf } from '../stepper/acts.ts'
import { isFirst, isLast, moved, type Spot } from '../stepper/state.ts'
import type { StitchView } from './answer.ts'
import { choicesAt } from './choices.ts'
import { rowsOf, type Segment } from './segments.ts'
import type { WorkedDraft } from './work-draft.ts'

/** Everything that is shown at one stitch of a draft; null where it cannot be worked so far. */
export function lookAt(worked: WorkedDraft, index: number, step: number): StitchView | null {
  const segment = worked.segments.all.find(
    ({ first, worked: { rows } }) => index >= first && index < first + rows.length,
  )
  if (!segment) return null
  const { worked: piece, first, chart } = segment
  const spot: Spot = { repeats: piece.repeats, row: index - first, step }
  const [row, here] = [piece.rows[spot.row], piece.rows[spot.row]?.steps[step]]
  if (!row || !here) return null
  const to = (way: 'next' | 'back'): readonly [number, number] | null => {
    const there = moved(() => piece, spot, { do: way })
    return there === spot ? null : [there.row + first, there.step]
  }
  return {
    index,
    step,
    status: escapeText(statusOf(piece, row, here)),
    balance: escapeText(balanceAt(row, step + 1).words),
    hands: handSteps(stitch(here.stitch), 'English', neighboursOf(row, step))
      .map((words) => `<li>${escapeText(words)}</li>`)
      .join(''),
    needles: actOf({ worked: piece, chart, callOuts: () => [] }, spot, 'English')?.last() ?? '',
    isFirst: isFirst(piece, spot),
    isLast: isLast(piece, spot),
    next: to('next'),
    back: to('back'),
    ...choicesIn(worked, segment, index, step),
  }
}

function choicesIn(
  { draft, checked }: WorkedDraft,
  { worked, chart, first }: Segment,
  index: number,
  at: number,
): Pick<StitchView, 'keeps' | 'pairs' | 'others' | 'out' | 'written'> {
  const [row, workedRow] = [rowsOf(checked.pattern)[index], worked.rows[index - first]]
  const step = workedRow?.steps[at]
  const none = { keeps: [], pairs: [], others: [], out: null, written: '' }
  if (!row || !workedRow || !step) return none
  const source = sourceOf(row, step.part, checked.pattern)
  const own = textAt(draft, source.place)
  const other = step.part === 'row' ? /^\s*(?:same\s+)?as\s+\w+\s+(\d+)/i.exec(own ?? '') : null
  const text = other ? textAt(draft, { part: 'row', row: Number(other[1]) }) : own
  if (text === null) return none
  const written: WrittenAt = {
    text,
    items: source.items,
    steps: workedRow.steps,
    step: at,
    zones: zonesOf(chart.rows[index - first], workedRow.steps.length),
    isFixed: 'fixed' in worked.pattern.castOn,
  }
  const all = [...checked.pattern.setUp, ...checked.pattern.rows].flatMap(({ items }) => items)
  const used = stitchesUsed(all)
  const { span } = step
  const often = workedRow.steps.filter(
    (one) => one.part === step.part && one.span.start === span.start,
  ).length
  const choices = choicesAt({
    place: source.place,
    at: written,
    side: row.side,
    used,
    standsFor: other ? own : null,
  })
  const words = text.slice(span.start, span.end)
  return { ...choices, written: choices.out === null ? partWords(words) : writtenWords(words, often) }
}

/** Where a stitch is written: in its row, or in the edge that every row has. */
function sourceOf(
  row: Row,
  part: 'before' | 'row' | 'after',
  pattern: Parameters<typeof edgesOf>[1],
): { place: DraftPlace; items: readonly Item[] } {
  if (part === 'row') return { place: { part: 'row', row: row.number }, items: row.items }
  return { place: { part }, items: pattern.edges[part] }
}

function zonesOf(row: ChartRow | undefined, steps: number): string[] | null {
  if (!row) return null
  const zones = Array.from({ length: steps }, () => '')
  for (const cell of row.cells) if (cell.kind === 'stitch') zones[cell.step] = cell.zone
  return zones
}

/** Words that stand for more than can be changed in one place. */
const partWords = (words: string): string =>
  `This stitch is part of ‘${words}’. Write the row out, with a * for its repeat, to change one stitch of it.`

const writtenWords = (words: string, often: number): string =>
  often <= 1
    ? `Written as ‘${words}’.`
    : `Written once as ‘${words}’ and worked ${often} times in this piece: they change together.`
