import { parseKeptClass } from '../../engine/intake/index.ts'
import type { ClassPlan } from '../../engine/lesson/index.ts'

const prefix = 'openwork:class:'
const here = 'openwork:class-here'

export interface ListedClass {
  readonly id: string
  readonly title: string
  readonly saved: number
}

/** The classes that a teacher keeps in her browser. */
export interface ClassShelf {
  /** The one that was saved last comes first. */
  list(): ListedClass[]
  read(id: string): ClassPlan | null
  /** Whether the browser kept it. */
  keep(id: string, plan: ClassPlan): boolean
  takeAway(id: string): void
  /** The class that was open last. */
  last(): string | null
  open(id: string): void
  idOf(key: string | null): string | null
}

export const classTitle = ({ title }: Pick<ClassPlan, 'title'>): string =>
  title.trim() || 'A class without a name'

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

/** A browser that keeps nothing gives nothing and says that it kept nothing; it never breaks the page. */
export function classShelfOn(store: Store | null, now: () => number): ClassShelf {
  const get = (key: string): string | null => tried(() => store?.getItem(key) ?? null, null)
  const set = (key: string, text: string): boolean =>
    tried(() => {
      store?.setItem(key, text)
      return store !== null
    }, false)
  const idOf = (key: string | null): string | null =>
    key?.startsWith(prefix) ? key.slice(prefix.length) : null
  const ids = (): string[] =>
    tried(() => Array.from({ length: store?.length ?? 0 }, (_, i) => idOf(store?.key(i) ?? null)), []).filter(
      (id) => id !== null,
    )
  return {
    list: () =>
      ids()
        .flatMap((id) => {
          const kept = parseKeptClass(get(prefix + id))
          return kept ? [{ id, title: classTitle(kept.plan), saved: kept.saved }] : []
        })
        .sort((a, b) => b.saved - a.saved),
    read: (id) => parseKeptClass(get(prefix + id))?.plan ?? null,
    keep: (id, plan) => set(prefix + id, JSON.stringify({ saved: now(), plan })),
    takeAway: (id) => tried(() => store?.removeItem(prefix + id), undefined),
    last: () => get(here),
    open: (id) => void set(here, id),
    idOf,
  }
}

function tried<T>(attempt: () => T, otherwise: T): T {
  try {
    return attempt()
  } catch {
    return otherwise
  }
}
