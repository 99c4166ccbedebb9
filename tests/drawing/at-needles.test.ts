import { describe, expect, it } from 'vitest'
import { atNeedles, between, type Frame, type Frames, restAt } from '../../engine/drawing/at-needles/index.ts'
import { neighboursOf } from '../../engine/drawing/at-needles/yarn-side.ts'
import type { Side } from '../../engine/pattern/index.ts'
import { catalogue, handSteps, stitch } from '../../engine/stitches/index.ts'
import { type Swatch, swatchOf } from './at-needles-support.ts'

const swatches = new Map<string, Swatch>()
function swatch(id: string, side: Side): Swatch {
  const name = `${id} ${side}`
  const found = swatches.get(name) ?? swatchOf(id, side)
  swatches.set(name, found)
  return found
}

function framesOf(id: string, side: Side, more: { hand?: 'left'; hold?: 'Continental' } = {}): Frames {
  const frames = atNeedles({ ...swatch(id, side), ...more })
  if (frames === null) throw new Error(`${id} has no frames`)
  return frames
}

interface Shown {
  readonly curve: readonly number[]
  readonly layer: number
  readonly look: string
}

/** Everything that a frame shows, by what it is called. */
function shownIn({ fabric, from, pieces }: Frames, frame: Frame): Map<string, Shown> {
  const shown = new Map<string, Shown>()
  for (const [i, { key, layer, look }] of fabric.entries()) {
    shown.set(key, { curve: [...frame.fabric.subarray(from[i], from[i + 1])], layer, look })
  }
  for (const [i, { key, layer, look }] of pieces.entries()) {
    if (frame.shown[i]) shown.set(key.replace(/ at .*/, ''), { curve: frame.curves[i] ?? [], layer, look })
  }
  return shown
}

/** Yarn that is no loop yet belongs to the step that makes one of it; a lifted strand and a holder to the step that has them. */
const isOfOneStep = (key: string, { look }: Shown): boolean =>
  look === 'working' || /\b(strand|holder|held)\b/.test(key)

/** Beyond where loops are drawn, or so low that the fabric ends. */
const isOut = ({ curve }: Shown): boolean => {
  const xs = curve.filter((_, i) => i % 2 === 0)
  const ys = curve.filter((_, i) => i % 2 === 1)
  return Math.min(...xs) > 5.9 || Math.max(...xs) < -5.9 || Math.max(...ys) < -4.4
}

const closeTo = (a: ArrayLike<number>, b: ArrayLike<number>): boolean =>
  a.length === b.length && Array.from(a).every((n, i) => Math.abs(n - (b[i] ?? Number.NaN)) < 1e-9)

const flipped = (numbers: ArrayLike<number>): number[] =>
  Array.from(numbers, (n, i) => (i % 2 === 0 ? -n : n))

const others: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  clockwise: 'anticlockwise',
  anticlockwise: 'clockwise',
}
const swapped = (words: string): string =>
  words.replace(/\b(left|right|clockwise|anticlockwise)\b/g, (word) => others[word] ?? '')

const stitches = catalogue.map(({ id }) => id)

it('the catalogue is what it was taken for', () => {
  expect(stitches.length).toBeGreaterThanOrEqual(117)
})

