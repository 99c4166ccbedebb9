/**
 * Path data of runs of curves, as small as it comes: whole numbers from point to point, no space that a minus sign makes
 * needless, and the short form where a handle only mirrors the one before it.
 */
export function curvesData(runs: readonly (readonly number[])[]): string {
  let [x, y] = [0, 0]
  const words: string[] = []
  for (const run of runs) {
    const whole = run.map(Math.round)
    words.push(
      words.length === 0
        ? `M${tight([at(whole, 0), at(whole, 1)])}`
        : `m${tight([at(whole, 0) - x, at(whole, 1) - y])}`,
    )
    ;[x, y] = [at(whole, 0), at(whole, 1)]
    let mirror: readonly [number, number] | null = null
    for (let i = 2; i + 5 < whole.length; i += 6) {
      const [ax, ay, bx, by, ex, ey] = [0, 1, 2, 3, 4, 5].map(
        (k) => at(whole, i + k) - (k % 2 === 0 ? x : y),
      ) as Six
      // One unit is less than the eye can see; the mirrored handle then stands for the given one.
      const short = mirror !== null && Math.abs(mirror[0] - ax) <= 1 && Math.abs(mirror[1] - ay) <= 1
      words.push(short ? `s${tight([bx, by, ex, ey])}` : `c${tight([ax, ay, bx, by, ex, ey])}`)
      mirror = [ex - bx, ey - by]
      ;[x, y] = [x + ex, y + ey]
    }
  }
  return words.join('')
}

type Six = [number, number, number, number, number, number]

function at(numbers: readonly number[], index: number): number {
  const value = numbers[index] ?? Number.NaN
  if (!Number.isFinite(value)) throw new RangeError(`A drawing has the number ${value} in it.`)
  // `+ 0` turns -0 into 0.
  return value + 0
}

const tight = (numbers: readonly number[]): string =>
  numbers.map((n, i) => (i === 0 || n < 0 ? String(n) : ` ${n}`)).join('')
