import type { Beside, Upright } from './mesh.ts'
import type { Tension } from './tension.ts'

/** How much of the way aside a loop that crosses others has to spare: crossings draw the fabric in. */
const reach = 0.85

/** A spring, wherever it is. */
export type Pull = { readonly length: number; readonly stiffness: number }

/** From one loop to its neighbour. */
export function besideSpring({ kind }: Beside, { width, height, over, overStiffness }: Tension): Pull {
  switch (kind) {
    case 'over':
      return { length: over, stiffness: overStiffness }
    case 'strand':
      return { length: 0.8 * width, stiffness: 0.6 }
    case 'siblings':
      return { length: 0.6 * width, stiffness: 1 }
    case 'float':
      return { length: width, stiffness: 0.5 }
    case 'held':
      // One is joined in two rows, as a rule.
      return { length: 2 * height, stiffness: 0.2 }
    case 'step':
      return { length: width, stiffness: 0.3 }
    case 'plain':
      return { length: width, stiffness: 1 }
  }
}

/** From a loop's base to its head. */
export function uprightSpring({ kind, aside }: Readonly<Upright>, { width, height }: Tension): Pull {
  switch (kind) {
    case 'over':
      return { length: height, stiffness: 0.5 }
    case 'slipped':
      return { length: 0.85 * height, stiffness: 0.8 }
    case 'below':
      return { length: 1.8 * height, stiffness: 0.3 }
    case 'chain':
      return { length: 0.95 * width, stiffness: 1 }
    case 'held':
      return { length: height, stiffness: 0.5 }
    case 'plain':
      return { length: Math.sqrt(height * height + (reach * aside * width) ** 2), stiffness: 1 }
  }
}
