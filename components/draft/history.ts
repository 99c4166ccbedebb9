/** What was, what is, and what was taken back. */
export interface History<T> {
  readonly past: readonly T[]
  readonly now: T
  readonly future: readonly T[]
  /** What the last change was made in, so that typing on in it counts as one change. */
  readonly mark: string | null
  readonly time: number
}

/** Changes that can be taken back. */
const most = 500
/** Milliseconds. Typing on in one field after a longer rest is a change of its own. */
const rest = 1200

export const historyOf = <T>(now: T): History<T> => ({ past: [], now, future: [], mark: null, time: 0 })

/** With a change recorded. A mark joins it to changes just made under the same mark. */
export function record<T>(history: History<T>, next: T, mark: string | null, time: number): History<T> {
  const joins = mark !== null && mark === history.mark && time - history.time < rest
  const past = joins ? history.past : [...history.past, history.now].slice(-most)
  return { past, now: next, future: [], mark, time }
}

/** One change back; the same history where there is none. */
export function back<T>(history: History<T>): History<T> {
  const now = history.past.at(-1)
  if (now === undefined) return history
  return {
    past: history.past.slice(0, -1),
    now,
    future: [history.now, ...history.future],
    mark: null,
    time: 0,
  }
}

/** One change that was taken back, made again. */
export function again<T>(history: History<T>): History<T> {
  const [now, ...future] = history.future
  if (now === undefined) return history
  return { past: [...history.past, history.now], now, future, mark: null, time: 0 }
}
