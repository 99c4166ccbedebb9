/** How many letters must change to make one word the other (neighbours swapped count as one change). */
function distance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  for (let i = 1; i <= a.length; i++) {
    const above = rows[i - 1] ?? []
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1
      let best = Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (above[j - 1] ?? 0) + change)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (rows[i - 2]?.[j - 2] ?? 0) + 1)
      }
      row.push(best)
    }
    rows.push(row)
  }
  return rows[a.length]?.[b.length] ?? 0
}

/** The known word nearest to what was written, or null where none is near enough to be meant. */
export function closestWord(written: string, known: Iterable<string>): string | null {
  const word = written.toLowerCase().slice(0, 40)
  const furthest = word.length <= 3 ? 1 : 2
  let best: string | null = null
  let least = furthest + 1
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) > furthest) continue
    const far = distance(word, candidate.toLowerCase())
    if (far < least) [best, least] = [candidate, far]
  }
  return best
}

/** The words that a hint can end with: a question where there is a near word, nothing otherwise. */
export const didYouMean = (written: string, known: Iterable<string>): string =>
  closestWord(written, known) ?? ''
