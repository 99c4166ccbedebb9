import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Answer } from '../../components/draft/answer.ts'
import { reckonerFor } from '../../components/draft/reckoner.ts'
import { type Draft, emptyDraft } from '../../engine/intake/index.ts'

/** Workers that answer when a test lets them. */
class FakeWorker {
  static all: FakeWorker[] = []
  readonly asked: { id: number; ask: { ask: string; draft?: Draft } }[] = []
  ended = false
  private readonly listeners = new Map<string, (event: unknown) => void>()
  constructor() {
    FakeWorker.all.push(this)
  }
  addEventListener(kind: string, listener: (event: unknown) => void): void {
    this.listeners.set(kind, listener)
  }
  postMessage(message: { id: number; ask: { ask: string } }): void {
    this.asked.push(message)
  }
  terminate(): void {
    this.ended = true
  }
  answer(told: object, id = this.asked.at(-1)?.id): void {
    this.listeners.get('message')?.({ data: { id, told } })
  }
  fail(): void {
    this.listeners.get('error')?.({ preventDefault: () => {} })
  }
}

const draft = (row: string): Draft => ({ ...emptyDraft, rows: [row] })
const answerFor = (row: string) => ({ told: 'check', answer: { rows: [{ name: row }] } as unknown as Answer })

function reckoner() {
  const heard: string[] = []
  const made = reckonerFor({
    onAnswer: ({ rows }) => heard.push(rows[0]?.name ?? ''),
    onStuck: () => heard.push('stuck'),
  })
  return { ...made, heard }
}

beforeEach(() => {
  FakeWorker.all = []
  vi.stubGlobal('Worker', FakeWorker)
  vi.useFakeTimers()
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

const worker = (): FakeWorker => FakeWorker.all.at(-1) as FakeWorker

describe('rows are worked out beside the page', () => {
  it('only the newest draft is, and an answer to an older one is dropped', () => {
    const { check, heard } = reckoner()
    check(draft('k1'), null)
    check(draft('k2'), null)
    check(draft('k3'), null)
    worker().answer(answerFor('k1'))
    expect(heard).toEqual([])
    expect(worker().asked.map(({ ask }) => ask.draft?.rows[0])).toEqual(['k1', 'k3'])
    worker().answer(answerFor('k3'))
    expect(heard).toEqual(['k3'])
  })

  it('what was asked of a draft that has changed since is answered with nothing', async () => {
    const { check, ask } = reckoner()
    check(draft('k1'), null)
    const mends = ask({ ask: 'mends' })
    check(draft('k2'), null)
    await expect(mends).resolves.toBe(null)
  })

  it('a draft that takes too long is given up and said so, and the next one is worked out', () => {
    const { check, heard } = reckoner()
    check(draft('k1'), null)
    const first = worker()
    vi.advanceTimersByTime(20_000)
    expect(first.ended).toBe(true)
    expect(heard).toEqual(['stuck'])
    check(draft('k2'), null)
    expect(worker()).not.toBe(first)
    worker().answer(answerFor('k2'))
    expect(heard).toEqual(['stuck', 'k2'])
    vi.advanceTimersByTime(60_000)
    expect(worker().ended).toBe(false)
  })

  it('a worker that breaks is replaced', async () => {
    const { check, ask, heard } = reckoner()
    check(draft('k1'), null)
    worker().answer(answerFor('k1'))
    const view = ask({ ask: 'stitch', index: 0, step: 0 })
    worker().fail()
    await expect(view).resolves.toBe(null)
    check(draft('k2'), null)
    expect(FakeWorker.all).toHaveLength(2)
    worker().answer(answerFor('k2'))
    expect(heard).toEqual(['k1', 'k2'])
  })
})
