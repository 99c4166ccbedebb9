import type { Fabric } from '../fabric.ts'
import type { Mesh, MeshMaking } from './mesh.ts'
import { addHeads, addHeldPiece } from './mesh-heads.ts'
import { addLine } from './mesh-lines.ts'

/** The nodes of a fabric, and what lies between them. */
export function meshOf(fabric: Fabric): Mesh {
  const castOn = new Set(fabric.lines[0]?.loops)
  const otherPiece = fabric.loops.filter(({ id, row }) => row === -1 && !castOn.has(id))
  const making: MeshMaking = {
    fabric,
    otherPiece: new Set(otherPiece.map(({ id }) => id)),
    nodes: 0,
    base: [],
    heads: fabric.loops.map(() => []),
    top: [],
    lines: [],
    besides: [],
    uprights: [],
    cells: [],
  }
  for (const [index, line] of fabric.lines.entries()) addLine(making, index, line)
  addHeads(making)
  addHeldPiece(making)
  return making
}
