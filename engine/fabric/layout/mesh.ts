import type { Fabric, FabricLoopId } from '../fabric.ts'
import type { MeshCell } from './cells.ts'
import { addHeads, addHeldPiece } from './mesh-heads.ts'
import { addLine } from './mesh-lines.ts'

/**
 * Two neighbours in a line, left one first. 'step': one of them was left alone by the row; 'siblings': from one parent;
 * 'held': joined loops of another piece.
 */
export interface Beside {
  readonly left: number
  readonly right: number
  readonly kind: 'plain' | 'over' | 'strand' | 'siblings' | 'float' | 'step' | 'held'
}

/** A loop, or the part of a slipped loop that one row passes, from the node at its foot to one at its top. */
export interface Upright {
  readonly loop: FabricLoopId
  readonly foot: number
  readonly top: number
  /** 'held': a loop of another piece; 'below': what a lifted increase adds to a loop that was worked before. */
  readonly kind: 'plain' | 'over' | 'slipped' | 'below' | 'chain' | 'held'
  /** Over how many neighbours it runs, where loops cross or one is passed over several. */
  aside: number
}

/**
 * The fabric as nodes: one where each loop leaves its parents, one where a slipped loop passes a row, one for each
 * head that nothing was drawn through. A loop's head is where its child begins, so a decrease gathers by itself.
 */
export interface Mesh {
  readonly nodes: number
  /** By loop: the node of its base, and the nodes of its head (several after an increase). */
  readonly base: readonly number[]
  readonly heads: readonly (readonly number[])[]
  /** For each line of the fabric, and one more for the heads on the needle: its nodes from the left. */
  readonly lines: readonly (readonly number[])[]
  readonly besides: readonly Beside[]
  readonly uprights: readonly Readonly<Upright>[]
  readonly cells: readonly MeshCell[]
}

export interface MeshMaking {
  readonly fabric: Fabric
  nodes: number
  readonly base: number[]
  readonly heads: number[][]
  /** By loop: the highest node that it has so far. */
  readonly top: number[]
  readonly lines: number[][]
  readonly besides: Beside[]
  readonly uprights: Upright[]
  readonly cells: MeshCell[]
}

export function meshOf(fabric: Fabric): Mesh {
  const making: MeshMaking = {
    fabric, nodes: 0, base: [], heads: fabric.loops.map(() => []), top: [], lines: [], besides: [], uprights: [], cells: [],
  }
  for (const [index, line] of fabric.lines.entries()) addLine(making, index, line)
  addHeads(making)
  addHeldPiece(making)
  return making
}

export const newNode = (making: MeshMaking): number => making.nodes++
