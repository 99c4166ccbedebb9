import { limits } from '../../engine/base/index.ts'
import { type Draft, draftCastOn, type Pasted, readPaste } from '../../engine/intake/index.ts'
import type { Desk } from './desk.ts'
import { cut, joined, pasted, splice, textsOf, withRow } from './edit-rows.ts'
import type { noticeOn } from './notice.ts'
import type { RowEvents } from './rows-view.ts'

export interface HandParts {
  readonly desk: Pick<Desk, 'draft' | 'change'>
  readonly say: ReturnType<typeof noticeOn>
  readonly focus: (index: number, caret: number) => void
}

export interface RowHands extends Pick<RowEvents, 'onKey' | 'onPaste' | 'onTool' | 'onTooLong'> {
  readonly addBelow: (index: number) => void
}

/** What keys, the clipboard and a row's buttons do to the rows beside putting letters into one. */
export function rowHands({ desk, say, focus }: HandParts): RowHands {
  const addBelow = (index: number): void => {
    desk.change(splice(desk.draft(), index + 1, 0, ['']))
    focus(index + 1, 0)
  }
  const takeOut = (index: number): void => {
    const isLast = textsOf(desk.draft()).length === 1
    desk.change(isLast ? withRow(desk.draft(), 0, '') : splice(desk.draft(), index, 1, []))
    focus(Math.max(0, index - 1), 0)
  }
  const cutAt = (index: number, field: HTMLTextAreaElement): void => {
    const { selectionStart: start, selectionEnd: end, value } = field
    const left = value.slice(0, start) + value.slice(end)
    desk.change(cut(withRow(desk.draft(), index, left), index, start))
    focus(index + 1, 0)
  }
  const join = (index: number): boolean => {
    const both = joined(desk.draft(), index)
    if (!both) return false
    desk.change(both.draft)
    focus(index - 1, both.caret)
    return true
  }
  const onTooLong = (characters: number): void => {
    const size = new Intl.NumberFormat('en-GB').format(characters)
    say(
      `That is ${size} characters, far more than a pattern has. Nothing was put in, and your draft is as it was.`,
    )
  }
  const onPaste = (index: number, event: ClipboardEvent): void => {
    const text = event.clipboardData?.getData('text/plain') ?? ''
    const field = event.target as HTMLTextAreaElement
    const isTooLong = isMoreThanAPattern(text)
    if (!isTooLong && !/[\r\n]/.test(text)) return
    event.preventDefault()
    if (isTooLong) return onTooLong(text.length)
    const read = readPaste(text)
    const selection = { start: field.selectionStart, end: field.selectionEnd }
    desk.change(withPaste(desk.draft(), index, selection, read))
    focus(index, 0)
    sayPasted(read)
  }
  const sayPasted = ({ castOn, beside }: Pasted): void => {
    const words = [
      ...(castOn ? [`‘${castOn.words}’ went into the cast-on.`] : []),
      ...(beside.length > 0 ? ['Lines that are no rows went into the name or the notes.'] : []),
    ]
    if (words.length > 0) say(words.join(' '))
  }
  return {
    addBelow,
    onTooLong,
    onPaste,
    onTool: (index, tool) => (tool === 'below' ? addBelow(index) : takeOut(index)),
    onKey(index, event) {
      const { ctrlKey, altKey, metaKey, shiftKey, isComposing, key } = event
      if (ctrlKey || altKey || metaKey || shiftKey || isComposing) return
      const field = event.target as HTMLTextAreaElement
      const { selectionStart: start, selectionEnd: end, value } = field
      const isAtStart = start === 0 && end === 0
      if (key === 'Enter') cutAt(index, field)
      else if (key === 'Backspace' && isAtStart && join(index)) event.preventDefault()
      else if (key === 'ArrowUp' && isAtStart && index > 0) focus(index - 1, Number.MAX_SAFE_INTEGER)
      else if (key === 'ArrowDown' && start === value.length) focus(index + 1, 0)
      else return
      event.preventDefault()
    },
  }
}

/** What no row and no pattern can be is not put in at all: it stays on the clipboard. */
function isMoreThanAPattern(text: string): boolean {
  if (text.length > limits.fileCharacters) return true
  const lines = text.split(/\r\n|\r|\n/)
  return lines.length > limits.rows || lines.some((line) => line.length > limits.rowCharacters)
}

/** A draft with what was pasted in one of its rows. */
function withPaste(
  draft: Draft,
  index: number,
  selection: { readonly start: number; readonly end: number },
  { rows, castOn, beside }: Pasted,
): Draft {
  const isFirst = textsOf(draft).every((text) => text.trim() === '')
  const isName = draft.title === '' && isFirst && (beside[0]?.length ?? 0) <= 60
  const [name = '', ...others] = isName ? beside : ['', ...beside]
  const notes = [draft.about.notes, ...others].filter(Boolean).join('\n')
  const put = rows.length > 0 ? pasted(draft, index, selection, rows) : draft
  return {
    ...put,
    title: draft.title || name,
    castOn: castOn ? draftCastOn(castOn.castOn) : draft.castOn,
    about: notes === '' ? draft.about : { ...draft.about, notes },
  }
}
