/**
 * Paint and names that any node may carry. Looks are presentation attributes, which a page's classes may overrule;
 * `currentColor` is the ink, so that a drawing by itself is black on nothing.
 */
export interface Look {
  /** Stable identity: a loop, a needle or a cell. Written as data-key. */
  readonly key?: string
  readonly className?: string
  /** Written as data-… attributes; names in camel case or with hyphens. */
  readonly data?: Readonly<Record<string, string>>
  readonly fill?: string
  readonly fillOpacity?: number
  readonly stroke?: string
  readonly strokeWidth?: number
  readonly cap?: 'butt' | 'round' | 'square'
  readonly join?: 'miter' | 'round' | 'bevel'
  readonly dash?: readonly number[]
  readonly opacity?: number
}

/** One piece of a path: the letters of SVG path data with their numbers, in absolute coordinates. */
export type Segment =
  | readonly ['M' | 'L', number, number]
  | readonly ['Q', number, number, number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z']

export interface PathNode extends Look {
  readonly kind: 'path'
  readonly d: readonly Segment[]
}
export interface LineNode extends Look {
  readonly kind: 'line'
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}
export interface PolylineNode extends Look {
  readonly kind: 'polyline'
  readonly points: readonly (readonly [number, number])[]
}
export interface RectNode extends Look {
  readonly kind: 'rect'
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** Radius of the corners. */
  readonly corner?: number
}
export interface CircleNode extends Look {
  readonly kind: 'circle'
  readonly x: number
  readonly y: number
  readonly radius: number
}
export interface TextNode extends Look {
  readonly kind: 'text'
  readonly text: string
  readonly x: number
  /** The baseline. */
  readonly y: number
  readonly size: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly bold?: boolean
}
/**
 * Curves by the hundred, in whole units: each run has its start and then two handles and an end for every curve. They are
 * written once, small, and drawn once for each coat of paint, the first coat lowest.
 */
export interface CurvesNode extends Look {
  readonly kind: 'curves'
  readonly runs: readonly (readonly number[])[]
  readonly coats: readonly Look[]
  /** What lies over the first coat and under the others. */
  readonly between?: readonly Node[]
}
/** Children moved by (x, y), turned by `rotate` degrees, clockwise, about the moved origin, and enlarged by `scale`. */
export interface GroupNode extends Look {
  readonly kind: 'group'
  readonly x?: number
  readonly y?: number
  readonly rotate?: number
  readonly scale?: number
  readonly children: readonly Node[]
}

export type Node =
  | PathNode
  | LineNode
  | PolylineNode
  | RectNode
  | CircleNode
  | TextNode
  | CurvesNode
  | GroupNode

/** A picture as plain data: what is drawn later lies on top. x goes right, y goes down from the upper left corner. */
export interface Drawing {
  readonly width: number
  readonly height: number
  /** What one drawing unit is at the drawing's own size: a CSS pixel or a millimetre on paper. */
  readonly unit: 'px' | 'mm'
  /** Its accessible name. */
  readonly title: string
  /** What it shows, in a sentence or two; empty where the title says it all. */
  readonly description: string
  readonly nodes: readonly Node[]
}

/** Visits every node, groups before their children. */
export function* nodesOf(nodes: readonly Node[]): Generator<Node> {
  for (const node of nodes) {
    yield node
    if (node.kind === 'group') yield* nodesOf(node.children)
    if (node.kind === 'curves') yield* nodesOf(node.between ?? [])
  }
}
