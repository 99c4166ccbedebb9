/** Milliseconds of work at a time, so that a key pressed meanwhile is answered at once. */
const slice = 6

/** Does a list of small things, a few at a time; a newer list takes the place of one that is not done. */
export function inSlices(): (things: readonly (() => void)[]) => void {
  let list: readonly (() => void)[] = []
  let at = 0
  let waiting = false
  const go = (): void => {
    waiting = false
    const end = performance.now() + slice
    while (at < list.length && performance.now() < end) list[at++]?.()
    if (at < list.length) later()
  }
  const later = (): void => {
    if (waiting) return
    waiting = true
    requestAnimationFrame(() => setTimeout(go))
  }
  return (things) => {
    ;[list, at] = [things, 0]
    go()
  }
}
