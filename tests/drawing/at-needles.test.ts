import { describe, expect, it } from 'vitest'
import { atNeedles, between, type Frame, type Frames, restAt } from '../../engine/drawing/at-needles/index.ts'
import { neighboursOf } from '../../engine/drawing/at-needles/yarn-side.ts'
import type { Side } from '../../engine/pattern/index.ts'
import { catalogue, handSteps, stitch } from '../../engine/stitches/index.ts'
import { type Swatch, swatchOf } from './at-needles-support.ts'

/** The swatch of the stitch at hand and its frames: tests of one stitch follow each other, so one is enough. */
interface AtHand {
  readonly name: string
  readonly swatch: Swatch
  frames?: Frames
}
/** As many as take part in what the hands do. */
const around = 4
let atHand: AtHand = { name: '', swatch: swatchOf('k', 'RS', around) }

function taken(id: string, side: Side): AtHand {
  const name = `${id} ${side}`
  if (atHand.name !== name) atHand = { name, swatch: swatchOf(id, side, around) }
  return atHand
}

const swatch = (id: string, side: Side): Swatch => taken(id, side).swatch

function framesOf(id: string, side: Side): Frames {
  const now = taken(id, side)
  const frames = now.frames ?? atNeedles(now.swatch)
  if (frames === null) throw new Error(`${id} has no frames`)
  now.frames = frames
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

/** `toX`: -1 where the one is the other's mirror picture. */
function closeTo(a: ArrayLike<number>, b: ArrayLike<number>, toX: 1 | -1 = 1): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) {
    const other = (b[i] as number) * (i % 2 === 0 ? toX : 1)
    if (!(Math.abs((a[i] as number) - other) < 1e-9)) return false
  }
  return true
}

function countUnfit(numbers: ArrayLike<number>): number {
  let unfit = 0
  for (let i = 0; i < numbers.length; i++) if (!Number.isFinite(numbers[i])) unfit += 1
  return unfit
}

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

const isOfStitch = (look: string): boolean => look === 'next' || look === 'working' || look === 'new'

/** Half a loop of nine in one stitch reaches about so far, in stitch widths. */
const longest = 2.05

function reachOf(curve: readonly number[] = []): number {
  const [x, y] = [curve.at(-2) ?? Number.NaN, curve.at(-1) ?? Number.NaN]
  return Math.hypot(x - (curve[0] ?? 0), y - (curve[1] ?? 0))
}

/** Of large stitches that differ in their number of loops only, the least and the greatest. */
function withoutSizesBetween(ids: readonly string[]): string[] {
  const sizes = Map.groupBy(ids, (id) => {
    const { takes, makes } = stitch(id)
    return takes > 3 || makes > 3 ? [...new Set(id.replaceAll(/\d/g, '').split(/[ ,()]+/))].join(' ') : id
  })
  const ends = new Set([...sizes.values()].flatMap((all) => [all[0], all.at(-1)]))
  return ids.filter((id) => ends.has(id))
}

const ends = withoutSizesBetween(stitches)
const cases = (['RS', 'WS'] as const).flatMap((side) => ends.map((id) => [id, side] as const))

