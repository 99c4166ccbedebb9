import { type Drawing, type GroupNode, nodesOf } from './display.ts'

type Point = readonly [number, number]

/** What changes between two drawings, by key. Drawing units. */
export interface StepMoves {
  /** In both, in the same place. */
  readonly stays: readonly string[]
  readonly moves: readonly { readonly key: string; readonly from: Point; readonly to: Point }[]
  /** In the later drawing only. */
  readonly enters: readonly { readonly key: string; readonly to: Point }[]
  /** In the earlier drawing only. */
  readonly leaves: readonly { readonly key: string; readonly from: Point }[]
}

/** Where every keyed group of a drawing stands. */
function placesOf(drawing: Drawing): ReadonlyMap<string, Point> {
  const groups = [...nodesOf(drawing.nodes)].filter(
    (node): node is GroupNode & { key: string } => node.kind === 'group' && node.key !== undefined,
  )
  return new Map(groups.map(({ key, x = 0, y = 0 }) => [key, [x, y] as const]))
}

const same = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1]

/** What moves from one drawing to the next. Taken the other way round, it is the same moves run backwards. */
export function stepMoves(before: Drawing, after: Drawing): StepMoves {
  const [old, fresh] = [placesOf(before), placesOf(after)]
  const both = [...fresh].flatMap(([key, to]) => {
    const from = old.get(key)
    return from ? [{ key, from, to }] : []
  })
  return {
    stays: both.filter(({ from, to }) => same(from, to)).map(({ key }) => key),
    moves: both.filter(({ from, to }) => !same(from, to)),
    enters: [...fresh].filter(([key]) => !old.has(key)).map(([key, to]) => ({ key, to })),
    leaves: [...old].filter(([key]) => !fresh.has(key)).map(([key, from]) => ({ key, from })),
  }
}
