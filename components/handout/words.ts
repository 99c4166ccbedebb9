import type { Paper, Print, Section } from '../../engine/lesson/index.ts'

/** What may stand on the paper, as the builder names it. */
export const sectionWords: Readonly<Record<Section, string>> = {
  plan: 'A page with the running order',
  picture: 'The lace, blocked and unblocked',
  bring: 'What to bring',
  key: 'The stitches',
  chart: 'The chart',
  stuck: '“Stuck?”',
  notes: 'Lines for notes',
  homework: 'Until next time',
  'row cards': 'A card for each row, to cut out',
}

export const paperWords: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'US Letter' }

export const printWords: Readonly<Record<Print, { readonly name: string; readonly says: string }>> = {
  usual: { name: 'Usual', says: '12 points' },
  large: { name: 'Large', says: '24 points, black on white, one column; everything without the chart' },
  easier: { name: 'Easier to read', says: '13 points, wide spacing, a tinted sheet' },
  'left-handed': {
    name: 'Left-handed',
    says: 'for who knits from the right needle to the left one: chart, order and leans the other way round',
  },
  'for copying': { name: 'For copying', says: 'black lines and type that stay legible on a copy of 70 %' },
}
