import type { Curve } from './geometry.ts'
import type { Shape } from './shape.ts'

/** A piece in one place and one look. */
interface Copy {
  readonly shape: Shape
  readonly place: number
}

/** All copies of a piece in a step, and where it lies in each scene that has it. */
interface Track {
  readonly copies: Copy[]
  readonly curves: (Curve | undefined)[]
  readonly shown: (number | undefined)[]
}

export interface Copies {
  readonly pieces: readonly Shape[]
  readonly scenes: readonly { readonly curves: readonly Curve[]; readonly shown: readonly boolean[] }[]
}

/**
 * Every piece of a step in every layer and look that it has there: what goes behind or before something else is there
 * twice, and one of the two is shown. A scene that has not got a piece keeps it where the nearest one has it, unseen.
 */
export function copiesOf(scenes: readonly (readonly Shape[])[]): Copies {
  const tracks = new Map<string, Track>()
  const pieces: Shape[] = []
  for (const [scene, shapes] of scenes.entries()) {
    for (const shape of shapes) {
      const track = tracks.get(shape.key) ?? { copies: [], curves: [], shown: [] }
      tracks.set(shape.key, track)
      let copy = track.copies.find((one) => one.shape.layer === shape.layer && one.shape.look === shape.look)
      if (copy === undefined) {
        copy = { shape, place: pieces.length }
        track.copies.push(copy)
        pieces.push(shape)
      }
      track.curves[scene] = shape.curve
      track.shown[scene] = copy.place
    }
  }
  return {
    pieces,
    scenes: scenes.map((_, scene) => {
      const curves: Curve[] = new Array(pieces.length)
      const shown: boolean[] = new Array(pieces.length)
      for (const track of tracks.values()) {
        const curve = track.curves[scene] ?? nearest(track.curves, scene, scenes.length)
        for (const { place } of track.copies) {
          curves[place] = curve
          shown[place] = track.shown[scene] === place
        }
      }
      return { curves, shown }
    }),
  }
}

function nearest(curves: readonly (Curve | undefined)[], scene: number, count: number): Curve {
  for (let away = 1; away < count; away++) {
    const found = curves[scene - away] ?? curves[scene + away]
    if (found !== undefined) return found
  }
  return []
}
