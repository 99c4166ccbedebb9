import type { Drawing, Node, Segment, TextNode } from '../drawing/index.ts'

const otherAnchor = { start: 'end', end: 'start', middle: 'middle' } as const

/** Numbers that are x, y, x, y …, with every x on the other side of 0. */
const flipped = (numbers: readonly number[]): number[] => numbers.map((n, i) => (i % 2 === 0 ? -n : n))

function flippedSegment(segment: Segment): Segment {
  const [letter, ...numbers] = segment
  return [letter, ...flipped(numbers)] as unknown as Segment
}

/** Words stay words: they change their place, not their letters. */
const flippedText = (node: TextNode): TextNode => ({ ...node, x: -node.x, anchor: otherAnchor[node.anchor] })

function flippedNode(node: Node): Node {
  switch (node.kind) {
    case 'path':
      return { ...node, d: node.d.map(flippedSegment) }
    case 'line':
      return { ...node, x1: -node.x1, x2: -node.x2 }
    case 'polyline':
      return { ...node, points: node.points.map(([x, y]) => [-x, y] as const) }
    case 'rect':
      return { ...node, x: -node.x - node.width }
    case 'circle':
      return { ...node, x: -node.x }
    case 'text':
      return flippedText(node)
    case 'curves':
      return { ...node, runs: node.runs.map(flipped), between: (node.between ?? []).map(flippedNode) }
    case 'group': {
      const turned = node.rotate === undefined ? {} : { rotate: -node.rotate }
      return { ...node, ...turned, x: -(node.x ?? 0), children: node.children.map(flippedNode) }
    }
  }
}

/** A drawing in the mirror, its words readable. */
export const mirroredDrawing = (drawing: Drawing): Drawing => ({
  ...drawing,
  nodes: [{ kind: 'group', x: drawing.width, children: drawing.nodes.map(flippedNode) }],
})
