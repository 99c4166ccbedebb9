import type { WorkedPattern } from '../../needles/index.ts'
import { type Look, type Set, type Shape, setOf, shapesIn } from './actors.ts'
import type { SheetPiece } from './sheet.ts'
import { contextOf, type StepContext } from './step-context.ts'
import { layers } from './layers.ts'
import type { Curve } from './geometry.ts'
import type { Hold } from './yarn-pose.ts'

/** A step of a row to be seen at the needles. */
export interface StepView {
  readonly worked: WorkedPattern
  /** Index into the worked pattern's rows, and into the row's steps. */
  readonly rowIndex: number
  readonly stepIndex: number
  /** The hand that holds the needle the stitches come on. Left-handers see everything the other way round. */
  readonly hand?: 'right' | 'left'
  /** Where the yarn comes from: the right hand, or the left forefinger. 'English' if not said. */
  readonly hold?: Hold
}

/** A piece that is in every frame of a step, with the same number of curves in each. */
export interface Piece {
  readonly key: string
  readonly layer: number
  readonly look: Look
  readonly loop: number | null
}

export interface Frame {
  /** What the hands do to come here; empty for the first. */
  readonly words: string
  /** Where one may stop and look; the others are only passed. */
  readonly stop: boolean
  /** By the places of `Frames.fabric`: the numbers of all pieces, one after the other. */
  readonly fabric: Float64Array
  /** By the places of `Frames.pieces`. */
  readonly curves: readonly Curve[]
  readonly shown: readonly boolean[]
}

export interface Frames {
  readonly fabric: readonly Piece[]
  readonly from: readonly number[]
  readonly pieces: readonly Piece[]
  readonly frames: readonly Frame[]
}

export function atNeedles({ worked, rowIndex, stepIndex, hold = 'English' }: StepView): Frames | null {
  const context = contextOf(worked, rowIndex, stepIndex, hold)
  if (context === null) return null
  const remembered = new Map<string, Float64Array>()
  const sets = context.told.map((_, i) => setOf(context, i, remembered))
  const shapes = sets.map(shapesIn)
  const pieces = copiesOf(shapes)
  const still = stillPieces(context)
  return {
    fabric: still.map(({ piece }) => ({ key: piece.key, layer: layers.fabric + piece.depth, look: 'below', loop: piece.loop })),
    from: fromOf(still),
    pieces: [...pieces.values()].map(({ key, layer, look, loop }) => ({ key, layer, look, loop })),
    frames: sets.map((set, i) => frameOf(set, shapes, i, [...pieces.values()], still, context)),
  }
}

const copyKey = ({ key, layer, look }: Shape): string => `${key}@${layer}/${look}`

/** Every piece in every layer and look that it has in the step. */
function copiesOf(shapes: readonly (readonly Shape[])[]): Map<string, Shape> {
  const copies = new Map<string, Shape>()
  for (const shape of shapes.flat()) {
    const name = copyKey(shape)
    if (!copies.has(name)) copies.set(name, shape)
  }
  return copies
}

interface Still {
  readonly piece: SheetPiece
  readonly at: number
}

function stillPieces({ cloth, before, after, numbers, rowIndex }: StepContext): Still[] {
  const made = new Set(before.made)
  const gone = new Set(after.made)
  const row = new Set(before.sheet.after.fabric.courses[rowIndex + 1])
  const held = new Set([...before.left, ...before.right, ...after.left, ...after.right].map(({ loop }) => loop))
  for (const [, loop] of numbers) held.add(loop)
  return cloth.pieces.flatMap((piece, at): Still[] => {
    const isThere = (!row.has(piece.arrives) || made.has(piece.arrives)) && (piece.until === null || !gone.has(piece.until))
    const isHeld = /^(leg|half)/.test(piece.part) && held.has(piece.loop)
    return isThere && !isHeld ? [{ piece, at }] : []
  })
}

function fromOf(still: readonly Still[]): number[] {
  const from = [0]
  for (const { piece } of still) from.push((from.at(-1) ?? 0) + piece.made.length)
  return from
}

function frameOf(set: Set, shapes: readonly (readonly Shape[])[], index: number, pieces: readonly Shape[], still: readonly Still[], { cloth, told }: StepContext): Frame {
  const fabric = new Float64Array(still.reduce((sum, { piece }) => sum + piece.made.length, 0))
  let to = 0
  for (const { piece, at } of still) {
    const from = cloth.from[at] ?? 0
    fabric.set(set.places.subarray(from, from + piece.made.length), to)
    to += piece.made.length
  }
  const here = new Map((shapes[index] ?? []).map((shape) => [shape.key, shape]))
  const found = pieces.map(({ key }) => here.get(key) ?? nearest(shapes, index, key))
  return {
    words: told[index]?.words ?? '',
    stop: told[index]?.stop ?? true,
    fabric,
    curves: found.map((shape) => shape?.curve ?? []),
    shown: pieces.map((piece) => {
      const shape = here.get(piece.key)
      return shape !== undefined && shape.layer === piece.layer && shape.look === piece.look
    }),
  }
}

/** Where a piece is that this scene has not: as in the nearest scene that has it. */
function nearest(shapes: readonly (readonly Shape[])[], index: number, key: string): Shape | undefined {
  for (let away = 1; away < shapes.length; away++) {
    for (const other of [index - away, index + away]) {
      const found = shapes[other]?.find((shape) => shape.key === key)
      if (found !== undefined) return found
    }
  }
  return undefined
}
