import { type Casebook, preparing } from '../../engine/mistakes/index.ts'

/** What stops a piece of work that is done bit by bit. */
export type Stop = () => void

/** Milliseconds that one slice may take where the browser does not say how long it is idle. */
const slice = 12

/** Makes a pattern ready for its first answer while the reader is busy with the form. The rows near hers come first. */
export function makeReady(book: Casebook, nearest: number): Stop {
  const work = preparing(book, nearest)
  let stopped = false
  const goOn = (left: () => number): void => {
    if (stopped) return
    do {
      if (work.next().done) return
    } while (left() > 0)
    whenIdle(goOn)
  }
  whenIdle(goOn)
  return () => {
    stopped = true
  }
}

/** Calls back when nothing else is to be done, with what tells the milliseconds that are left. Safari has no idle times. */
function whenIdle(then: (left: () => number) => void): void {
  if ('requestIdleCallback' in window) {
    requestIdleCallback((deadline) => then(() => deadline.timeRemaining()))
    return
  }
  setTimeout(() => {
    const until = performance.now() + slice
    then(() => until - performance.now())
  }, slice)
}
