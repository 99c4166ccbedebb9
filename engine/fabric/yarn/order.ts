/** One thing must lie beneath another. Where such rules go round in a ring, the softest gives way; 0 never does. */
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
  const kept = new Set(rules)
  for (;;) {
    const { depths, stuck } = settle(count, kept)
    if (stuck.size === 0) return depths
    kept.delete(softest(ringIn(stuck, kept)))
  }
}

function settle(count: number, rules: Iterable<Rule>): { depths: number[]; stuck: ReadonlySet<number> } {
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

/** Rules that go round in a ring: everything stuck waits for something stuck, so going down must come round again. */
function ringIn(stuck: ReadonlySet<number>, rules: Iterable<Rule>): readonly Rule[] {
  const into = new Map<number, Rule>()
  // Of several rules the hardest is followed, so that a ring is as hard as can be and what gives way is chosen late.
  for (const rule of rules) {
    if (!stuck.has(rule.below) || !stuck.has(rule.above)) continue
    const other = into.get(rule.above)
    if (other === undefined || rule.softness < other.softness) into.set(rule.above, rule)
  }
  const path: Rule[] = []
  const seen = new Map<number, number>()
  let [at] = into.keys()
  while (at !== undefined && !seen.has(at)) {
    seen.set(at, path.length)
    const rule = into.get(at)
    if (rule === undefined) break
    path.push(rule)
    at = rule.below
  }
  return path.slice(seen.get(at ?? -1) ?? 0)
}

function softest(ring: readonly Rule[]): Rule {
  const [first, ...rest] = ring
  if (first === undefined) throw new Error('yarn: nothing lies beneath and yet something waits')
  const rule = rest.reduce((most, one) => (one.softness > most.softness ? one : most), first)
  if (rule.softness === 0) throw new Error('yarn: loops that lie over each other in a ring')
  return rule
}
