import { layOutFabric, otherSide, type Yarn, yarnOf } from '../fabric/index.ts'
import type { StitchId } from '../stitches/index.ts'
import { type Swatch, swatchOf } from './close-up-swatch.ts'
import { closeUpTitle, closeUpWords } from './close-up-words.ts'
import type { Drawing, Node } from './display.ts'
import { yarnPicture } from './fabric.ts'
import { type Box, toUnits, type UnitFrame } from './fabric-frame.ts'
import type { TintOf } from './fabric-layers.ts'
import { ink, type Tint } from './fabric-paint.ts'

export interface CloseUpOptions {
  /** The face that is seen; the stitch is worked on a right-side row. */
  readonly side?: 'right' | 'wrong'
  /** Drawing units a stitch; 64 if not said. */
  readonly stitch?: number
  /** Whole units that a stitch is drawn in; 200 if not said. Fewer are smaller to send and coarser. */
  readonly units?: number
}

/**
 * One stitch close up: worked in a small plain swatch, laid out and drawn like any fabric. The loops that it took have a
 * tone and a number each, from the left needle's tip on; what it made has a tone of its own.
 */
export function closeUpDrawing(id: StitchId, options: CloseUpOptions = {}): Drawing {
  const { side = 'right', stitch = 64, units = 200 } = options
  const swatch = swatchOf(id)
  const right = yarnOf(swatch.fabric, layOutFabric(swatch.fabric, { state: 'free' }))
  const yarn = side === 'right' ? right : otherSide(right)
  const tintOf = tintsOf(swatch)
  const how = { box: boxRound(yarn, tintOf, swatch), units, stitch, detail: 'batched', tintOf } as const
  return {
    ...yarnPicture(yarn, how, (frame) => labelNodes(yarn, frame, swatch)),
    title: closeUpTitle(swatch, side),
    description: closeUpWords(swatch, side),
  }
}

function tintsOf({ made, taken }: Swatch): TintOf {
  return ({ loop, part }): Tint => {
    const number = taken.indexOf(loop) + 1
    if (part === 'edge' || part === 'tail') return 'plain'
    // A slipped loop is both taken and made.
    if (number > 0) return `parent-${number}`
    return part === 'strand' ? 'parent-1' : made.includes(loop) ? 'new' : 'plain'
  }
}

/** All that is told apart, with some plain ground round it. */
function boxRound({ pieces, places }: Yarn, tintOf: TintOf, { taken }: Swatch): Box {
  const shown = pieces.filter((piece) => tintOf(piece) !== 'plain')
  const ends = (odd: 0 | 1): number[] => shown.flatMap(({ curve }) => curve.filter((_, i) => i % 2 === odd))
  const [xs, ys] = [ends(0), [...ends(1), ...taken.flatMap((id) => (places[id]?.base[1] ?? 0) - 0.48)]]
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2
  const half = Math.max(2, (Math.max(...xs) - Math.min(...xs)) / 2 + 0.8)
  const top = Math.max(...ys) + 0.4
  // Under a yarn over there is nothing of its own to show, but the hole.
  return {
    left: middle - half,
    right: middle + half,
    bottom: Math.min(Math.min(...ys) - 0.3, top - 2.8),
    top,
  }
}

/** The number of each loop taken, on a plate at its foot. */
function labelNodes({ places }: Yarn, frame: UnitFrame, { taken, made }: Swatch): Node[] {
  if (taken.length === 1 && made[0] === taken[0]) return []
  return taken.flatMap((id, i): Node[] => {
    const place = places[id]
    if (place === undefined) return []
    const [x, y] = toUnits(frame, [place.base[0], place.base[1] - 0.38])
    const r = 0.19 * frame.units
    return [
      {
        kind: 'circle',
        key: `number-${i + 1}`,
        className: 'number-plate',
        x: Math.round(x),
        y: Math.round(y),
        radius: r,
        fill: '#ffffff',
        stroke: ink,
        strokeWidth: 0.02 * frame.units,
      },
      {
        kind: 'text',
        className: 'number',
        text: String(i + 1),
        x: Math.round(x),
        y: Math.round(y + r * 0.5),
        size: r * 1.4,
        anchor: 'middle',
        bold: true,
        fill: ink,
        stroke: 'none',
      },
    ]
  })
}
