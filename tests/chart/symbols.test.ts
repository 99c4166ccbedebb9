import { describe, expect, it } from 'vitest'
import {
  type ChartSymbol,
  catalogue,
  noStitch,
  type Point,
  type Stroke,
  sharedSymbols,
  stitch,
  symbolOf,
  twinsOf,
} from '../../engine/stitches/index.ts'
import { lookOf } from '../../engine/stitches/look.ts'
import { mirrored } from '../../engine/stitches/symbol-shapes.ts'

/** Half the width of a stroke, in cells: what a line takes beyond its middle. */
const half = 0.045
const dotRadius = 0.11

const rounded = (points: readonly Point[]): Point[] =>
  points.map(([x, y]) => [Math.round(x * 1e6) / 1e6, Math.round(y * 1e6) / 1e6])

/** The same line drawn from its other end is the same line. */
function eitherWay(points: readonly Point[]): string {
  const there = rounded(points)
  const back = there.toReversed()
  return [JSON.stringify(there), JSON.stringify(back)].sort()[0] ?? ''
}

function shape(stroke: Stroke): string {
  switch (stroke.kind) {
    case 'line':
      return `line ${eitherWay([stroke.from, stroke.to])}`
    case 'polyline':
      return `line ${eitherWay(stroke.points)}`
    case 'curve':
      return `curve ${eitherWay([
        stroke.from,
        ...stroke.parts.flatMap(([a, b, c, d, e, f]): Point[] => [
          [a, b],
          [c, d],
          [e, f],
        ]),
      ])}`
    case 'dot':
      return `dot ${JSON.stringify(rounded([stroke.at]))}`
    case 'circle':
      return `circle ${stroke.radius} ${JSON.stringify(rounded([stroke.at]))}`
    case 'digit':
      return `digit ${stroke.text} ${JSON.stringify(rounded([stroke.at]))}`
    case 'hatch':
    case 'shade':
      return stroke.kind
  }
}

const shapes = (strokes: readonly Stroke[]): string[] => strokes.map(shape).sort()

/** How far ink reaches: left, top, right, bottom. Curves lie within their control points. */
function reach(stroke: Stroke): [number, number, number, number] {
  const around = (points: readonly Point[], by: number): [number, number, number, number] => [
    Math.min(...points.map(([x]) => x)) - by,
    Math.min(...points.map(([, y]) => y)) - by,
    Math.max(...points.map(([x]) => x)) + by,
    Math.max(...points.map(([, y]) => y)) + by,
  ]
  switch (stroke.kind) {
    case 'line':
      return around([stroke.from, stroke.to], half)
    case 'polyline':
      return around(stroke.points, half)
    case 'curve':
      return around(
        [
          stroke.from,
          ...stroke.parts.flatMap(([a, b, c, d, e, f]): Point[] => [
            [a, b],
            [c, d],
            [e, f],
          ]),
        ],
        half,
      )
    case 'circle':
      return around([stroke.at], stroke.radius + half)
    case 'dot':
      return around([stroke.at], dotRadius)
    case 'digit':
      return around([stroke.at], stroke.size * 0.4)
    case 'hatch':
      return around(stroke.lines.flat(), 0)
    case 'shade':
      return [0, 0, 1, 1]
  }
}

const all: readonly (readonly [string, ChartSymbol])[] = [
  ...catalogue.map(({ id }) => [id, symbolOf(id)] as const),
  ['no stitch', noStitch],
]

describe('chart symbols', () => {
  it('exist for the whole catalogue, as wide as the stitch, under its name', () => {
    for (const { id, cells, name } of catalogue) expect(symbolOf(id)).toMatchObject({ cells, name })
  })

  it.each(all)('%s stays inside its cells', (_, { cells, strokes }) => {
    for (const stroke of strokes) {
      const [left, top, right, bottom] = reach(stroke)
      expect(Math.min(left, top)).toBeGreaterThanOrEqual(0)
      expect(right).toBeLessThanOrEqual(cells)
      expect(bottom).toBeLessThanOrEqual(1)
    }
  })

  it('differ from each other, but for those that share one', () => {
    const byShape = Map.groupBy(all, ([, { cells, strokes }]) => JSON.stringify([cells, shapes(strokes)]))
    const alike = [...byShape.values()]
      .map((group) => group.map(([id]) => id))
      .filter((ids) => ids.length > 1)
    const pairs = alike.flatMap(([first, ...others]) => others.map((other) => [other, first]))
    expect(Object.fromEntries(pairs)).toEqual(sharedSymbols)
  })
})

describe('stitches that share a symbol', () => {
  const right = { workedOn: 'RS', mirrored: false } as const

  it.each(Object.entries(sharedSymbols).filter(([id]) => id !== 'sl wyib'))(
    '%s makes the fabric of %s',
    (id, of) => {
      expect(lookOf(stitch(id).effect, right, 'exact')).toBe(lookOf(stitch(of).effect, right, 'exact'))
    },
  )

  it('a stitch slipped with the yarn in back, on the right side, has it on the wrong side, as any slip', () => {
    expect(stitch('sl wyib').effect.made[0]?.float).toBe('far')
    expect(stitch('sl').effect.made[0]?.float).toBeNull()
  })
})

describe('the shape says what the stitch does', () => {
  // 'Make one' names no side, so its sign stands upright, although the hands work it as the left one.
  const leaning = catalogue.filter(
    ({ id, lean, family }) =>
      (lean === 'left' || lean === 'right') &&
      family !== 'gathering' &&
      id !== 'm1' &&
      twinsOf(id).mirror?.likeness === 'exact',
  )

  it.each(leaning.map(({ id, mirrorTwin }) => [id, mirrorTwin ?? '']))(
    '%s is the mirror image of %s',
    (id, twin) => {
      const { cells, strokes } = symbolOf(id)
      expect(shapes(mirrored(strokes, cells))).toEqual(shapes(symbolOf(twin).strokes))
    },
  )

  it('there are leaning stitches to look at', () => {
    expect(leaning.length).toBeGreaterThan(12)
  })

  it.each(
    leaning.map(({ id, lean }) => [id, lean]).filter(([id]) => /^(k2tog|ssk|1\/1 [RL]C)$/.test(id ?? '')),
  )('%s rises to the %s', (id, lean) => {
    const [first] = symbolOf(id ?? '').strokes
    if (first?.kind !== 'line') throw new Error('a leaning stitch begins with its front stroke')
    const [low, high] = first.from[1] > first.to[1] ? [first.from, first.to] : [first.to, first.from]
    expect(high[0] > low[0] ? 'right' : 'left').toBe(lean)
  })

  const purled = catalogue.filter(({ id, family, makes }) => {
    const first = stitch(id).effect.made[0]
    return (
      /decrease$/.test(family) && makes === 1 && first?.face === 'purl' && stitch(id).wrongSideTwin !== null
    )
  })

  it.each(purled.map(({ id, wrongSideTwin }) => [id, wrongSideTwin ?? '']))(
    '%s is the sign of %s with a dot',
    (id, twin) => {
      const dots = symbolOf(id).strokes.filter(({ kind }) => kind === 'dot')
      expect(dots).toHaveLength(1)
      expect(shapes(symbolOf(id).strokes.filter(({ kind }) => kind !== 'dot'))).toEqual(
        shapes(symbolOf(twin).strokes),
      )
    },
  )
})
