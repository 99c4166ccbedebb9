import { type Draft, type KeptDraft, parseKeptDraft } from '../../engine/intake/index.ts'

const prefix = 'openwork:draft:'

/** The part of a browser's storage that drafts need. */
export type Storage_ = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

export interface Listed {
  readonly id: string
  readonly title: string
  readonly saved: number
}

export type Kept =
  | { readonly kept: true; readonly stamp: string }
  /** 'elsewhere': it was written since it was last seen, by another tab. 'full': the browser keeps no more. */
  | { readonly kept: false; readonly why: 'elsewhere' | 'full' }

/** Drafts on this machine. Nothing is written over that was not seen before. */
export interface Shelf {
  list(): Listed[]
  read(id: string): KeptDraft | null
  keep(id: string, draft: Draft, seen: string | null): Kept
  takeAway(id: string): void
  /** The id of a draft whose place in the storage that is; null for any other. */
  idOf(key: string | null): string | null
}

export const titleOf = ({ title, rows }: Draft): string =>
  title.trim() || rows.find((row) => row.trim() !== '')?.slice(0, 40) || 'Without a name'

export function shelfOn(storage: Storage_, now: () => number, newStamp: () => string): Shelf {
  const read = (id: string): KeptDraft | null => {
    try {
      return parseKeptDraft(storage.getItem(prefix + id))
    } catch {
      return null
    }
  }
  return {
    read,
    list: () =>
      keysOf(storage)
        .flatMap((key) => {
          const id = key.slice(prefix.length)
          const kept = key.startsWith(prefix) ? read(id) : null
          return kept ? [{ id, title: titleOf(kept.draft), saved: kept.saved }] : []
        })
        .sort((a, b) => b.saved - a.saved),
    keep(id, draft, seen) {
      const stamp = newStamp()
      try {
        const there = storage.getItem(prefix + id)
        // What cannot be read was not seen either.
        if (there !== null && parseKeptDraft(there)?.stamp !== seen) return { kept: false, why: 'elsewhere' }
        storage.setItem(prefix + id, JSON.stringify({ saved: now(), stamp, draft }))
        return { kept: true, stamp }
      } catch {
        return { kept: false, why: 'full' }
      }
    },
    takeAway(id) {
      try {
        storage.removeItem(prefix + id)
      } catch {
        // A browser that keeps nothing has nothing to take away.
      }
    },
    idOf: (key) => (key?.startsWith(prefix) ? key.slice(prefix.length) : null),
  }
}

function keysOf(storage: Storage_): string[] {
  try {
    return Array.from({ length: storage.length }, (_, i) => storage.key(i) ?? '')
  } catch {
    return []
  }
}

/** 'Reed Bed' becomes 'Reed Bed (2)', which becomes 'Reed Bed (3)'. */
export function nextTitle(title: string): string {
  const found = /^(.*) \((\d{1,3})\)$/.exec(title)
  return found ? `${found[1]} (${Number(found[2]) + 1})` : `${title.trim() || 'Without a name'} (2)`
}
