/**
 * Path data of runs of curves, as small as it comes: whole numbers from point to point, no space that a minus sign makes
 * needless, and the short form where a handle only mirrors the one before it.
 */
export function curvesData(runs: readonly (readonly number[])[]): string {
  let [x, y] = [0, 0]
  let data = ''
  for (const run of runs) {
    const [startX, startY] = [whole(run, 0), whole(run, 1)]
    data += data === '' ? `M${startX}${tight(startY)}` : `m${startX - x}${tight(startY - y)}`
    ;[x, y] = [startX, startY]
    // The handle that mirrors the last one; none before the first curve.
    let [mirrorX, mirrorY] = [Number.NaN, Number.NaN]
    for (let i = 2; i + 5 < run.length; i += 6) {
      const [ax, ay] = [whole(run, i) - x, whole(run, i + 1) - y]
      const [bx, by] = [whole(run, i + 2) - x, whole(run, i + 3) - y]
      const [ex, ey] = [whole(run, i + 4) - x, whole(run, i + 5) - y]
      // One unit is less than the eye can see; the mirrored handle then stands for the given one.
      const isShort = Math.abs(mirrorX - ax) <= 1 && Math.abs(mirrorY - ay) <= 1
      data += isShort ? `s${bx}` : `c${ax}${tight(ay)}${tight(bx)}`
      data += tight(by) + tight(ex) + tight(ey)
      mirrorX = ex - bx
      mirrorY = ey - by
      x += ex
      y += ey
    }
  }
  return data
}

function whole(numbers: readonly number[], index: number): number {
  const value = numbers[index] ?? Number.NaN
  if (!Number.isFinite(value)) throw new RangeError(`A drawing has the number ${value} in it.`)
  // `+ 0` turns -0 into 0.
  return Math.round(value) + 0
}

const tight = (n: number): string => (n < 0 ? String(n) : ` ${n}`)
