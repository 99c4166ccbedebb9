import type { Fabric, FabricLoopId } from '../fabric.ts'

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

/** What lies between neighbours of one line and what was made of them. */
export interface MeshCell {
  /** 'gather': a decrease brings two loops to one place; 'spread': an increase; 'step': where a row was turned. */
  readonly kind: 'plain' | 'gather' | 'spread' | 'step'
  /** Anticlockwise from the lower left; four in a plain cell, else three. */
  readonly nodes: readonly number[]
  /** Nodes on the cell's upper side that hang from nothing below, from the left. */
  readonly over: readonly number[]
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
  /** Loops that neither this piece made nor its cast-on: they wait on a holder to be joined. */
  readonly otherPiece: ReadonlySet<FabricLoopId>
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

export const newNode = (making: MeshMaking): number => making.nodes++
