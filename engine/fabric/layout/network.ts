/** Two nodes drawn to a distance: energy stiffness · (distance - length)² / 2. */
export interface Springs {
  readonly a: Int32Array
  readonly b: Int32Array
  readonly length: Float64Array
  readonly stiffness: Float64Array
}

/** Three nodes drawn into an even, straight run: energy stiffness · |a - 2b + c|² / 2. */
export interface Bends {
  readonly a: Int32Array
  readonly b: Int32Array
  readonly c: Int32Array
  readonly stiffness: Float64Array
}

/** Triangles, anticlockwise, that resist once they are smaller than `least`: energy stiffness · (least - area)² / 2. */
export interface Areas {
  readonly a: Int32Array
  readonly b: Int32Array
  readonly c: Int32Array
  readonly least: number
  readonly stiffness: number
}

/** Nodes drawn to a line: energy stiffness · (normal · place - offset)² / 2. */
export interface Anchors {
  readonly node: Int32Array
  readonly normalX: Float64Array
  readonly normalY: Float64Array
  readonly offset: Float64Array
  readonly stiffness: Float64Array
}

/** All that acts on the nodes of a fabric. Places are x and y by turns, two entries a node. */
export interface Network {
  readonly nodes: number
  readonly springs: Springs
  readonly bends: Bends
  readonly areas: Areas
  readonly anchors: Anchors
  /** 1 for a node that stays where it is. */
  readonly held: Uint8Array
}
