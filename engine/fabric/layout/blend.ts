import type { FabricLayout } from '../fabric.ts'
import { at } from './at.ts'

/** The fabric on its way from one layout (t = 0) to another (t = 1): each loop goes straight to its new place. */
export function blendLayouts(a: FabricLayout, b: FabricLayout, t: number): FabricLayout {
  const blend = (from: Float64Array, to: Float64Array): Float64Array => {
    if (from.length !== to.length) throw new Error('layout: only layouts of one fabric can be blended')
    return from.map((value, i) => (1 - t) * value + t * at(to, i))
  }
  return {
    state: t < 0.5 ? a.state : b.state,
    baseX: blend(a.baseX, b.baseX),
    baseY: blend(a.baseY, b.baseY),
    headX: blend(a.headX, b.headX),
    headY: blend(a.headY, b.headY),
    residual: Math.max(a.residual, b.residual),
  }
}
