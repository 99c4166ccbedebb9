import type { Item, Pattern, Row } from '../../engine/pattern/index.ts'

/** The pattern without what no picture needs, for a page that sends it to the browser: no words, and no places in a file. */
export const bare = (pattern: Pattern): Pattern => ({
  ...pattern,
  setUp: pattern.setUp.map(unwritten),
  rows: pattern.rows.map(unwritten),
  edges: { before: pattern.edges.before.map(unplaced), after: pattern.edges.after.map(unplaced) },
  about: { also: [], notToConfuseWith: [], teaches: [], corrections: [] },
})

const nowhere = { start: 0, end: 0 }

const unwritten = (row: Row): Row => ({ ...row, text: '', span: nowhere, items: row.items.map(unplaced) })

const unplaced = (item: Item): Item =>
  item.kind === 'group' || item.kind === 'repeat'
    ? { ...item, span: nowhere, items: item.items.map(unplaced) }
    : { ...item, span: nowhere }
