import { heightAt, type Point } from './geometry.ts'
import { layers, leftLayers, type NeedleLayers, rightLayers } from './layers.ts'
import { cableLine, holderBelow } from './loop-shapes.ts'
import type { NeedlePlace } from './needle-places.ts'
import { cableCurve, type NeedlePart, needleParts, pinCurve } from './needle-pose.ts'
import type { Look, Shape } from './shape.ts'
import type { Staged } from './staged.ts'

/** Both needles, each in two stretches: up to where it crosses the other one, and from there to its tip. */
export function needleShapes({ scene, stage }: Staged): Shape[] {
  const { left, right } = stage
  return [
    ...needle('left', left, Math.max(0, left.tip - left.split), leftLayers),
    ...needle('right', right, Math.max(0, right.split - right.tip), rightLayers(scene)),
    ...cable({ scene, stage }),
    ...holder({ stage }),
  ]
}

const looks: Readonly<Record<NeedlePart, Look>> = {
  body: 'needle',
  upper: 'line',
  lower: 'line',
  gleam: 'gleam',
}

/** Beyond the picture's edge. */
const end = 16

function needle(
  side: 'left' | 'right',
  place: NeedlePlace,
  split: number,
  { shaft, tip }: NeedleLayers,
): Shape[] {
  const crossing = split * Math.hypot(1, place.line.rise)
  const stretch = (name: string, from: number, to: number, layer: number): Shape[] =>
    [...needleParts(place, side, from, to)].map(([part, curve]) => ({
      key: `needle-${side} ${name} ${part}`,
      curve,
      layer,
      look: looks[part],
      loop: null,
    }))
  return [
    ...stretch('shaft', crossing, end, shaft),
    ...(crossing > 0.01 ? stretch('tip', 0, crossing, tip) : []),
  ]
}

function cable({ scene, stage }: Pick<Staged, 'scene' | 'stage'>): Shape[] {
  const { cable } = scene.hands
  const xs = (cable?.loops ?? []).map((name) => stage.places.get(name)?.x ?? 0)
  if (cable === null || xs.length === 0) return []
  const x = xs.reduce((sum, one) => sum + one, 0) / xs.length
  const curve = cableCurve([x, cableLine(scene, stage).height], 0.95 + xs.length * 0.35)
  const layer = cable.where === 'front' ? layers.cableBefore : layers.cableBehind
  return [
    { key: 'needle-cable body', curve, layer, look: 'needle', loop: null },
    { key: 'needle-cable line', curve, layer, look: 'line', loop: null },
  ]
}

/** A pin that loops of another piece wait on. */
function holder({ stage }: Pick<Staged, 'stage'>): Shape[] {
  const place = stage.places.get('held 1')
  if (place?.on !== 'holder') return []
  const y = heightAt(stage.left.line, place.x) - holderBelow
  const end = (by: number): Point => [place.x + by, y + (by > 0 ? 0.02 : -0.06)]
  return pinShapes('holder', end(-0.95), end(0.8), layers.cableBehind)
}

/** A pin with its outline. */
export function pinShapes(name: string, from: Point, to: Point, layer: number): Shape[] {
  const curve = pinCurve(from, to)
  return [
    { key: `${name} body`, curve, layer, look: 'needle', loop: null },
    { key: `${name} line`, curve, layer, look: 'line', loop: null },
  ]
}
