import type { Draft } from '../../engine/intake/index.ts'
import type { Answer, FileAsk, Told, WorkAsk } from './answer.ts'

/** The engine at work beside the page. Only the newest draft is ever reckoned; older answers are dropped. */
export interface Reckoner {
  check(draft: Draft, repeats: number | null): void
  /** Null where the engine did not answer in time or the draft has changed meanwhile. */
  ask<K extends WorkAsk['ask']>(
    ask: WorkAsk & { readonly ask: K },
  ): Promise<Extract<Told, { told: K }> | null>
}

interface Waiting {
  readonly ask: WorkAsk
  readonly done: (told: Told | null) => void
}

/** Milliseconds. What takes longer is ended: something in the draft asks for too much. */
const longest = 8000

export interface Listeners {
  readonly onAnswer: (answer: Answer) => void
  readonly onStuck: () => void
}

export function reckonerFor({ onAnswer, onStuck }: Listeners): Reckoner {
  let worker: Worker | null = null
  let running: (Waiting & { readonly id: number }) | null = null
  let newest: Waiting | null = null
  let queue: Waiting[] = []
  let id = 0
  let timer: ReturnType<typeof setTimeout> | undefined

  const finish = (told: Told | null): void => {
    clearTimeout(timer)
    const { done } = running ?? {}
    running = null
    done?.(told)
    next()
  }
  const hire = (): Worker => {
    const hired = new Worker(new URL('./reckon.worker.ts', import.meta.url), { type: 'module' })
    hired.addEventListener('message', ({ data }: MessageEvent<{ id: number; told: Told }>) => {
      if (data.id === running?.id) finish(data.told)
    })
    hired.addEventListener('error', (event) => {
      event.preventDefault()
      giveUp()
    })
    return hired
  }
  const giveUp = (): void => {
    worker?.terminate()
    worker = null
    const wasCheck = running?.ask.ask === 'check'
    // What was asked of the draft that could not be reckoned is asked in vain.
    for (const one of queue) one.done(null)
    queue = []
    if (wasCheck) onStuck()
    finish(null)
  }
  const next = (): void => {
    if (running) return
    const ask = newest ?? queue.shift()
    if (ask === newest) newest = null
    if (!ask) return
    worker ??= hire()
    running = { ...ask, id: ++id }
    worker.postMessage({ id, ask: ask.ask })
    timer = setTimeout(giveUp, longest)
  }
  return {
    check(draft, repeats) {
      for (const one of queue) if (one.ask.ask === 'stitch' || one.ask.ask === 'mends') one.done(null)
      queue = queue.filter(({ ask }) => ask.ask !== 'stitch' && ask.ask !== 'mends')
      const done = (told: Told | null): void => {
        if (told?.told === 'check' && newest === null) onAnswer(told.answer)
      }
      newest = { ask: { ask: 'check', draft, repeats }, done }
      next()
    },
    ask: (ask) =>
      new Promise((resolve) => {
        const done = (told: Told | null): void =>
          resolve(told?.told === ask.ask && newest === null ? (told as never) : null)
        queue.push({ ask, done })
        next()
      }),
  }
}

/** Writes or reads a pattern file, or makes a card; null where that took too long. */
export function askOfFile<K extends FileAsk['ask']>(
  ask: FileAsk & { readonly ask: K },
): Promise<Extract<Told, { told: K }> | null> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./file.worker.ts', import.meta.url), { type: 'module' })
    const end = (told: Told | null): void => {
      clearTimeout(timer)
      worker.terminate()
      resolve(told?.told === ask.ask ? (told as never) : null)
    }
    const timer = setTimeout(() => end(null), 4 * longest)
    worker.addEventListener('message', ({ data }: MessageEvent<{ told: Told }>) => end(data.told))
    worker.addEventListener('error', (event) => {
      event.preventDefault()
      end(null)
    })
    worker.postMessage({ id: 0, ask })
  })
}
