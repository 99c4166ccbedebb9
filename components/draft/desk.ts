import { type Draft, emptyDraft, isBlank } from '../../engine/intake/index.ts'
import { again, back, type History, historyOf, record } from './history.ts'
import { nextTitle, type Shelf } from './shelf.ts'

/** The draft on the desk: what it says, what it said before, and where this browser keeps it. */
export interface Desk {
  readonly draft: () => Draft
  readonly id: () => string
  /** A change by hand. `mark` joins typing in one field. */
  change(draft: Draft, mark?: string | null): void
  undo(): void
  redo(): void
  readonly canUndo: () => boolean
  readonly canRedo: () => boolean
  /** Another draft on the desk. `kept` is its place on the shelf; without one it gets a place when it is written in. */
  lay(draft: Draft, kept?: { readonly id: string; readonly stamp: string }): void
  /** Writes at once what waits to be written. */
  keepNow(): void
  /** Whether the shelf has a state of this draft that this tab has not seen. */
  isElsewhere(): boolean
}

export interface DeskEvents {
  /** The draft changed; `fields` where its fields must be filled in anew. */
  readonly onDraft: (fields: 'typed' | 'anew') => void
  readonly onKept: () => void
  /** Another tab wrote the same draft: this one goes on as a second draft. */
  readonly onSecond: (title: string) => void
  readonly onFull: () => void
}

/** Milliseconds after which a change is written. */
const pause = 250

export function deskWith(
  shelf: Shelf,
  newId: () => string,
  now: () => number,
  { onDraft, onKept, onSecond, onFull }: DeskEvents,
): Desk {
  let history: History<Draft> = historyOf(emptyDraft)
  let [id, seen] = [newId(), null as string | null]
  let timer: ReturnType<typeof setTimeout> | null = null
  let dirty = false

  const keep = (): void => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    if (!dirty) return
    dirty = false
    const kept = shelf.keep(id, history.now, seen)
    if (kept.kept) {
      seen = kept.stamp
      onKept()
    } else if (kept.why === 'elsewhere') second()
    else onFull()
  }
  /** Both are kept: the one on the shelf as the other tab wrote it, and this one under a name of its own. */
  const second = (): void => {
    const title = nextTitle(history.now.title)
    ;[id, seen] = [newId(), null]
    history = { ...history, now: { ...history.now, title } }
    dirty = true
    keep()
    onDraft('anew')
    onSecond(title)
  }
  const soon = (): void => {
    dirty = true
    timer ??= setTimeout(keep, pause)
  }
  const go = (next: History<Draft>): void => {
    if (next === history) return
    history = next
    onDraft('anew')
    soon()
  }
  return {
    draft: () => history.now,
    id: () => id,
    change(draft, mark = null) {
      if (draft === history.now) return
      history = record(history, draft, mark, now())
      onDraft(mark === null ? 'anew' : 'typed')
      soon()
    },
    undo: () => go(back(history)),
    redo: () => go(again(history)),
    canUndo: () => history.past.length > 0,
    canRedo: () => history.future.length > 0,
    lay(draft, kept) {
      keep()
      history = historyOf(draft)
      ;[id, seen] = kept ? [kept.id, kept.stamp] : [newId(), null]
      dirty = false
      onDraft('anew')
      if (!kept && !isBlank(draft)) soon()
    },
    keepNow: keep,
    isElsewhere: () => {
      const there = shelf.read(id)
      return there !== null && there.stamp !== seen
    },
  }
}
