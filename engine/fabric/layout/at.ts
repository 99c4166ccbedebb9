/** An entry that must be there. Throws where it is not: a stray index would fold the fabric without a word. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const value = list[index]
  if (value === undefined) throw new Error(`layout: there is no entry ${index} among ${list.length}`)
  return value
}
