import type { Draft } from '../../engine/intake/index.ts'

// Rows go by their index here: set-up rows first, then row 1 and on.

/** Every row's text, set-up rows first. */
export const textsOf = ({ setUp, rows }: Draft): readonly string[] => [...setUp, ...rows]

/** The number of a row: set-up rows end at 0. */
export const numberOf = ({ setUp }: Draft, index: number): number => index + 1 - setUp.length

/** The draft with some rows replaced by others: `count` rows from `index` on give way. */
export function splice(draft: Draft, index: number, count: number, fresh: readonly string[]): Draft {
  const before = draft.setUp.length
  const inSetUp = index < before
  const put = (list: readonly string[], from: number): string[] => [
    ...list.slice(0, from),
    ...fresh,
    ...list.slice(from + count),
  ]
  if (inSetUp) return { ...draft, setUp: put(draft.setUp, index) }
  const rows = put(draft.rows, index - before)
  return { ...draft, rows: rows.length > 0 ? rows : [''] }
}

export const withRow = (draft: Draft, index: number, text: string): Draft => splice(draft, index, 1, [text])

/** A row cut in two where the caret stands. */
export function cut(draft: Draft, index: number, caret: number): Draft {
  const text = textsOf(draft)[index] ?? ''
  return splice(draft, index, 1, [text.slice(0, caret).trimEnd(), text.slice(caret).trimStart()])
}

/** A row joined to the one before it; null where there is none of its kind. Also where the two met. */
export function joined(draft: Draft, index: number): { draft: Draft; caret: number } | null {
  const texts = textsOf(draft)
  const [before, here] = [texts[index - 1], texts[index]]
  if (before === undefined || here === undefined || index === draft.setUp.length) return null
  const glue = before !== '' && here !== '' ? ' ' : ''
  return { draft: splice(draft, index - 1, 2, [before + glue + here]), caret: before.length }
}

/** Rows put where a stretch of one row's text was selected. */
export function pasted(
  draft: Draft,
  index: number,
  selection: { readonly start: number; readonly end: number },
  rows: readonly string[],
): Draft {
  const text = textsOf(draft)[index] ?? ''
  const fresh = [...rows]
  fresh[0] = text.slice(0, selection.start) + (fresh[0] ?? '')
  const last = fresh.length - 1
  fresh[last] = (fresh[last] ?? '') + text.slice(selection.end)
  return splice(draft, index, 1, fresh)
}

/** Where two lists of texts differ: what stands before and behind is the same in both. */
export function difference(
  old: readonly string[],
  fresh: readonly string[],
): { readonly start: number; readonly taken: number; readonly put: number } {
  const least = Math.min(old.length, fresh.length)
  let start = 0
  while (start < least && old[start] === fresh[start]) start++
  let same = 0
  while (same < least - start && old[old.length - 1 - same] === fresh[fresh.length - 1 - same]) same++
  return { start, taken: old.length - start - same, put: fresh.length - start - same }
}
