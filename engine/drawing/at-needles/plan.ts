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
    const loop = piece.loop === null ? 'yarn' : `loop-${piece.loop}`
    if (isNeedle) add(piece.key.split(' ')[0] ?? piece.key, 'needle', piece, place)
    else add(`${loop}-${piece.look}`, 'yarn', piece, place)
  }
  return [...groups.values()]
}
