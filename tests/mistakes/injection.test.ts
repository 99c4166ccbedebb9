/**
 * Every mistake at every possible place of every pattern of the library; the diagnosis learns only what a reader could count
 * or see. A seeded share of them as a rule; all of them with OPENWORK_INJECT=all.
 */
import { beforeAll, describe, expect, it } from 'vitest'
import { models } from '../../engine/mistakes/index.ts'
import { evidenceKinds, type Injection, inject, type Score } from './inject.ts'

const all = process.env.OPENWORK_INJECT === 'all'
const share = all ? 1 : 0.08

const percent = (part: number, whole: number): number => (100 * part) / Math.max(1, whole)
const shown = (part: number, whole: number): string => `${percent(part, whole).toFixed(1)} %`

function line(name: string, { asked, first, firstThree, absent, threeAtOnce }: Score): string {
  return `${name.padEnd(18)} ${String(asked).padStart(6)} asked; first ${shown(first, asked)}, first three ${shown(firstThree, asked)} (${shown(threeAtOnce, asked)} before the question), absent ${shown(absent, asked)}`
}

function weakest({ kinds }: Score): string {
  const missed = [...kinds].filter(([, { asked, firstThree }]) => firstThree < asked)
  const worst = missed
    .sort((a, b) => percent(a[1].firstThree, a[1].asked) - percent(b[1].firstThree, b[1].asked))
    .slice(0, 6)
  return worst.map(([kind, { asked, firstThree }]) => `${kind} ${firstThree}/${asked}`).join('; ')
}

describe('mistakes injected', () => {
  let done: Injection
  beforeAll(() => {
    done = inject(share, 20261125)
    const { injected, patterns, kinds, scores, uncounted } = done
    console.log(
      [
        `${injected} mistakes of ${kinds.size} kinds in ${patterns} patterns${all ? '' : ' (a seeded share)'}; ${uncounted} change no count`,
        ...evidenceKinds.flatMap((kind) => [
          line(kind, scores[kind]),
          ...(weakest(scores[kind]) ? [`  weakest: ${weakest(scores[kind])}`] : []),
        ]),
      ].join('\n'),
    )
  }, 600_000)

  it('are many, of every kind, in at least ten patterns', () => {
    expect(done.patterns).toBeGreaterThanOrEqual(10)
    expect(done.injected).toBeGreaterThan(all ? 12_000 : 900)
    expect([...models].map(({ kind }) => kind).filter((kind) => !done.kinds.has(kind))).toEqual([])
    for (const kind of evidenceKinds) expect(done.scores[kind].asked).toBeGreaterThan(all ? 8000 : 500)
  })

  it('are among the first three by the counts of each repeat', () => {
    const { asked, firstThree, absent } = done.scores.counts
    expect(percent(firstThree, asked)).toBeGreaterThanOrEqual(95)
    expect(absent).toBe(0)
  })

  it('are among the first three by the total alone', () => {
    const { asked, firstThree, absent } = done.scores.total
    expect(percent(firstThree, asked)).toBeGreaterThanOrEqual(70)
    expect(absent).toBe(0)
  })

  it('are found by what is seen, also where no count shows them', () => {
    const { asked, firstThree, absent } = done.scores.look
    expect(done.uncounted).toBeGreaterThan(done.injected / 10)
    expect(asked).toBeGreaterThan(done.scores.counts.asked)
    expect(percent(firstThree, asked)).toBeGreaterThanOrEqual(80)
    expect(absent).toBe(0)
  })
})
