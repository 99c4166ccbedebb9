import { type CurvesNode, type Drawing, type FabricOptions, fabricDrawing, type Look, type Node } from '../../engine/drawing/index.ts'
import { type Cloth, yarnAt } from './cloth.ts'

/** Drawing units a stitch in curves of a small picture: finer than the eye sees at that size. */
const unitsAStitch = 40
/** The engine's own. */
const unitsBefore = 100

/** The cloth small, blocked, right side: for recognising a pattern. `stitch` is in CSS pixels. */
export function thumbnailDrawing(cloth: Cloth, stitch: number, options: FabricOptions = {}): Drawing {
  const drawing = fabricDrawing(yarnAt(cloth, 1), {
    stitch,
    title: `${cloth.worked.pattern.title}: the fabric, right side, blocked`,
    ...options,
  })
  return { ...drawing, nodes: drawing.nodes.map((node) => coarser(node, unitsAStitch / unitsBefore)) }
}

/** The outer group is drawn in fewer and larger units: a third fewer bytes, and nothing that can be seen is lost. */
const coarser = (node: Node, by: number): Node =>
  node.kind === 'group'
    ? { ...node, scale: (node.scale ?? 1) / by, children: node.children.map((child) => shrunk(child, by)) }
    : node

function shrunk(node: Node, by: number): Node {
  switch (node.kind) {
    case 'curves':
      return curvesShrunk(node, by)
    case 'circle':
      return { ...lookShrunk(node, by), x: node.x * by, y: node.y * by, radius: node.radius * by }
    default:
      // A small picture has neither marks nor labels.
      throw new Error(`a thumbnail has no ${node.kind}`)
  }
}

const curvesShrunk = (node: CurvesNode, by: number): Node => ({
  ...lookShrunk(node, by),
  runs: node.runs.map((run) => run.map((value) => Math.round(value * by))),
  coats: node.coats.map((coat) => lookShrunk(coat, by)),
})

const lookShrunk = <L extends Look>(look: L, by: number): L => ({
  ...look,
  ...(look.strokeWidth !== undefined && { strokeWidth: look.strokeWidth * by }),
  ...(look.dash && { dash: look.dash.map((length) => length * by) }),
})
