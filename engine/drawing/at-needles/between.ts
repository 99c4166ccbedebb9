import type { Frame } from './frames.ts'
import { mix } from './geometry.ts'
import type { Mark } from './mark.ts'

/** The needles on their way from one frame of a step (t = 0) to another (t = 1): every point goes straight to its new place. */
export function between(a: Frame, b: Frame, t: number): Frame {
  if (t <= 0 || a === b) return a
  if (t >= 1) return b
  const nearer = t < 0.5 ? a : b
  return {
    ...nearer,
    description: '',
    fabric: a.fabric === b.fabric ? a.fabric : a.fabric.map((n, i) => n + ((b.fabric[i] ?? n) - n) * t),
    curves: a.curves.map((curve, k) => {
      const to = b.curves[k]
      return to === undefined || to === curve ? curve : curve.map((n, i) => n + ((to[i] ?? n) - n) * t)
    }),
    marks: marksBetween(a.marks, b.marks, t),
  }
}

/** Marks that both frames have are on their way; the others belong to loops that hang still. */
function marksBetween(a: readonly Mark[], b: readonly Mark[], t: number): Mark[] {
  const to = new Map(b.map((mark) => [mark.key, mark]))
  return a.flatMap((mark): Mark[] => {
    const other = to.get(mark.key)
    if (other === undefined || other.kind !== mark.kind) return []
    const nearer = t < 0.5 ? mark : other
    const at = mix(mark.at, other.at, t)
    if (mark.kind !== 'label' || other.kind !== 'label') return [{ ...nearer, at }]
    return [{ ...mark, at, box: mix(mark.box, other.box, t) }]
  })
}