/** In the words for the hands, in their order. */
function expectTold(id: string, side: Side): void {
  const view = swatch(id, side)
  const row = view.worked.rows[view.rowIndex]
  if (row === undefined) throw new Error('no such row')
  for (const hold of ['English', 'Continental'] as const) {
    const told = restAt({ ...view, hold }, 'before')?.told.map(({ words }) => words) ?? []
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
}

it.each(stitches.filter((id) => !ends.includes(id)))('%s, a size between, is told and counted', (id) => {
  expectTold(id, 'RS')
  const { takes, makes } = stitch(id)
  const view = swatch(id, 'RS')
  const counts = (when: 'before' | 'after') =>
    restAt(view, when)?.frames[0]?.marks.flatMap((mark) => (mark.kind === 'count' ? [mark.text] : []))
  expect(counts('before')).toEqual([`${takes + around} on the left`, `${around} on the right`])
  expect(counts('after')).toEqual([`${around} on the left`, `${makes + around} on the right`])
})

describe.each(cases)('%s on the %s', (id, side) => {
  it('has frames of like pieces, and every number is one', () => {
    const { frames, pieces, from, fabric } = framesOf(id, side)
    expect(frames.length).toBeGreaterThan(1)
    expect(fabric.length).toBeGreaterThan(40)
    const lengths = frames.map(({ curves }) => curves.map((curve) => curve.length).join())
    expect(new Set(lengths).size).toBe(1)
    expect(frames[0]?.curves.filter(({ length }) => length < 8 || length % 6 !== 2)).toEqual([])
    expect(frames.filter(({ curves }) => curves.length !== pieces.length)).toEqual([])
    expect(frames.filter((frame) => frame.fabric.length !== from.at(-1))).toEqual([])
    const lists = frames.map((frame) => [frame.fabric, ...frame.curves, ...frame.marks.map(({ at }) => at)])
    expect(lists.flat().reduce((sum, numbers) => sum + countUnfit(numbers), 0)).toBe(0)
    const counts = lists.map((numbers) => numbers.reduce((sum, { length }) => sum + length, 0))
    expect(Math.min(...counts)).toBeGreaterThan(1000)
  })

  it('is told step by step in the words for the hands', () => expectTold(id, side))

  it('ends as the next stitch begins', () => {
    const frames = framesOf(id, side)
    const view = swatch(id, side)
    const next = restAt({ ...view, stepIndex: view.stepIndex + 1 }, 'before')
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
    expect(common.length).toBeGreaterThan(60)
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

  it('draws no loop out long but those that a tip lifts', () => {
    // Its yarn comes from two rows below.
    if (id === 'lli') return
    const { frames, pieces } = framesOf(id, side)
    const halves = pieces.flatMap(({ key, look }, i) => (/ half-/.test(key) && isOfStitch(look) ? [i] : []))
    expect(halves.length).toBeGreaterThan(1)
    const long = frames.flatMap(({ words, shown, curves }) =>
      words.includes('lift ') ? [] : halves.filter((i) => shown[i] && reachOf(curves[i]) > longest),
    )
    expect(long.map((i) => pieces[i]?.key)).toEqual([])
  })

  it('keeps the yarn in one line from the fabric to the hand', () => {
    const { frames, pieces } = framesOf(id, side)
    const found = (frame: Frame, name: RegExp): readonly number[] =>
      frame.curves[pieces.findIndex(({ key }, i) => frame.shown[i] && name.test(key))] ?? []
    const ends = frames.map((frame) => [found(frame, / root at /), found(frame, / hand at /)] as const)
    expect(ends.map(([root]) => root.slice(-2))).toEqual(ends.map(([, hand]) => hand.slice(0, 2)))
    // It leaves over the picture's upper edge.
    expect(Math.min(...ends.map(([, hand]) => hand.at(-1) ?? Number.NaN))).toBeGreaterThan(2.4)
  })

  // Numbers and words are mirrored, whatever they are of: a few of the wrong side are enough.
  if (side === 'WS' && id.length > 3) return
  it('is mirrored for a left-hander, words and all', () => {
    const right = framesOf(id, side)
    const left = atNeedles({ ...swatch(id, side), hand: 'left' })
    if (left === null) throw new Error('no frames')
    expect(left.frames).toHaveLength(right.frames.length)
    const wrong = left.frames.filter((frame, k) => {
      const other = right.frames[k]
      const isMirrored = ({ fabric, curves }: Frame): boolean =>
        closeTo(frame.fabric, fabric, -1) &&
        frame.curves.every((curve, i) => closeTo(curve, curves[i] ?? [], -1))
      return other === undefined || !isMirrored(other)
    })
    expect(wrong).toEqual([])
    expect(left.frames.map(({ words }) => swapped(words))).toEqual(right.frames.map(({ words }) => words))
    expect(left.frames.map(({ on }) => on)).toEqual(
      right.frames.map(({ on }) => ({ left: on.right, right: on.left })),
    )
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
