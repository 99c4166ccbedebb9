/** A pattern made over step by step as the page does it, and saved as a file. */
import { describe, expect, it } from 'vitest'
import { filed } from '../../components/adapt/filed.ts'
import { run } from '../../components/adapt/run.ts'
import { stepWords } from '../../components/adapt/words.ts'
import { adapt, adaptationNames, readRequests } from '../../engine/adapt/index.ts'
import { checkPattern, draftOf, parseAdaptHash, readMakeOver, writeDraft } from '../../engine/intake/index.ts'
import { library, libraryPattern } from '../fabric/support.ts'
import { printed } from './support.ts'

const lists = [
  ...adaptationNames,
  'round, mirror, border 3',
  'mirror, plainer',
  'garter edge 2, wider, border',
]

describe.each(library)('%s', (file) => {
  const was = libraryPattern(file)

  it('comes to the same step by step as all at once, and its file reads back proved', () => {
    let saved = 0
    for (const list of lists) {
      const { done, outcomes } = run(was, list.split(',').map(readMakeOver), new Map())
      const requests = readRequests(list)
      const whole = 'unknown' in requests ? null : adapt(was, requests)
      expect(outcomes.every(({ came }) => came === 'done')).toBe(whole?.ok)
      if (!whole?.ok) continue
      expect(printed(done.pattern)).toEqual(printed(whole.pattern))
      const words = list.split(',').map((one) => stepWords(readMakeOver(one), (slug) => slug))
      const text = writeDraft(draftOf(filed(done, was, words)))
      const { pattern, issues, sound } = checkPattern({ name: file, text })
      expect(issues, `${list}\n${text}`).toEqual([])
      expect([sound, pattern?.castOn, pattern?.draft]).toEqual([true, done.pattern.castOn, false])
      expect(pattern && printed(pattern)).toEqual(printed(done.pattern))
      expect(pattern?.about.corrections).toEqual([])
      saved++
    }
    expect(saved).toBeGreaterThan(1)
  })
})

describe('steps that cannot all be done', () => {
  const was = libraryPattern('reed-bed.yaml')
  const came = (hash: string): string[] => {
    const { outcomes } = run(was, parseAdaptHash(hash).steps, new Map())
    return outcomes.map((outcome) => outcome.came)
  }

  it('are done as far as the first that cannot, and the rest wait', () => {
    expect(came('#round,round,mirror')).toEqual(['done', 'refused', 'waits'])
    expect(came('#mirror,roud,round')).toEqual(['done', 'unknown', 'waits'])
    expect(came('#beside-vine,mirror')).toEqual(['missing', 'waits'])
  })

  it('leave the pattern as the last step that was done made it', () => {
    const { done } = run(was, parseAdaptHash('#round,wider').steps, new Map())
    expect(done.pattern.worked).toBe('round')
  })
})

describe('another pattern', () => {
  it('goes to the left, above or below', () => {
    const [was, other] = [libraryPattern('mini-horseshoe.yaml'), libraryPattern('arrowhead.yaml')]
    const made = (hash: string) =>
      run(was, parseAdaptHash(hash).steps, new Map([['arrowhead', other]])).done.pattern
    expect(made('#beside-arrowhead').castOn).toEqual({ multiple: 18, plus: 0 })
    const [over, under] = [printed(made('#above-arrowhead')), printed(made('#below-arrowhead'))]
    expect(over).toHaveLength(was.rows.length + other.rows.length)
    expect(over.slice(0, was.rows.length)).toEqual(printed(was))
    expect(under.slice(other.rows.length)).toEqual(printed(was))
  })
})
