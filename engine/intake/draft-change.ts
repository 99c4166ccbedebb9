import { edited, type TextEdit } from '../notation/index.ts'
import type { CastOn } from '../pattern/index.ts'
import { type Draft, draftCastOn } from './draft.ts'
import type { DraftPlace } from './read-draft.ts'

/** One change to a draft. */
export type DraftChange =
  | { readonly kind: 'text'; readonly place: DraftPlace; readonly edit: TextEdit }
  | { readonly kind: 'castOn'; readonly castOn: CastOn }
  | { readonly kind: 'growing' }

/** The text of a field; null for a place that has none. */
export function textAt(draft: Draft, place: DraftPlace): string | null {
  if (place.part === 'before' || place.part === 'after') return draft.edges[place.part]
  if (place.part !== 'row') return null
  const [list, index] = rowIndex(draft, place.row)
  return draft[list][index] ?? null
}

/** Where a row of that number stands: set-up rows end at 0. */
export function rowIndex(draft: Draft, row: number): readonly ['rows' | 'setUp', number] {
  if (row >= 1) return ['rows', row - 1]
  return ['setUp', row - 1 + draft.setUp.length]
}

/** The draft with other words in one field. */
export function withText(draft: Draft, place: DraftPlace, text: string): Draft {
  if (place.part === 'before' || place.part === 'after')
    return { ...draft, edges: { ...draft.edges, [place.part]: text } }
  if (place.part !== 'row') return draft
  const [list, index] = rowIndex(draft, place.row)
  return { ...draft, [list]: draft[list].map((row, i) => (i === index ? text : row)) }
}

/** The draft with a change made to it. */
export function changed(draft: Draft, change: DraftChange): Draft {
  if (change.kind === 'castOn') return { ...draft, castOn: draftCastOn(change.castOn) }
  if (change.kind === 'growing') return { ...draft, growing: true }
  const text = textAt(draft, change.place)
  return text === null ? draft : withText(draft, change.place, edited(text, change.edit))
}
