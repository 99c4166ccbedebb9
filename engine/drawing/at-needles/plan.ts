import type { Frames, Piece } from './frames.ts'

/** Pieces of a step that are drawn together: of the fabric, of one needle or of one loop, as far as they lie in one layer. */
export interface Group {
  readonly key: string
  readonly kind: 'fabric' | 'needle' | 'yarn'
  readonly look: Piece['look']
  /** Places in `Frames.fabric` or, for anything but fabric, in `Frames.pieces`. */
  readonly places: readonly number[]
}

const remembered = new WeakMap<Frames, readonly Group[]>()

/** The groups of a step from the back to the front: the same for all its frames. */
export function planOf(frames: Frames): readonly Group[] {
  const known = remembered.get(frames)
  if (known !== undefined) return known
  const plan = groupsOf(frames).sort((a, b) => a.layer - b.layer)
  remembered.set(frames, plan)
  return plan
}

interface Growing extends Group {
  readonly layer: number
  readonly places: number[]
}

function groupsOf({ fabric, pieces }: Frames): Growing[] {
  const groups = new Map<string, Growing>()
  const add = (name: string, kind: Group['kind'], { layer, look }: Piece, place: number): void => {
    const key = `${name}-${layer}`
    const group = groups.get(key) ?? { key, kind, look, layer, places: [] }
    groups.set(key, group)
    group.places.push(place)
  }
  for (const [place, piece] of fabric.entries()) add('fabric', 'fabric', piece, place)
  for (const [place, piece] of pieces.entries()) {
    const isNeedle = piece.look === 'needle' || piece.look === 'line' || piece.look === 'gleam'
    if (isNeedle) add(piece.key.split(' ')[0] ?? piece.key, 'needle', piece, place)
    else add(`${isPlain(piece) ? 'loops' : nameOf(piece)}-${piece.look}`, 'yarn', piece, place)
  }
  return [...groups.values()]
}

const nameOf = ({ loop }: Piece): string => (loop === null ? 'yarn' : `loop-${loop}`)

/** Of a loop that has no part in the step, and not the half that stands for it: such do not cross in one layer. */
const isPlain = ({ look, front }: Piece): boolean => look === 'yarn' && front !== true
