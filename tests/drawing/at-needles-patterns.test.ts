import { describe, expect, it } from 'vitest'
import {
  atNeedles,
  type Frame,
  type Frames,
  frameDrawing,
  restAt,
} from '../../engine/drawing/at-needles/index.ts'
import { type Drawing, type GroupNode, nodesOf, toSvg } from '../../engine/drawing/index.ts'
import { needlesAfter, type WorkedPattern } from '../../engine/needles/index.ts'
import { patternWorked, rowsOver, worksOf } from './at-needles-support.ts'

const patterns: readonly (readonly [string, number])[] = [
  ['reed-bed', 2],
  ['horseshoe', 2],
  ['fan', 2],
  ['portholes', 2],
  ['shetland-bead', 2],
  ['jib-shawl', 1],
  ['slipway-edging', 1],
  ['harbour-swell', 2],
  ['miniature-leaf', 2],
  ['little-fountain', 2],
  ['old-shale', 1],
  ['sea-thrift', 2],
  ['rose-leaf-lambert', 1],
]

const sides = ['left', 'right'] as const
type Needle = (typeof sides)[number]

function framesOf(worked: WorkedPattern, rowIndex: number, stepIndex: number): Frames {
  const frames = atNeedles({ worked, rowIndex, stepIndex })
  if (frames === null) throw new Error(`no frames for step ${stepIndex} of row ${rowIndex}`)
  return frames
}

/** The frames before a step and after it, by themselves. */
function restsOf(worked: WorkedPattern, rowIndex: number, stepIndex: number): readonly [Frames, Frames] {
  const rests = (['before', 'after'] as const).map((when) => restAt({ worked, rowIndex, stepIndex }, when))
  const [before, after] = rests
  if (!before || !after) throw new Error(`no frames for step ${stepIndex} of row ${rowIndex}`)
  return [before, after]
}

/** Loops that are only counted. */
function moreOn({ marks }: Frame, needle: Needle): number {
  const more = marks.find(({ key }) => key === `more-${needle}`)
  return more?.kind === 'more' ? Number(/^\+ (\d+)$/.exec(more.text)?.[1]) : 0
}

/** The loops whose front half hangs on a needle of the drawing, by their numbers. */
const hangingOn = (drawing: Drawing, needle: Needle): number[] =>
  [...nodesOf(drawing.nodes)]
    .filter((node): node is GroupNode => node.kind === 'group' && node.data?.needle === needle)
    .map(({ key }) => Number(/^loop-(\d+)-/.exec(key ?? '')?.[1]))

