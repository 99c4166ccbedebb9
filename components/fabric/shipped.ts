import type { Pattern, Row } from '../../engine/pattern/index.ts'

/** The pattern without what no picture needs, for a page that sends it to the browser. */
export const bare = (pattern: Pattern): Pattern => ({
  ...pattern,
  setUp: pattern.setUp.map(unwritten),
  rows: pattern.rows.map(unwritten),
  about: { also: [], notToConfuseWith: [], teaches: [], corrections: [] },
})

const unwritten = (row: Row): Row => ({ ...row, text: '' })
