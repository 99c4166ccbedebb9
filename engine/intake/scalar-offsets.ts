/**
 * For each character of a YAML scalar's value, where it stands in the file. Plain, quoted, folded and block scalars
 * alike: walks the source and the value side by side, so that a problem in a row points into the file.
 * @param source the scalar as it stands in the file (quotes and block header included)
 * @param start its offset in the file
 * @returns a function from an offset in the value (its length included) to an offset in the file
 */
export function scalarOffsets(source: string, start: number, value: string): (offset: number) => number {
  const at = new Array<number>(value.length + 1)
  let s = /^[|>]/.test(source) ? Math.max(0, source.indexOf('\n')) : /^["']/.test(source) ? 1 : 0
  for (let v = 0; v < value.length; v++) {
    const wanted = value[v] ?? ''
    if (source[0] === '"' && source[s] === '\\') {
      at[v] = start + s
      s += escapeLength(source, s)
    } else if (source[s] === wanted) {
      at[v] = start + s
      s += 1
      if (wanted === "'" && source[0] === "'" && source[s] === "'") s += 1
    } else if (/\s/.test(wanted)) {
      // A fold: one blank in the value for a run of white space in the file.
      at[v] = start + Math.min(s, source.length)
      while (s < source.length && /\s/.test(source[s] ?? '') && source[s] !== value[v + 1]) s++
    } else {
      const next = source.indexOf(wanted, s)
      at[v] = start + Math.min(next < 0 ? s : next, source.length)
      s = next < 0 ? s : next + 1
    }
  }
  at[value.length] = value.length > 0 ? (at[value.length - 1] ?? start) + 1 : start
  return (offset) => at[Math.max(0, Math.min(offset, value.length))] ?? start
}

/** Characters of a double-quoted escape: \n, \x41, é, \U0001F9F6. */
function escapeLength(source: string, at: number): number {
  const lengths: Record<string, number> = { x: 4, u: 6, U: 10 }
  return lengths[source[at + 1] ?? ''] ?? 2
}
