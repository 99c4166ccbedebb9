/** Pictures of fabric: what they weigh, that both kinds show the same yarn, marks that do not rest on colour, their words. */
import { describe, expect, it } from 'vitest'
import { curvesData } from '../../engine/drawing/curves-data.ts'
import {
  type CurvesNode,
  type Drawing,
  fabricDrawing,
  marksOf,
  type Node,
  nodesOf,
  toSvg,
} from '../../engine/drawing/index.ts'
import { fabricOf, layOutFabric, type Yarn, yarnOf } from '../../engine/fabric/index.ts'
import type { WorkedPattern } from '../../engine/needles/index.ts'
import { patternFiles, workedFile, workedRows } from '../fabric/yarn-support.ts'

const yarnFor = (worked: WorkedPattern): Yarn => {
  const fabric = fabricOf(worked)
  return yarnOf(fabric, layOutFabric(fabric, { state: 'free' }))
}
const horseshoe = workedFile('horseshoe.yaml', 2)
const yarn = yarnFor(horseshoe)
const marks = marksOf(horseshoe, yarn.fabric)
const curvesIn = (drawing: Drawing): CurvesNode[] =>
  [...nodesOf(drawing.nodes)].filter((node) => node.kind === 'curves')
const keysIn = (drawing: Drawing): string[] => [...nodesOf(drawing.nodes)].flatMap(({ key }) => key ?? [])

describe('a picture of fabric', () => {
  it.each(
    patternFiles
      .map((file) => [file, yarnFor(workedFile(file, 2))] as const)
      .filter(([, { fabric }]) => fabric.loops.length >= 150),
  )('%s takes at most 135 bytes a stitch before compression', (_, large) => {
    const bytes = toSvg(fabricDrawing(large, { description: '' }), { idPrefix: 'f' }).length
    expect(bytes / large.fabric.loops.length).toBeLessThanOrEqual(135)
    // And it is no empty picture.
    expect(bytes / large.fabric.loops.length).toBeGreaterThan(80)
  })

  it('with an element for each part of a loop takes less than 400', () => {
    const bytes = toSvg(fabricDrawing(yarn, { detail: 'pieces', description: '' })).length
    expect(bytes / yarn.fabric.loops.length).toBeLessThan(400)
  })

  it('is the same bytes twice', () => {
    const draw = (): string => toSvg(fabricDrawing(yarnFor(workedFile('horseshoe.yaml', 2)), { mark: marks }))
    expect(draw()).toBe(draw())
  })

  it('holds all yarn but the run to the ball', () => {
    const { width, height } = fabricDrawing(yarn, { stitch: 100 })
    const runs = curvesIn(fabricDrawing(yarn, { stitch: 100 })).flatMap(({ runs }) => runs)
    const outside = runs.filter((run) =>
      run.some((value, i) => value < 0 || value > (i % 2 === 0 ? width : height)),
    )
    expect(outside.length).toBeLessThanOrEqual(1)
  })

  it('draws as many runs of yarn in both details, deepest first', () => {
    const lengthOf = (drawing: Drawing): number =>
      curvesIn(drawing)
        .filter(({ coats }) => coats.length > 0)
        .flatMap(({ runs }) => runs)
        .flat().length
    expect(lengthOf(fabricDrawing(yarn, { detail: 'pieces' }))).toBe(lengthOf(fabricDrawing(yarn)))
  })

  it('keys every loop where its parts are apart', () => {
    const keys = new Set(keysIn(fabricDrawing(yarn, { detail: 'pieces' })))
    for (const { id } of yarn.fabric.loops) expect(keys).toContain(`loop-${id}`)
    expect(keysIn(fabricDrawing(yarn))).toEqual([])
  })

  it('has classes and attributes for its paint, and no style', () => {
    const svg = toSvg(fabricDrawing(yarn, { mark: marks }))
    expect(svg).not.toMatch(/ style=|<style/)
    for (const name of [
      'yarn-line',
      'yarn-fill',
      'yarn-shade',
      'yarn-mark-over',
      'yarn-mark-decrease',
      'yarn-sign',
    ])
      expect(svg).toMatch(new RegExp(`class="[^"]*\\b${name}\\b`))
  })

  it('seen from behind, is another picture', () => {
    const wrong = fabricDrawing(yarn, { side: 'wrong' })
    expect(wrong.title).toMatch(/wrong side/)
    expect(toSvg(wrong)).not.toBe(toSvg(fabricDrawing(yarn)))
    expect(wrong.width).toBe(fabricDrawing(yarn).width)
  })
})

