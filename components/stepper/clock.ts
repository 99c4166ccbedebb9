import type { Actor } from './ways.ts'

/** Plays something through its whole length, once for each frame of the screen. Gives what stops it on its way. */
export function playFor(milliseconds: number, actor: Actor, after: () => void): () => void {
  const began = performance.now()
  const goOn = (now: number): void => {
    const part = Math.min(1, Math.max(0, (now - began) / milliseconds))
    actor(part)
    if (part < 1) frame = requestAnimationFrame(goOn)
    else after()
  }
  actor(0)
  let frame = requestAnimationFrame(goOn)
  return () => cancelAnimationFrame(frame)
}