describe.each(['RS', 'WS'] as const)('worked on the %s', (side) => {
  it.each(stitches)('%s has frames of like pieces, and every number is one', (id) => {
    const { frames, pieces, from, fabric } = framesOf(id, side)
    expect(frames.length).toBeGreaterThan(1)
    expect(fabric.length).toBeGreaterThan(60)
    for (const frame of frames) {
      expect(frame.fabric).toHaveLength(from.at(-1) ?? 0)
      expect(frame.curves).toHaveLength(pieces.length)
      const lengths = frame.curves.map((curve) => curve.length)
      expect(lengths).toEqual(frames[0]?.curves.map((curve) => curve.length))
      expect(lengths.filter((length) => length < 8 || length % 6 !== 2)).toEqual([])
      const numbers = [...frame.fabric, ...frame.curves.flat(), ...frame.marks.flatMap(({ at }) => at)]
      expect(numbers.filter((n) => !Number.isFinite(n))).toEqual([])
      expect(numbers.length).toBeGreaterThan(1000)
    }
  })

  it.each(stitches)('%s is told step by step in the words for the hands', (id) => {
    const view = swatch(id, side)
    const row = view.worked.rows[view.rowIndex]
    if (row === undefined) throw new Error('no such row')
    for (const hold of ['English', 'Continental'] as const) {
      const told = atNeedles({ ...view, hold })?.frames.map(({ words }) => words) ?? []
      const words = handSteps(stitch(id), hold, neighboursOf(row, view.stepIndex))
      expect(words.length).toBeGreaterThan(0)
      let from = 1
      for (const one of words) {
        const at = told.findIndex((text, i) => i >= from && text.includes(one))
        expect(at, `${one} in ${told.join(' / ')}`).toBeGreaterThan(0)
        from = at
      }
      expect(told[0]).toBe('')
      expect(told.slice(1).every((text) => text !== '')).toBe(true)
    }
  })

  it.each(stitches)('%s ends as the next stitch begins', (id) => {
    const frames = framesOf(id, side)
    const view = swatch(id, side)
    const next = atNeedles({ ...view, stepIndex: view.stepIndex + 1 })
    const [end, start] = [frames.frames.at(-1), next?.frames[0]]
    if (end === undefined) throw new Error('no frame')
    if (next === null || start === undefined) {
      expect(view.stepIndex + 1).toBe(view.worked.rows[view.rowIndex]?.steps.length)
      return
    }
    const [before, after] = [shownIn(frames, end), shownIn(next, start)]
    const lone = (one: Map<string, Shown>, other: Map<string, Shown>): string[] =>
      [...one].flatMap(([key, shown]) =>
        other.has(key) || isOfOneStep(key, shown) || isOut(shown) ? [] : [key],
      )
    expect(lone(before, after)).toEqual([])
    expect(lone(after, before)).toEqual([])
    const common = [...before].filter(([key, shown]) => after.has(key) && !isOfOneStep(key, shown))
    const moved = common.flatMap(([key, { curve, layer, look }]) => {
      const other = after.get(key)
      const isSame = other?.layer === layer && other.look === look && closeTo(curve, other.curve)
      return isSame ? [] : [`${key}: ${layer} ${look}, then ${other?.layer} ${other?.look}`]
    })
    expect(moved).toEqual([])
    expect(common.length).toBeGreaterThan(90)
    expect(start.on).toEqual(end.on)
    const marks = ({ marks: all }: Frame) =>
      all
        .filter(({ kind }) => kind !== 'label')
        .map(({ key, at }) => [key, ...at.map((n) => n.toFixed(6))].join(' '))
    const held = new Set(['holding'])
    if (!held.has(stitch(view.worked.rows[view.rowIndex]?.steps[view.stepIndex + 1]?.stitch ?? 'k').family)) {
      expect(marks(start)).toEqual(marks(end))
    }
  })

  it.each(stitches)('%s keeps the yarn in one line from the fabric to the hand', (id) => {
    const frames = framesOf(id, side)
    for (const frame of frames.frames) {
      const shown = [...shownIn(frames, frame)]
      const [root, hand] = [/ root$/, / hand$/].map(
        (name) => shown.find(([key]) => name.test(key))?.[1].curve ?? [],
      )
      expect(root?.slice(-2)).toEqual(hand?.slice(0, 2))
      // It leaves over the picture's upper edge.
      expect(hand?.at(-1)).toBeGreaterThan(2.4)
    }
  })

  it.each(stitches)('%s is mirrored for a left-hander, words and all', (id) => {
    const [right, left] = [framesOf(id, side), framesOf(id, side, { hand: 'left' })]
    expect(left.frames).toHaveLength(right.frames.length)
    for (const [k, frame] of left.frames.entries()) {
      const other = right.frames[k]
      if (other === undefined) throw new Error('no such frame')
      expect(closeTo(frame.fabric, flipped(other.fabric))).toBe(true)
      expect(frame.curves.every((curve, i) => closeTo(curve, flipped(other.curves[i] ?? [])))).toBe(true)
      expect(frame.on).toEqual({ left: other.on.right, right: other.on.left })
      expect(swapped(frame.words)).toBe(other.words)
    }
    expect(left.frames[0]?.description).toMatch(/^You look at the (right|wrong) side\. Right needle:/)
  })
})

it('at rest it is the first or the last of its frames', () => {
  for (const id of ['k', 'yo', 'sk2p', 'm1l', '2/2 LC', 'nupp5']) {
    const all = framesOf(id, 'RS')
    for (const when of ['before', 'after'] as const) {
      const rest = restAt(swatch(id, 'RS'), when)
      const [frame, other] = [rest?.frames[0], when === 'before' ? all.frames[0] : all.frames.at(-1)]
      if (!rest || !frame || !other) throw new Error('no frame')
      const [shown, wanted] = [shownIn(rest, frame), shownIn(all, other)]
      expect([...shown.keys()].sort()).toEqual([...wanted.keys()].sort())
      for (const [key, { curve, layer, look }] of shown)
        expect(wanted.get(key)).toEqual({ curve, layer, look })
      expect(frame.marks).toEqual(other.marks)
      expect(rest.told).toEqual(all.frames.map(({ words, stop }) => ({ words, stop })))
    }
  }
})

describe('on the way between two frames', () => {
  const { frames } = framesOf('sk2p', 'RS')
  const pairs = frames.slice(1).map((frame, i) => [frames[i] as Frame, frame] as const)

  it('backward is the same way as forward', () => {
    expect(pairs.length).toBeGreaterThan(6)
    for (const [a, b] of pairs) {
      for (const t of [0, 0.2, 0.45, 0.7, 1]) {
        const [on, back] = [between(a, b, t), between(b, a, 1 - t)]
        expect(closeTo(on.fabric, back.fabric)).toBe(true)
        expect(on.curves.every((curve, i) => closeTo(curve, back.curves[i] ?? []))).toBe(true)
        expect(on.shown).toEqual(back.shown)
        expect(on.words).toBe(back.words)
      }
    }
  })

  it('starts and ends at the frames, and half way is half way', () => {
    for (const [a, b] of pairs) {
      expect(between(a, b, 0)).toBe(a)
      expect(between(a, b, 1)).toBe(b)
      const half = between(a, b, 0.5)
      expect(
        closeTo(
          half.fabric,
          a.fabric.map((n, i) => (n + (b.fabric[i] ?? Number.NaN)) / 2),
        ),
      ).toBe(true)
    }
  })
})
