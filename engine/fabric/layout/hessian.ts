import { closest } from './energy.ts'
import type { Matrix, Slots } from './matrix.ts'
import type { Network } from './network.ts'

/** What a curvature is written into, and how much of the part that may be negative counts (0: none, 1: all). */
export interface Curvature {
  readonly matrix: Matrix
  readonly slots: Slots
}

/**
 * Writes the second derivatives of the energy into the matrix. With `exact` 0 it is positive: a compressed spring keeps
 * no sideways curvature, an area only that of its lack. With `exact` 1 it is the true one.
 */
export function fillHessian(
  network: Network,
  at: Float64Array,
  { matrix, slots }: Curvature,
  exact: number,
): void {
  matrix.values.fill(0)
  // A trace of stiffness to the ground: a free piece may drift and turn, and the solver must not divide by that.
  for (let i = 0; i < matrix.size; i++) {
    matrix.diagonal[3 * i] = ground
    matrix.diagonal[3 * i + 1] = 0
    matrix.diagonal[3 * i + 2] = ground
  }
  addSprings(network.springs, at, matrix, slots.springs, exact)
  addBends(network.bends, matrix, slots.bends)
  addAreas(network.areas, at, matrix, slots.areas, exact)
  addAnchors(network.anchors, matrix)
}

const ground = 1e-6

function addSprings(
  { a, b, length, stiffness }: Network['springs'],
  at: Float64Array,
  { values, diagonal }: Matrix,
  slots: Int32Array,
  exact: number,
): void {
  for (let s = 0; s < a.length; s++) {
    const i = a[s] as number
    const j = b[s] as number
    const dx = (at[2 * j] as number) - (at[2 * i] as number)
    const dy = (at[2 * j + 1] as number) - (at[2 * i + 1] as number)
    const square = dx * dx + dy * dy + closest
    const k = stiffness[s] as number
    const share = (length[s] as number) / Math.sqrt(square)
    const across = share < 1 ? k * (1 - share) : exact * k * (1 - share)
    const along = (k - across) / square
    const xx = across + along * dx * dx
    const xy = along * dx * dy
    const yy = across + along * dy * dy
    addTo(diagonal, 3 * i, xx, xy, yy)
    addTo(diagonal, 3 * j, xx, xy, yy)
    const slot = 4 * (slots[s] as number)
    values[slot] = (values[slot] as number) - xx
    values[slot + 1] = (values[slot + 1] as number) - xy
    values[slot + 2] = (values[slot + 2] as number) - xy
    values[slot + 3] = (values[slot + 3] as number) - yy
  }
}

function addTo(diagonal: Float64Array, place: number, xx: number, xy: number, yy: number): void {
  diagonal[place] = (diagonal[place] as number) + xx
  diagonal[place + 1] = (diagonal[place + 1] as number) + xy
  diagonal[place + 2] = (diagonal[place + 2] as number) + yy
}

function addBends(
  { a, b, c, stiffness }: Network['bends'],
  { values, diagonal }: Matrix,
  slots: Int32Array,
): void {
  for (let s = 0; s < a.length; s++) {
    const k = stiffness[s] as number
    addTo(diagonal, 3 * (a[s] as number), k, 0, k)
    addTo(diagonal, 3 * (b[s] as number), 4 * k, 0, 4 * k)
    addTo(diagonal, 3 * (c[s] as number), k, 0, k)
    addScaled(values, 4 * (slots[3 * s] as number), -2 * k)
    addScaled(values, 4 * (slots[3 * s + 1] as number), -2 * k)
    addScaled(values, 4 * (slots[3 * s + 2] as number), k)
  }
}

function addScaled(values: Float32Array, slot: number, k: number): void {
  values[slot] = (values[slot] as number) + k
  values[slot + 3] = (values[slot + 3] as number) + k
}

function addAreas(
  { a, b, c, least, stiffness }: Network['areas'],
  at: Float64Array,
  matrix: Matrix,
  slots: Int32Array,
  exact: number,
): void {
  for (let s = 0; s < a.length; s++) {
    const i = a[s] as number
    const j = b[s] as number
    const m = c[s] as number
    const ax = at[2 * i] as number
    const ay = at[2 * i + 1] as number
    const bx = at[2 * j] as number
    const by = at[2 * j + 1] as number
    const cx = at[2 * m] as number
    const cy = at[2 * m + 1] as number
    const lack = least - 0.5 * ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay))
    if (lack <= 0) continue
    const k = 0.25 * stiffness
    const turn = 0.5 * exact * stiffness * lack
    addOuter(matrix, i, by - cy, cx - bx, k)
    addOuter(matrix, j, cy - ay, ax - cx, k)
    addOuter(matrix, m, ay - by, bx - ax, k)
    addPair(matrix.values, 4 * (slots[3 * s] as number), i < j, by - cy, cx - bx, cy - ay, ax - cx, k, turn)
    addPair(
      matrix.values,
      4 * (slots[3 * s + 1] as number),
      j < m,
      cy - ay,
      ax - cx,
      ay - by,
      bx - ax,
      k,
      turn,
    )
    addPair(
      matrix.values,
      4 * (slots[3 * s + 2] as number),
      i < m,
      by - cy,
      cx - bx,
      ay - by,
      bx - ax,
      k,
      -turn,
    )
  }
}

function addOuter({ diagonal }: Matrix, node: number, x: number, y: number, k: number): void {
  addTo(diagonal, 3 * node, k * x * x, k * x * y, k * y * y)
}

/** The block of two corners: the outer product of their slopes, and how the area's slope at one turns with the other. */
function addPair(
  values: Float32Array,
  slot: number,
  upper: boolean,
  px: number,
  py: number,
  qx: number,
  qy: number,
  k: number,
  turn: number,
): void {
  const xy = k * px * qy - turn
  const yx = k * py * qx + turn
  values[slot] = (values[slot] as number) + k * px * qx
  values[slot + 1] = (values[slot + 1] as number) + (upper ? xy : yx)
  values[slot + 2] = (values[slot + 2] as number) + (upper ? yx : xy)
  values[slot + 3] = (values[slot + 3] as number) + k * py * qy
}

function addAnchors({ node, normalX, normalY, stiffness }: Network['anchors'], matrix: Matrix): void {
  for (let s = 0; s < node.length; s++) {
    addOuter(matrix, node[s] as number, normalX[s] as number, normalY[s] as number, stiffness[s] as number)
  }
}
