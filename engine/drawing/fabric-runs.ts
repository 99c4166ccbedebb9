/** Curves that follow each other made one run, and halves of one curve made whole: what is drawn alike is written once. */
export function runsOf(curves: readonly (readonly number[])[]): number[][] {
  const runs: number[][] = []
  for (const curve of curves) {
    const last = runs.at(-1)
    if (last === undefined || last.at(-2) !== curve[0] || last.at(-1) !== curve[1]) {
      runs.push([...curve])
      continue
    }
    const whole = curve.length === 8 ? uncut(last.slice(-8), curve) : null
    if (whole === null) last.push(...curve.slice(2))
    else last.splice(-6, 6, ...whole)
  }
  return runs
}

/** Two halves of one curve put together again; null where they are none. In whole units, so up to rounding. */
function uncut(a: readonly number[], b: readonly number[]): number[] | null {
  const whole: number[] = []
  for (const k of [0, 1]) {
    const [p0, a1, a2, m] = [at(a, k), at(a, k + 2), at(a, k + 4), at(a, k + 6)]
    const [b1, b2, p3] = [at(b, k + 2), at(b, k + 4), at(b, k + 6)]
    const [first, second] = [2 * a1 - p0, 2 * b2 - p3]
    const middle = (first + second) / 2
    const fits = [
      [(a1 + middle) / 2, a2],
      [(b2 + middle) / 2, b1],
      [(a2 + b1) / 2, m],
    ].every(([is = 0, was = 0]) => Math.abs(is - was) < 2.5)
    if (!fits) return null
    whole[k] = first
    whole[k + 2] = second
    whole[k + 4] = p3
  }
  return whole
}

const at = (numbers: readonly number[], index: number): number => numbers[index] ?? Number.NaN

/** Where another piece lies over the start or the end of a curve. */
export interface Covered {
  readonly start: boolean
  readonly end: boolean
}

/** The curve run on by a little beneath what lies over its ends, the way that it goes there: so that no gap shows. */
export function runOn(curve: readonly number[], covered: Covered, by: number): readonly number[] {
  const longer = covered.end ? longerAtEnd(curve, by) : curve
  return covered.start ? backwards(longerAtEnd(backwards(longer), by)) : longer
}

const longerAtEnd = (curve: readonly number[], by: number): number[] => [
  ...curve.slice(0, -8),
  ...beyond(curve.slice(-8), by),
]

function backwards(curve: readonly number[]): number[] {
  const result: number[] = []
  for (let i = curve.length - 2; i >= 0; i -= 2) result.push(at(curve, i), at(curve, i + 1))
  return result
}

/** One cubic taken past its end. */
function beyond(cubic: readonly number[], by: number): number[] {
  const reach = Math.hypot(at(cubic, 6) - at(cubic, 4), at(cubic, 7) - at(cubic, 5))
  const t = 1 + Math.min(0.25, by / Math.max(1, 3 * reach))
  const result: number[] = []
  for (const k of [0, 1]) {
    const [p0, p1, p2, p3] = [at(cubic, k), at(cubic, k + 2), at(cubic, k + 4), at(cubic, k + 6)]
    const mix = (a: number, b: number): number => a + (b - a) * t
    const [a, b, c] = [mix(p0, p1), mix(p1, p2), mix(p2, p3)]
    const [d, e] = [mix(a, b), mix(b, c)]
    result[k] = p0
    result[k + 2] = a
    result[k + 4] = d
    result[k + 6] = mix(d, e)
  }
  return result
}

/** A piece with an end of yarn in two: what is drawn as any yarn, and the tip. */
export function cutNearEnd(
  curve: readonly number[],
  end: 'start' | 'end',
): readonly [readonly number[], readonly number[]] {
  if (end === 'start') {
    const [main, tip] = cutNearEnd(backwards(curve), 'end')
    return [backwards(main), backwards(tip)]
  }
  const [before, last] = [curve.slice(0, -8), curve.slice(-8)]
  const halves = halved(last)
  return [[...before, ...halves[0]], halves[1]]
}

function halved(cubic: readonly number[]): readonly [number[], number[]] {
  const [first, second]: [number[], number[]] = [[], []]
  for (const k of [0, 1]) {
    const [p0, p1, p2, p3] = [at(cubic, k), at(cubic, k + 2), at(cubic, k + 4), at(cubic, k + 6)]
    const [a, b, c] = [(p0 + p1) / 2, (p1 + p2) / 2, (p2 + p3) / 2]
    const [d, e] = [(a + b) / 2, (b + c) / 2]
    for (const [i, value] of [p0, a, d, (d + e) / 2].entries()) first[k + 2 * i] = value
    for (const [i, value] of [(d + e) / 2, e, c, p3].entries()) second[k + 2 * i] = value
  }
  return [first, second]
}
