import { limits } from '../../engine/base/index.ts'
import type { Draft } from '../../engine/intake/index.ts'
import { find } from '../mend/dom.ts'
import type { Answer, MendView } from './answer.ts'
import { difference, numberOf, textsOf } from './edit-rows.ts'
import type { OnMend } from './problems.ts'
import {
  lightLoops,
  type RowPart,
  rowPart,
  setName,
  setText,
  showMarks,
  showProblems,
  showRow,
} from './row-view.ts'

/** The list of rows. It shows a draft and tells what a hand did to it; it changes nothing by itself. */
export interface RowsView {
  /** Puts the draft's words into the fields. */
  sync(draft: Draft): void
  /** What has to be done to show an answer, row by row. */
  showing(draft: Draft, answer: Answer, mends: readonly MendView[]): (() => void)[]
  light(index: number | null, step: number | null): void
  focus(index: number, caret: number): void
  /** The stitch that stands at a caret; null where the words have changed since they were worked. */
  stepAt(index: number, caret: number): number | null
  /** Where a stitch is written. */
  spanOf(index: number, step: number): readonly [number, number] | null
}

export interface RowEvents {
  readonly onText: (index: number, text: string) => void
  readonly onPaste: (index: number, event: ClipboardEvent) => void
  readonly onKey: (index: number, event: KeyboardEvent) => void
  readonly onCaret: (index: number, caret: number) => void
  readonly onTool: (index: number, tool: string) => void
  readonly onMend: OnMend
  /** Something far too long came into a row: it stays as it was. */
  readonly onTooLong: (characters: number) => void
}

export function rowsView(root: HTMLElement, events: RowEvents): RowsView {
  const list = find<HTMLOListElement>(root, '[data-rows]')
  const template = find<HTMLTemplateElement>(root, '[data-row-template]')
  let parts: RowPart[] = []
  let lit: RowPart | null = null
  const indexOf = (part: RowPart): number => parts.indexOf(part)

  const fresh = (): RowPart => {
    const part = rowPart(template)
    const { field, li } = part
    field.addEventListener('input', () => {
      if (field.value.length > limits.rowCharacters) {
        events.onTooLong(field.value.length)
        field.value = part.text
        return
      }
      setText(part, field.value)
      events.onText(indexOf(part), field.value)
    })
    field.addEventListener('paste', (event) => events.onPaste(indexOf(part), event))
    field.addEventListener('keydown', (event) => events.onKey(indexOf(part), event))
    for (const kind of ['keyup', 'pointerup', 'focus'] as const)
      field.addEventListener(kind, () => events.onCaret(indexOf(part), field.selectionStart))
    for (const tool of li.querySelectorAll<HTMLElement>('[data-tool]'))
      tool.addEventListener('click', () => events.onTool(indexOf(part), tool.dataset.tool ?? ''))
    li.addEventListener('click', ({ target }) => {
      const loop = target instanceof Element ? target.closest('.strip [data-key]') : null
      const step = /^loop-(\d+)$/.exec(loop?.getAttribute('data-key') ?? '')?.[1]
      const at = step === undefined ? undefined : part.spans[2 * Number(step)]
      if (at !== undefined && at >= 0) focus(part, at)
    })
    return part
  }
  const focus = (part: RowPart, caret: number): void => {
    part.field.focus()
    part.field.setSelectionRange(caret, caret)
    events.onCaret(indexOf(part), caret)
  }
  const sync = (draft: Draft): void => {
    const texts = textsOf(draft)
    const { start, taken, put } = difference(
      parts.map(({ text }) => text),
      texts,
    )
    // Rows that stay as many keep their places, so that a caret stays where it is.
    const kept = Math.min(taken, put)
    for (const gone of parts.splice(start + kept, taken - kept)) gone.li.remove()
    const added = Array.from({ length: put - kept }, fresh)
    const before = parts[start + kept]?.li ?? null
    for (const part of added) list.insertBefore(part.li, before)
    parts = [...parts.slice(0, start + kept), ...added, ...parts.slice(start + kept)]
    const word = draft.worked === 'round' ? 'round' : 'row'
    for (const [i, part] of parts.entries()) {
      setText(part, texts[i] ?? '')
      const number = numberOf(draft, i)
      setName(
        part,
        number >= 1 ? `${capital(word)} ${number}` : `Set-up ${word} ${number + draft.setUp.length}`,
        i,
      )
    }
  }
  return {
    sync,
    showing(draft, answer, mends) {
      const problems = problemsByRow(answer, mends)
      return parts.map((part, i) => () => {
        showRow(part, answer.rows[i] ?? null)
        showMarks(part, answer.marks.rows[i] ?? [])
        showProblems(part, problems.get(numberOf(draft, i)) ?? [], events.onMend)
      })
    },
    light(index, step) {
      if (lit) lightLoops(lit, null)
      lit = index === null ? null : (parts[index] ?? null)
      if (lit) lightLoops(lit, step)
    },
    focus(index, caret) {
      const part = parts[index]
      if (part) focus(part, Math.min(caret, part.text.length))
    },
    stepAt(index, caret) {
      const part = parts[index]
      if (!part || part.spansOf !== part.text) return null
      return stepIn(part.spans, caret)
    },
    spanOf(index, step) {
      const spans = parts[index]?.spans
      const [start, end] = [spans?.[2 * step], spans?.[2 * step + 1]]
      return start === undefined || end === undefined || start < 0 ? null : [start, end]
    },
  }
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)

/** The first step whose words the caret stands in or behind. */
function stepIn(spans: readonly number[], caret: number): number | null {
  let best: number | null = null
  let nearest = Number.POSITIVE_INFINITY
  for (let i = 0; i < spans.length; i += 2) {
    const [start = -1, end = -1] = [spans[i], spans[i + 1]]
    if (start < 0) continue
    const off = caret < start ? start - caret + 0.5 : caret > end ? caret - end : 0
    if (off < nearest) [nearest, best] = [off, i / 2]
  }
  return nearest <= 40 ? best : null
}

type Told = Parameters<typeof showProblems>[1]

function problemsByRow(answer: Answer, mends: readonly MendView[]): ReadonlyMap<number, Told> {
  const byRow = new Map<number, Told>()
  for (const [i, problem] of answer.problems.entries()) {
    if (problem.place.part !== 'row') continue
    const { row } = problem.place
    const own = { problem, mends: mends.filter((mend) => mend.problem === i) }
    byRow.set(row, [...(byRow.get(row) ?? []), own])
  }
  return byRow
}