describe('marks', () => {
  it('are found in the worked rows', () => {
    // Two repeats of an arch: two yarn overs and one double decrease each, in four of eight rows.
    expect(marks.yarnOvers).toHaveLength(16)
    expect(marks.decreases).toHaveLength(8)
    // Row 1 of one repeat is yo, k3, sk2p, k3, yo, k1.
    expect(marks.repeat).toHaveLength(10)
    expect(marks.edges).toHaveLength(2 * yarn.fabric.lines.length)
  })

  it('show without colour: a ring for every hole, ink on the yarn, a bracket', () => {
    const drawing = fabricDrawing(yarn, { mark: marks })
    const nodes: Node[] = [...nodesOf(drawing.nodes)]
    expect(nodes.filter(({ className }) => className === 'mark-over')).toHaveLength(16)
    expect(nodes.filter(({ className }) => className === 'mark-repeat')).toHaveLength(1)
    const inks = new Set(
      curvesIn(drawing).flatMap(({ coats }) =>
        coats
          .filter(({ className }) => className === 'yarn-sign')
          .map(({ dash, strokeWidth }) => `${strokeWidth} ${dash}`),
      ),
    )
    expect(inks.size).toBe(3)
  })

  it('are not drawn unless asked for', () => {
    expect(toSvg(fabricDrawing(yarn))).not.toMatch(/mark-|yarn-sign/)
  })

  it('no ring is drawn for a yarn over inside an increase', () => {
    const k = (n: number): string[] => Array.from({ length: n }, () => 'k')
    const swatch = workedRows(7, [
      [...k(3), '(k1, yo, k1) in 1', ...k(3)],
      Array.from({ length: 9 }, () => 'p'),
    ])
    expect(marksOf(swatch, fabricOf(swatch)).yarnOvers).toEqual([])
  })
})

describe('its words', () => {
  it('say what is drawn, from the same loops', () => {
    const { description } = fabricDrawing(yarn, { mark: marks })
    expect(description).toContain('21 loops on the needle')
    expect(description).toContain(
      'Row 1: 4 holes under 4 yarn overs, 2 decreases with the right loop on top.',
    )
    expect(description).toContain('a ring in each hole')
  })

  it('name sides as they are seen', () => {
    const k = (n: number): string[] => Array.from({ length: n }, () => 'k')
    const swatch = yarnFor(workedRows(8, [[...k(3), 'k2tog', ...k(3)], Array.from({ length: 7 }, () => 'p')]))
    // k2tog: from the right side the left loop lies in front; from behind the other one does, and that is seen at the left.
    expect(fabricDrawing(swatch).description).toContain('1 decrease with the left loop on top')
    expect(fabricDrawing(swatch, { side: 'wrong' }).description).toContain(
      '1 decrease with the left loop on top',
    )
  })

  it('count a double yarn over as one hole', () => {
    const k = (n: number): string[] => Array.from({ length: n }, () => 'k')
    const swatch = yarnFor(workedRows(6, [[...k(3), 'yo2', ...k(3)]]))
    expect(fabricDrawing(swatch).description).toContain('Row 1: 1 hole under 2 yarn overs')
  })
})

describe('path data of curves', () => {
  it('goes from point to point in whole numbers', () => {
    expect(curvesData([[10.2, 20, 15, 20, 20, 24.6, 20, 30]])).toBe('M10 20c5 0 10 5 10 10')
  })

  it('leaves out what a minus sign makes needless, and a mirrored handle', () => {
    expect(curvesData([[0, 0, 0, -5, -5, -10, -10, -10, -15, -10, -20, -5, -20, 0]])).toBe(
      'M0 0c0-5-5-10-10-10s-10 5-10 10',
    )
  })

  it('begins the next run from where the one before ended', () => {
    expect(
      curvesData([
        [0, 0, 1, 0, 2, 0, 3, 0],
        [5, 5, 6, 5, 7, 5, 9, 5],
      ]),
    ).toBe('M0 0c1 0 2 0 3 0m2 5c1 0 2 0 4 0')
  })

  it('does not take what is no number', () => {
    expect(() => curvesData([[0, Number.NaN, 1, 1, 1, 1, 1, 1]])).toThrow(RangeError)
  })
})

it('a drawing that is painted in several coats is written once and used again', () => {
  const runs = [[0, 0, 1, 0, 2, 0, 3, 0]]
  const drawing: Drawing = {
    width: 4,
    height: 4,
    unit: 'px',
    title: 'T',
    description: '',
    nodes: [{ kind: 'curves', runs, coats: [{ className: 'a' }, { className: 'b' }, { className: 'c' }] }],
  }
  const svg = toSvg(drawing, { idPrefix: 'x' })
  expect(svg.match(/ d="/g)).toHaveLength(1)
  expect(svg).toContain(
    '<g class="a"><path id="x-1" d="M0 0c1 0 2 0 3 0"/></g><use href="#x-1" class="b"/><use href="#x-1" class="c"/>',
  )
})
