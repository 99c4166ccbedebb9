import type { Network } from './network.ts'

/**
 * The energy of a network, for places of x and y by turns; its gradient goes to `gradient`. Nodes that are held count
 * for the energy, and have no gradient.
 */
export function energyOf(network: Network, at: Float64Array, gradient: Float64Array): number {
  gradient.fill(0)
  const energy =
    springEnergy(network.springs, at, gradient) +
    bendEnergy(network.bends, at, gradient) +
    areaEnergy(network.areas, at, gradient) +
    anchorEnergy(network.anchors, at, gradient)
  for (let node = 0; node < network.nodes; node++) {
    if (network.held[node] === 1) {
      gradient[2 * node] = 0
      gradient[2 * node + 1] = 0
    }
  }
  return energy
}

/** Added to squared distances, so that two nodes in one place still have a direction. */
export const closest = 1e-18

function springEnergy(
  { a, b, length, stiffness }: Network['springs'],
  at: Float64Array,
  gradient: Float64Array,
): number {
  let energy = 0
  for (let s = 0; s < a.length; s++) {
    const i = 2 * (a[s] as number)
    const j = 2 * (b[s] as number)
    const dx = (at[j] as number) - (at[i] as number)
    const dy = (at[j + 1] as number) - (at[i + 1] as number)
    const distance = Math.sqrt(dx * dx + dy * dy + closest)
    const over = distance - (length[s] as number)
    const k = stiffness[s] as number
    energy += 0.5 * k * over * over
    const pull = (k * over) / distance
    gradient[i] = (gradient[i] as number) - pull * dx
    gradient[i + 1] = (gradient[i + 1] as number) - pull * dy
    gradient[j] = (gradient[j] as number) + pull * dx
    gradient[j + 1] = (gradient[j + 1] as number) + pull * dy
  }
  return energy
}

function bendEnergy(
  { a, b, c, stiffness }: Network['bends'],
  at: Float64Array,
  gradient: Float64Array,
): number {
  let energy = 0
  for (let s = 0; s < a.length; s++) {
    const i = 2 * (a[s] as number)
    const j = 2 * (b[s] as number)
    const m = 2 * (c[s] as number)
    const k = stiffness[s] as number
    for (let e = 0; e < 2; e++) {
      const bend = (at[i + e] as number) - 2 * (at[j + e] as number) + (at[m + e] as number)
      energy += 0.5 * k * bend * bend
      const pull = k * bend
      gradient[i + e] = (gradient[i + e] as number) + pull
      gradient[j + e] = (gradient[j + e] as number) - 2 * pull
      gradient[m + e] = (gradient[m + e] as number) + pull
    }
  }
  return energy
}

function areaEnergy(
  { a, b, c, least, stiffness }: Network['areas'],
  at: Float64Array,
  gradient: Float64Array,
): number {
  let energy = 0
  for (let s = 0; s < a.length; s++) {
    const i = 2 * (a[s] as number)
    const j = 2 * (b[s] as number)
    const m = 2 * (c[s] as number)
    const ax = at[i] as number
    const ay = at[i + 1] as number
    const bx = at[j] as number
    const by = at[j + 1] as number
    const cx = at[m] as number
    const cy = at[m + 1] as number
    const lack = least - 0.5 * ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay))
    if (lack <= 0) continue
    energy += 0.5 * stiffness * lack * lack
    const push = -0.5 * stiffness * lack
    gradient[i] = (gradient[i] as number) + push * (by - cy)
    gradient[i + 1] = (gradient[i + 1] as number) + push * (cx - bx)
    gradient[j] = (gradient[j] as number) + push * (cy - ay)
    gradient[j + 1] = (gradient[j + 1] as number) + push * (ax - cx)
    gradient[m] = (gradient[m] as number) + push * (ay - by)
    gradient[m + 1] = (gradient[m + 1] as number) + push * (bx - ax)
  }
  return energy
}

function anchorEnergy(
  { node, normalX, normalY, offset, stiffness }: Network['anchors'],
  at: Float64Array,
  gradient: Float64Array,
): number {
  let energy = 0
  for (let s = 0; s < node.length; s++) {
    const i = 2 * (node[s] as number)
    const nx = normalX[s] as number
    const ny = normalY[s] as number
    const off = nx * (at[i] as number) + ny * (at[i + 1] as number) - (offset[s] as number)
    const k = stiffness[s] as number
    energy += 0.5 * k * off * off
    gradient[i] = (gradient[i] as number) + k * off * nx
    gradient[i + 1] = (gradient[i + 1] as number) + k * off * ny
  }
  return energy
}
