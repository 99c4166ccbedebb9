/** One thing must lie beneath another. Where such rules contradict each other, the softest gives way; 0 never does. */
export interface Rule {
  readonly below: number
  readonly above: number
  readonly softness: 0 | 1 | 2 | 3
}

/**
 * Depths from 0 up for `count` things: each one more than the deepest chain of what must lie beneath it. So nothing is
 * tied with what it must lie over, and there are as few depths as can be.
 */
export function depthsOf(count: number, rules: readonly Rule[]): readonly number[] {
  let kept = rules
  for (;;) {
    const { depths, stuck } = settle(count, kept)
    if (stuck.size === 0) return depths
    const inKnot = ({ below, above }: Rule): boolean => stuck.has(below) && stuck.has(above)
    const softest = kept.reduce((most, rule) => (inKnot(rule) ? Math.max(most, rule.softness) : most), 0)
    if (softest === 0) throw new Error('yarn: loops that lie over each other in a ring')
    kept = kept.filter((rule) => rule.softness < softest || !inKnot(rule))
  }
}

function settle(count: number, rules: readonly Rule[]): { depths: number[]; stuck: ReadonlySet<number> } {
  const depths = Array.from({ length: count }, () => 0)
  const waiting = Array.from({ length: count }, () => 0)
  const above = Array.from({ length: count }, (): number[] => [])
  for (const rule of rules) {
    waiting[rule.above] = (waiting[rule.above] ?? 0) + 1
    above[rule.below]?.push(rule.above)
  }
  const ready = depths.flatMap((_, i) => (waiting[i] === 0 ? [i] : []))
  for (let next = ready.pop(); next !== undefined; next = ready.pop()) {
    for (const one of above[next] ?? []) {
      depths[one] = Math.max(depths[one] ?? 0, (depths[next] ?? 0) + 1)
      waiting[one] = (waiting[one] ?? 0) - 1
      if (waiting[one] === 0) ready.push(one)
    }
  }
  return { depths, stuck: new Set(depths.flatMap((_, i) => ((waiting[i] ?? 0) > 0 ? [i] : []))) }
}
