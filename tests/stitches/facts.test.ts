/**
 * What the motions do, against what published sources say of each stitch (tests/reference/stitches.json, with
 * the address and the confidence of every entry). The catalogue declares none of this: it follows from the
 * hands.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { findStitch, perform, rightSideLook, stitch, twinsOf } from '../../engine/stitches/index.ts'
import { turnedStack } from './support.ts'

interface Differs {
  readonly catalogue: string
  readonly why: string
}

interface Fact {
  readonly id: string
  readonly between?: readonly [string, string]
  readonly workedOn?: 'WS'
  readonly takes: number
  readonly makes: number
  readonly lean?: 'left' | 'right' | 'centre' | null
  readonly frontToBack: readonly (number | 'strand')[] | null
  readonly wrongSide?: string
  readonly wrongSideLikeness?: string
  readonly wrongSideDiffers?: Differs
  readonly mirror?: string | null
  readonly mirrorLikeness?: string
  readonly mirrorDiffers?: Differs
  readonly source: readonly string[]
  readonly confidence: string
}

const file = new URL('../reference/stitches.json', import.meta.url)
const { stitches } = JSON.parse(readFileSync(file, 'utf8')) as { stitches: readonly Fact[] }

const named = stitches.map((fact) => ({
  ...fact,
  title: `${fact.id}${fact.between ? ` from ${fact.between.join(' to ')}` : ''} (${fact.confidence}; ${fact.source[0]})`,
  // The look on the right side, for what is told of the wrong side too.
  seen: fact.workedOn === 'WS' ? rightSideLook(fact.id, 'WS') : fact.id,
}))

describe('takes and makes', () => {
  it.each(named)('$title: $takes and $makes', ({ id, takes, makes }) => {
    expect([stitch(id).takes, stitch(id).makes]).toEqual([takes, makes])
  })
})

describe('leans on the right side', () => {
  it.each(named.filter(({ lean }) => lean !== undefined))('$title: $lean', ({ seen, lean }) => {
    expect(stitch(seen).lean).toBe(lean)
  })
})

describe('loops front to back on the right side', () => {
  const ofLoops = named.filter(({ frontToBack }) => frontToBack !== null && !frontToBack.includes('strand'))
  it.each(ofLoops)('$title: $frontToBack', ({ id, workedOn, frontToBack }) => {
    const { effect, frontToBack: asWorked } = stitch(id)
    expect(workedOn === 'WS' ? turnedStack(effect) : asWorked).toEqual(frontToBack)
  })

  const ofStrands = named.filter(({ frontToBack }) => frontToBack?.includes('strand'))
  it.each(ofStrands)('$title: drawn through no loop', ({ id, frontToBack }) => {
    expect(stitch(id).effect.made.map(({ through }) => through)).toEqual(frontToBack?.map(() => []))
  })
})

describe('wrong-side twins', () => {
  it.each(named.filter(({ wrongSide }) => wrongSide))('$title: $wrongSide', (fact) => {
    expect(twinsOf(fact.id).wrongSide).toEqual({
      stitch: fact.wrongSideDiffers?.catalogue ?? fact.wrongSide,
      likeness: fact.wrongSideLikeness ?? 'exact',
    })
  })
})

describe('mirrors', () => {
  it.each(named.filter(({ mirror }) => mirror))('$title: $mirror', (fact) => {
    expect(twinsOf(fact.id).mirror).toEqual({
      stitch: fact.mirrorDiffers?.catalogue ?? fact.mirror,
      likeness: fact.mirrorLikeness ?? 'exact',
    })
  })

  it.each(named.filter(({ mirror }) => mirror === null))('$title: none that is exact', ({ id }) => {
    expect(twinsOf(id).mirror?.likeness).not.toBe('exact')
  })
})

describe('the facts file', () => {
  it('speaks of stitches that the catalogue has, each with a source', () => {
    expect(stitches.length).toBeGreaterThan(30)
    for (const { id, source } of stitches) expect([findStitch(id)?.id, source.length > 0]).toEqual([id, true])
  })
})

describe('where the facts and the hands differ', () => {
  const slip = { do: 'slip', loops: 1, as: 'purlwise', together: false } as const
  const back = { do: 'return', loops: 1 } as const
  const over = { do: 'pass', loops: 1, over: 1, from: 'left' } as const

  it('k2tog, return, pass the next over stacks the loops as k3tog does, so it is no mirror of sk2p', () => {
    const asTold = perform([...stitch('k2tog').motions, back, over, slip])
    expect(asTold.made[0]?.through).toEqual(stitch('k3tog').frontToBack)
    expect(stitch('sk2p').frontToBack.map((n) => 4 - n)).toEqual(stitch('ssksp').frontToBack)
  })

  it('p2tog, return, pass the next over as it sits twists that one; turned first it lies open, as in sk2p', () => {
    const asTold = perform([...stitch('p2tog').motions, back, over, slip])
    expect(asTold.made[0]?.twisted).toEqual([true, false, false])
    const [open] = stitch('p2sp').effect.made
    expect(open?.twisted).toEqual([false, false, false])
    expect(open?.through.map((n) => 4 - n)).toEqual(stitch('sk2p').frontToBack)
  })

  it('the wrong-side centred decrease has the middle loop on top, and the outer two the other way round', () => {
    expect(stitch('s2kp').frontToBack).toEqual([2, 1, 3])
    expect(turnedStack(stitch('s2pp').effect)).toEqual([2, 3, 1])
  })
})
