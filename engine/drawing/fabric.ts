import { otherSide, type Yarn } from '../fabric/index.ts'
import type { Drawing, Node } from './display.ts'
import { type Box, boxOf, toUnits, type UnitFrame } from './fabric-frame.ts'
import { layerNodes, type TintOf } from './fabric-layers.ts'
import { type FabricMarks, markNodes, tintsFor, withRoomFor } from './fabric-marks.ts'
import { ink, inked } from './fabric-paint.ts'
import { fabricTitle, fabricWords } from './fabric-words.ts'

export interface FabricOptions {
  readonly side?: 'right' | 'wrong'
  /**
   * 'batched', as a rule: as few bytes as can be, at most 135 a stitch before compression for a piece of 150 loops or more
   * and about 48 compressed. 'pieces': one element for each part of a loop, keyed `loop-ID`, so that loops can be lit up;
   * about three times as much.
   */
  readonly detail?: 'batched' | 'pieces'
  readonly mark?: FabricMarks
  /** Drawing units a stitch; 32 if not said. */
  readonly stitch?: number
  /** Whole units that a stitch is drawn in; 100 if not said. Fewer are smaller to send and coarser. */
  readonly units?: number
  readonly title?: string
  readonly description?: string
}

/** The yarn of a fabric as a picture, seen from either side. */
export function fabricDrawing(yarn: Yarn, options: FabricOptions = {}): Drawing {
  const { side = 'right', detail = 'batched', mark = {}, stitch = 32, units = 100 } = options
  const seen = yarn.side === side ? yarn : otherSide(yarn)
  const box = withRoomFor(boxOf(seen), mark)
  return {
    ...yarnPicture(seen, { box, units, stitch, detail, tintOf: tintsFor(seen, mark) }, (frame) =>
      markNodes(seen, frame, mark),
    ),
    title: options.title ?? fabricTitle(seen),
    description: options.description ?? fabricWords(seen, mark),
  }
}

export interface YarnPicture {
  readonly box: Box
  readonly units: number
  readonly stitch: number
  readonly detail: 'batched' | 'pieces'
  readonly tintOf: TintOf
}

/** Yarn within a box, and whatever is drawn over it. */
export function yarnPicture(
  yarn: Yarn,
  how: YarnPicture,
  over: (frame: UnitFrame) => Node[],
): Omit<Drawing, 'title' | 'description'> {
  const { box, units, stitch, detail, tintOf } = how
  const frame = { box, units }
  return {
    width: round((box.right - box.left) * stitch),
    height: round((box.top - box.bottom) * stitch),
    unit: 'px',
    nodes: [
      {
        kind: 'group',
        className: 'fabric',
        scale: stitch / units,
        ...inked,
        children: [...layerNodes(yarn, frame, tintOf, detail), ...beadNodes(yarn, frame), ...over(frame)],
      },
    ],
  }
}

const round = (value: number): number => Math.round(value * 100) / 100

function beadNodes({ beads }: Yarn, frame: UnitFrame): Node[] {
  return beads.flatMap(({ loop, at }): Node[] => {
    const [x, y] = toUnits(frame, at)
    const place = { kind: 'circle', x: Math.round(x), y: Math.round(y) } as const
    const r = 0.27 * frame.units
    return [
      {
        ...place,
        key: `bead-${loop}`,
        className: 'bead',
        radius: r,
        fill: '#7fa8a3',
        stroke: ink,
        strokeWidth: 0.036 * frame.units,
      },
      {
        ...place,
        x: place.x - r * 0.35,
        y: place.y - r * 0.35,
        className: 'bead-light',
        radius: r * 0.28,
        fill: '#ffffff',
        opacity: 0.7,
      },
    ]
  })
}
