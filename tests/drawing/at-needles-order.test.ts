import { describe, expect, it } from 'vitest'
import { atNeedles, type Frame, type Frames } from '../../engine/drawing/at-needles/index.ts'
import { swatchOf } from './at-needles-support.ts'

/** What goes before what while a tip is in a loop: as any knitter can see by doing it slowly. Common practice, no source. */

function framesOf(id: string): Frames {
  const frames = atNeedles(swatchOf(id, 'RS'))
  if (frames === null) throw new Error(`${id} has no frames`)
  return frames
}

/** The first place to stop that such words lead to. */
function frameFor({ frames }: Frames, words: RegExp): Frame {
  const found = frames.find((frame) => frame.stop && words.test(frame.words))
  if (found === undefined) throw new Error(`no frame has ${words}`)
  return found
}

/** How near to the knitter a piece lies; of those whose names match, the one that is shown. */
function layerOf({ pieces }: Frames, frame: Frame, name: RegExp): number {
  const found = pieces.find(({ key }, i) => frame.shown[i] && name.test(key))
  if (found === undefined) throw new Error(`nothing shown is called ${name}`)
  return found.layer
}

/** A part of the loop that the stitch takes first; of the newest one that it has made. */
const taken = (part: string): RegExp => new RegExp(`^${takenLoop} ${part} `)
let takenLoop = 0

function view(id: string, words: RegExp): (name: RegExp) => number {
  const { worked, rowIndex, stepIndex } = swatchOf(id, 'RS')
  takenLoop = worked.rows[rowIndex]?.steps[stepIndex]?.taken[0] ?? -1
  const frames = framesOf(id)
  const frame = frameFor(frames, words)
  return (name) => layerOf(frames, frame, name)
}

const [left, rightShaft, rightTip] = [
  /^needle-left shaft body/,
  /^needle-right shaft body/,
  /^needle-right tip body/,
]

describe('the right tip', () => {
  it('goes in before the front leg and out behind the left needle, for a knit', () => {
    const at = view('k', /put the right tip into/)
    expect(at(rightTip)).toBeLessThan(at(left))
    expect(at(rightTip)).toBeLessThan(at(taken('half-left')))
    expect(at(rightShaft)).toBeGreaterThan(at(taken('half-right')))
    expect(at(rightShaft)).toBeGreaterThan(at(taken('leg-right')))
    expect(at(taken('half-left'))).toBeLessThan(at(left))
    expect(at(taken('half-right'))).toBeGreaterThan(at(left))
  })

  it('goes under the front leg and before the left needle, for a purl', () => {
    const at = view('p', /put the right tip into/)
    expect(at(rightShaft)).toBeGreaterThan(at(left))
    expect(at(taken('half-right'))).toBeGreaterThan(at(rightShaft))
    expect(at(taken('leg-right'))).toBeGreaterThan(at(rightShaft))
    expect(at(taken('leg-left'))).toBeLessThan(at(rightShaft))
  })

  it('goes behind the left needle and before the back leg, through the back loop', () => {
    const at = view('k tbl', /put the right tip into/)
    expect(at(rightShaft)).toBeLessThan(at(left))
    expect(at(rightShaft)).toBeGreaterThan(at(taken('half-left')))
    expect(at(rightShaft)).toBeGreaterThan(at(taken('leg-left')))
    expect(at(rightShaft)).toBeLessThan(at(taken('leg-right')))
  })

  it('has the yarn round it: across its front, under the left needle for a knit, behind it for a purl', () => {
    const knit = view('k', /carry the yarn round/)
    const fresh = /^\d+ half-right at .* working/
    expect(knit(fresh)).toBeGreaterThan(knit(rightTip))
    expect(knit(fresh)).toBeLessThan(knit(left))
    const purl = view('p', /lay the yarn over/)
    expect(purl(/^\d+ half-left at .* working/)).toBeLessThan(purl(rightShaft))
    expect(purl(/^\d+ half-right at .* working/)).toBeGreaterThan(purl(rightShaft))
  })
})

