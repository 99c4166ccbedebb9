/** '3', '3 and 5', '3, 5 and 7'. */
export function listed(items: readonly (string | number)[]): string {
  if (items.length <= 1) return items.join('')
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
}

/** 'row 3', 'rows 3 and 5'; in the round 'round 3'. */
export const rowsNamed = (rows: readonly number[], what: 'row' | 'round' = 'row'): string =>
  `${what}${rows.length === 1 ? '' : 's'} ${listed(rows)}`

export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

export const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

/** 'a multiple of 6 plus 1'. */
export const ruleWords = (rule: { readonly multiple: number; readonly plus: number }): string =>
  `a multiple of ${rule.multiple}${rule.plus > 0 ? ` plus ${rule.plus}` : ''}`