describe.each(patterns)('%s over %i repeats', (slug, repeats) => {
  const worked = patternWorked(slug, repeats)
  const steps = worked.rows.flatMap((row, rowIndex) =>
    row.steps.map((step, stepIndex) => ({ step, rowIndex, stepIndex })),
  )

  it('draws or counts as many loops on each needle as the steps tell', () => {
    expect(steps.length).toBeGreaterThan(20)
    const wrong: string[] = []
    for (const { step, rowIndex, stepIndex } of steps) {
      const [first, last] = restsOf(worked, rowIndex, stepIndex).map(({ frames }) => frames[0])
      if (first === undefined || last === undefined) throw new Error('no frame')
      const before = needlesAfter(worked, rowIndex, stepIndex)
      const after = needlesAfter(worked, rowIndex, stepIndex + 1)
      for (const needle of sides) {
        const told = (frame: Frame): string =>
          frame.marks
            .flatMap((mark) => (mark.key === `count-${needle}` && 'text' in mark ? [mark.text] : []))
            .join()
        const counted = (frame: Frame): number => frame.on[needle].length + moreOn(frame, needle)
        if (counted(first) !== before[needle].length) wrong.push(`${rowIndex}/${stepIndex} before, ${needle}`)
        if (counted(last) !== step[needle]) wrong.push(`${rowIndex}/${stepIndex} after, ${needle}`)
        if (told(first) !== `${before[needle].length} on the ${needle}`) wrong.push(told(first))
        if (told(last) !== `${step[needle]} on the ${needle}`) wrong.push(told(last))
        // Those drawn are the ones nearest the tip, in their order.
        const ends = [
          [first, before],
          [last, after],
        ] as const
        for (const [frame, state] of ends) {
          const order = needle === 'left' ? state.left : state.right.toReversed()
          if (frame.on[needle].join() !== order.slice(0, frame.on[needle].length).join())
            wrong.push(`${rowIndex}/${stepIndex} order ${needle}`)
          if (frame.on[needle].length < Math.min(4, order.length))
            wrong.push(`${rowIndex}/${stepIndex} few ${needle}`)
        }
      }
    }
    expect(wrong).toEqual([])
  })

  it('has every loop that it counts as drawn in the drawing, and says the same in words', () => {
    for (const { step, rowIndex, stepIndex } of steps.filter((_, i) => i % 5 === 0)) {
      const [, frames] = restsOf(worked, rowIndex, stepIndex)
      const [last] = frames.frames
      if (last === undefined) throw new Error('no frame')
      const drawing = frameDrawing(frames, last)
      for (const needle of sides) {
        expect(hangingOn(drawing, needle).toSorted((a, b) => a - b)).toEqual(
          [...last.on[needle]].sort((a, b) => a - b),
        )
        const said = new RegExp(`${needle === 'left' ? 'Left' : 'Right'} needle: (\\d+) loops?[,.]`).exec(
          drawing.description,
        )?.[1]
        expect(Number(said)).toBe(step[needle])
      }
      expect(drawing.description).toContain(
        worked.rows[rowIndex]?.side === 'RS' ? 'right side' : 'wrong side',
      )
    }
  })
})

describe('marks', () => {
  it('number the loops that the step takes, from the tip on, and ring them while all rests', () => {
    const worked = patternWorked('horseshoe', 2)
    const at = worked.rows[0]?.steps.findIndex(({ stitch }) => stitch === 'sk2p') ?? -1
    const { frames } = framesOf(worked, 0, at)
    const taken = worked.rows[0]?.steps[at]?.taken ?? []
    const texts = (frame: Frame | undefined, kind: string): string[] =>
      frame?.marks.flatMap((mark) =>
        mark.kind === kind ? ['text' in mark ? `${mark.key} ${mark.text}` : mark.key] : [],
      ) ?? []
    expect(taken).toHaveLength(3)
    expect(texts(frames[0], 'ring')).toEqual(taken.map((id) => `ring-${id}`))
    expect(texts(frames[0], 'badge')).toEqual(taken.map((id, i) => `badge-${id} ${i + 1}`))
    expect(texts(frames[1], 'ring')).toEqual([])
    expect(texts(frames[1], 'badge')).toHaveLength(3)
    const made = worked.rows[0]?.steps[at]?.made ?? []
    expect(texts(frames.at(-1), 'new')).toEqual(made.map((id) => `new-${id} new`))
  })

  it('say how many are new where there is room for the words', () => {
    const { frames } = framesOf(rowsOver(9, [[worksOf('k', 4), worksOf('nupp9'), worksOf('k', 4)]]), 0, 4)
    const words = frames.at(-1)?.marks.flatMap((mark) => (mark.kind === 'new' && mark.text ? [mark] : []))
    expect(words?.map(({ text }) => text)).toEqual(['9 new'])
    // The picture ends 6.85 stitch widths from its middle.
    expect(words?.[0]?.at[0]).toBeLessThan(5.4)
  })

  it('hang markers between the loops that they hang between', () => {
    const worked = rowsOver(8, [
      [worksOf('k', 2), { kind: 'marker', action: 'place', span: { start: 0, end: 0 } }, worksOf('k', 6)],
    ])
    const marker = (step: number): number | undefined =>
      framesOf(worked, 0, step)
        .frames.at(-1)
        ?.marks.find(({ kind }) => kind === 'marker')?.at[0]
    const xs = (step: number): number[] =>
      framesOf(worked, 0, step)
        .frames.at(-1)
        ?.marks.flatMap(({ kind, at }) => (kind === 'new' ? [at[0]] : [])) ?? []
    expect(marker(0)).toBeUndefined()
    // After the third stitch it hangs just beyond it, after the fourth one stitch farther.
    expect(marker(2)).toBeCloseTo((xs(2)[0] ?? 0) + 0.5, 1)
    expect(marker(3)).toBeCloseTo((xs(3)[0] ?? 0) + 1.5, 1)
  })

  it('point out any loop that is asked for, on a needle or in the fabric below', () => {
    const worked = patternWorked('horseshoe', 2)
    const rowIndex = 2
    const at = worked.rows[rowIndex]?.steps.findIndex(({ stitch }) => stitch === 'yo') ?? -1
    const hole = worked.loops.find(({ row, stitch }) => row === 0 && stitch === 'yo')?.id ?? -1
    const labels = [{ loop: hole, label: 'the hole of row 1' }]
    const frames = atNeedles({ worked, rowIndex, stepIndex: at, labels })
    const label = frames?.frames.at(-1)?.marks.find(({ kind }) => kind === 'label')
    expect(label?.key).toBe(`label-${hole}`)
    expect(label?.at[1]).toBeLessThan(-1)
    expect(frames && toSvg(frameDrawing(frames, frames.frames[0] as Frame))).toContain('the hole of row 1')
    const plain = atNeedles({ worked, rowIndex, stepIndex: at })
    expect(plain?.frames.at(-1)?.marks.some(({ kind }) => kind === 'label')).toBe(false)
  })

  it('tell a yarn over beside a slipped stitch from it', () => {
    const worked = patternWorked('horseshoe', 2)
    const row = worked.rows[6]
    const at =
      row?.steps.findIndex(({ stitch }, i) => stitch === 'sk2p' && row.steps[i - 1]?.stitch === 'yo') ?? -1
    expect(at).toBeGreaterThan(0)
    const { frames } = framesOf(worked, 6, at)
    expect(frames[0]?.marks.some((mark) => mark.kind === 'label' && mark.text.startsWith('yarn over'))).toBe(
      true,
    )
  })
})