describe('a new loop', () => {
  const newLegs = /^\d+ leg-(left|right) at .* working/

  it('comes toward the knitter out of the old one for a knit, and goes away from her for a purl', () => {
    const knit = view('k', /^Draw the new loop/)
    expect(knit(newLegs)).toBeGreaterThan(knit(taken('half-right')))
    expect(knit(newLegs)).toBeGreaterThan(knit(left))
    const purl = view('p', /^Push the new loop/)
    expect(purl(newLegs)).toBeLessThan(purl(taken('half-right')))
    expect(purl(newLegs)).toBeLessThan(purl(left))
  })

  it('has a slipped one lifted over it by the left tip, before everything', () => {
    const at = view('sk2p', /lift the slipped stitch over/)
    const leftTip = /^needle-left tip body/
    expect(at(leftTip)).toBeGreaterThan(at(rightShaft))
    // Slipped as if to knit, it sits turned: its left half leads.
    expect(at(taken('half-left'))).toBeGreaterThan(at(leftTip))
    expect(at(taken('half-right'))).toBeLessThan(at(rightShaft))
    expect(at(/^\d+ half-right at .* working/)).toBeLessThan(at(taken('half-left')))
  })
})

it('a loop slipped as if to knit has its other half in front of the needle, until it is worked', () => {
  const swatch = swatchOf('sl kwise', 'RS')
  const loop = swatch.worked.rows[swatch.rowIndex]?.steps[swatch.stepIndex]?.taken[0]
  const { pieces, frames } = framesOf('sl kwise')
  const front = (frame: Frame | undefined): string[] =>
    pieces.flatMap((piece, i) =>
      piece.loop === loop && piece.front && frame?.shown[i] ? [piece.key.split(' ')[1] ?? ''] : [],
    )
  expect(front(frames[0])).toEqual(['half-right'])
  expect(front(frames.at(-1))).toEqual(['half-left'])
})

it('the loops of a crossing wait on a needle of their own, before the work or behind it', () => {
  for (const [id, isBefore] of [
    ['2/2 LC', true],
    ['2/2 RC', false],
  ] as const) {
    const at = view(id, /to a cable needle/)
    expect(at(/^needle-cable body/) > at(left)).toBe(isBefore)
    expect(at(taken('half-right')) > at(/^needle-cable body/)).toBe(true)
    expect(at(taken('half-left')) < at(/^needle-cable body/)).toBe(true)
  }
})

describe('the yarn beside a slipped loop', () => {
  const lastOf = (id: string): ((name: RegExp) => number) => {
    const { worked, rowIndex, stepIndex } = swatchOf(id, 'RS')
    takenLoop = worked.rows[rowIndex]?.steps[stepIndex]?.taken[0] ?? -1
    const frames = framesOf(id)
    return (name) => layerOf(frames, frames.frames.at(-1) as Frame, name)
  }

  it('runs before it where it was slipped with the yarn in front, and behind it otherwise', () => {
    const carried = lastOf('sl wyif')
    expect(carried(/ root /)).toBeGreaterThan(carried(taken('leg-left')))
    expect(carried(/ root /)).toBeGreaterThan(carried(taken('leg-right')))
    for (const id of ['sl', 'sl wyib']) {
      const behind = lastOf(id)
      expect(behind(/ root /)).toBeLessThan(behind(taken('leg-left')))
      expect(behind(/ root /)).toBeLessThan(behind(taken('leg-right')))
    }
  })
})

it('the loop of a bind-off is painted as new once it is there, and as next when it is to be lifted', () => {
  const frames = framesOf('bo')
  const looks = (frame: Frame | undefined): string[] =>
    frames.pieces.flatMap(({ front, look, loop }, i) =>
      front && loop === null && frame?.shown[i] ? [look] : [],
    )
  expect(looks(frames.frames[0])).toEqual(['new'])
  expect(looks(frameFor(frames, /lift the stitch before it/))).toContain('next')
  expect(looks(frames.frames.at(-1))).toEqual(['new'])
})

it('a slipped loop is not painted as new', () => {
  const { worked, rowIndex, stepIndex } = swatchOf('sl', 'RS')
  const slipped = worked.rows[rowIndex]?.steps[stepIndex]?.taken[0]
  const { pieces, frames } = framesOf('sl')
  const looks = pieces.flatMap(({ loop, front, look }, i) =>
    loop === slipped && front && frames.at(-1)?.shown[i] ? [look] : [],
  )
  expect(looks).toEqual(['yarn'])
})
