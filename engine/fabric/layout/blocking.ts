import { at } from './at.ts'
import type { Mesh } from './mesh.ts'
import type { Anchors } from './network.ts'

/** How far a pin pulls a point of a wavy edge out, in stitch widths. */
const pull = 0.35
/** A side is pinned out straight when it is no more crooked than this, or than this share of the piece's width. */
const crooked = { least: 1.2, ofWidth: 0.05 } as const
/** A side that slants by no more than this (sine of the angle) is pinned upright. */
const upright = 0.3
/** How far a point must stand out from its edge to get a pin. */
const standsOut = 0.25
/** Nodes this close to a point are part of it: the foot of a wave may be two loops wide. */
const alike = 0.02
const pinStiffness = 4

interface Anchor {
  readonly node: number
  readonly normalX: number
  readonly normalY: number
  readonly offset: number
}

/**
 * Pins for a piece that lies as `places` has it: along straight sides, and at the points of wavy edges, pulled outward.
 * A side is straight when it is so there or in the plain grid: a free piece may curl where its count never changes.
 */
export function blockingPins(mesh: Mesh, places: Float64Array, grid: Float64Array): Anchors {
  const lines = mesh.lines.filter((line) => line.length > 1)
  const side = (end: 0 | -1): number[] => [...new Set(lines.map((line) => line.at(end) ?? -1))]
  const top = at(lines, lines.length - 1)
  const anchors = [
    ...sidePins(side(0), places, grid, -1),
    ...sidePins(side(-1), places, grid, 1),
    ...points(at(lines, 0), places, 0, -1),
    ...points(top, places, 0, 1),
  ]
  return {
    node: Int32Array.from(anchors, ({ node }) => node),
    normalX: Float64Array.from(anchors, ({ normalX }) => normalX),
    normalY: Float64Array.from(anchors, ({ normalY }) => normalY),
    offset: Float64Array.from(anchors, ({ offset }) => offset),
    stiffness: new Float64Array(anchors.length).fill(pinStiffness),
  }
}

function sidePins(
  nodes: readonly number[],
  places: Float64Array,
  grid: Float64Array,
  outward: -1 | 1,
): Anchor[] {
  if (nodes.length < 3) return []
  const line = fitted(nodes, places)
  const most = Math.max(crooked.least, crooked.ofWidth * widthOf(places))
  if (offLine(nodes, places, line) > most && offLine(nodes, grid, fitted(nodes, grid)) > most)
    return points(nodes, places, outward, 0)
  return nodes.map((node) => ({ node, ...line }))
}

function widthOf(places: Float64Array): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i < places.length; i += 2) {
    least = Math.min(least, at(places, i))
    most = Math.max(most, at(places, i))
  }
  return most - least
}

type Line = Omit<Anchor, 'node'>

const offLine = (
  nodes: readonly number[],
  places: Float64Array,
  { normalX, normalY, offset }: Line,
): number =>
  Math.max(
    ...nodes.map((node) =>
      Math.abs(normalX * at(places, 2 * node) + normalY * at(places, 2 * node + 1) - offset),
    ),
  )

/** The line that the nodes of a side come nearest to. */
function fitted(nodes: readonly number[], places: Float64Array): Line {
  const mean = (e: 0 | 1): number =>
    nodes.reduce((sum, node) => sum + at(places, 2 * node + e), 0) / nodes.length
  const [mx, my] = [mean(0), mean(1)]
  let [xx, xy, yy] = [0, 0, 0]
  for (const node of nodes) {
    const [dx, dy] = [at(places, 2 * node) - mx, at(places, 2 * node + 1) - my]
    xx += dx * dx
    xy += dx * dy
    yy += dy * dy
  }
  // The side runs along the longer axis of its scatter. Square roots come out alike everywhere, angles need not.
  const half = (xx - yy) / 2
  const root = Math.sqrt(half * half + xy * xy)
  const [dx, dy] = half >= 0 ? [half + root, xy] : [xy, root - half]
  const length = Math.sqrt(dx * dx + dy * dy) || 1
  const [normalX, normalY] = [dy / length, -dx / length]
  if (Math.abs(normalY) < upright) return { normalX: 1, normalY: 0, offset: mx }
  return { normalX, normalY, offset: normalX * mx + normalY * my }
}

/** A pin at each point of an edge that stands out, some way further out. */
function points(nodes: readonly number[], places: Float64Array, normalX: number, normalY: number): Anchor[] {
  const out = nodes.map((node) => normalX * at(places, 2 * node) + normalY * at(places, 2 * node + 1))
  if (Math.max(...out) - Math.min(...out) < standsOut) return []
  return nodes.flatMap((node, i) =>
    prominence(out, i) < standsOut ? [] : [{ node, normalX, normalY, offset: at(out, i) + pull }],
  )
}

/** How far one must come in from a point before going further out elsewhere. The ends of an edge are no points. */
function prominence(out: readonly number[], index: number): number {
  const here = at(out, index)
  const towards = (step: -1 | 1): number => {
    let deepest = 0
    for (let i = index + step; i >= 0 && i < out.length; i += step) {
      const rise = at(out, i) - here
      if (rise > alike) return deepest
      deepest = Math.max(deepest, -rise)
    }
    return deepest
  }
  return Math.min(towards(-1), towards(1))
}