describe('the working yarn', () => {
  const sideIn = (worked: WorkedPattern, step: number): string[] =>
    framesOf(worked, 0, step).frames.map(({ shown }, i) => {
      const { pieces } = framesOf(worked, 0, step)
      const piece = pieces.find(({ key }, k) => / hand /.test(key) && shown[k])
      return piece === undefined ? `none in ${i}` : piece.layer > 9 ? 'front' : 'behind'
    })

  it('goes where each of the four neighbours of a yarn over wants it', () => {
    const [knit, purl] = [worksOf('k', 3), worksOf('p', 3)]
    const between = (before: typeof knit, after: typeof knit) => rowsOver(6, [[before, worksOf('yo'), after]])
    expect(sideIn(between(knit, knit), 3)).toEqual(['behind', 'front', 'behind'])
    expect(sideIn(between(purl, purl), 3)).toEqual(['front', 'behind', 'front'])
    expect(sideIn(between(knit, purl), 3)).toEqual(['behind', 'front', 'behind', 'front'])
    expect(sideIn(between(purl, knit), 3)).toEqual(['front', 'behind'])
  })
})

it('a picture at rest is light: whole rows of lace in few elements', () => {
  const worked = patternWorked('horseshoe', 6)
  for (const stepIndex of [0, 15, 30, 60]) {
    const [frames] = restsOf(worked, 6, stepIndex)
    const svg = toSvg(frameDrawing(frames, frames.frames[0] as Frame))
    expect(svg.match(/<\w/g)?.length).toBeLessThan(150)
    expect(svg.length).toBeLessThan(22_000)
    expect(svg.length).toBeGreaterThan(5_000)
  }
})

it('no such step has no frames', () => {
  const worked = patternWorked('reed-bed', 1)
  expect(atNeedles({ worked, rowIndex: 0, stepIndex: 99 })).toBeNull()
  expect(atNeedles({ worked, rowIndex: -1, stepIndex: 0 })).toBeNull()
})
