import { maybe, number, text, type Wording } from './wording.ts'

/** Problems with a file, its keys and the way its rows are listed. */
export const fileWordings = {
  'file-missing': {
    about: 'The file named does not exist, or is a folder.',
    message: () => 'there is no such file',
    hint: () => 'check the name and the folder',
  },
  'file-unreadable': {
    about: 'The file is there, but it cannot be opened.',
    message: () => 'the file cannot be opened',
    hint: () => 'check that you may read it',
  },
  'file-empty': {
    about: 'There is nothing in the file.',
    message: () => 'the file is empty',
    hint: () => 'a pattern needs at least a title, a castOn and rows',
  },
  'file-too-large': {
    about: 'A pattern file holds a few thousand characters. A much larger one is something else.',
    message: (v) =>
      `the file has ${number(v, 'characters')} characters; a pattern file has at most ${number(v, 'most')}`,
    hint: () => 'is this the right file? Keep pictures and long texts out of it',
  },
  'file-not-a-pattern': {
    about: 'The file does not consist of keys such as title, castOn and rows.',
    message: () => 'this is not a pattern file: it does not begin with keys such as title, castOn and rows',
    hint: () => 'write `title: …`, `castOn: …` and `rows:` with one row a line',
  },
  'encoding-unknown': {
    about: 'Pattern files are saved as UTF-8. Older programs save accented letters in other ways.',
    message: (v) => `the file is in ${text(v, 'encoding')}, not in UTF-8`,
    hint: () => 'save it again as UTF-8',
  },
  'control-character': {
    about:
      'Invisible characters that steer a machine or turn the reading direction have no place in a pattern.',
    message: (v) => `an invisible control character (U+${text(v, 'code')}) stands here`,
    hint: () => 'delete it; it may have come in by copying',
  },
  'yaml-broken': {
    about: 'The file is not put together as keys and values, so nothing in it can be read for certain.',
    message: (v) => text(v, 'reason'),
  },
  'yaml-alias': {
    about:
      'A * outside a row stands for a piece of text elsewhere in the file; pattern files say everything in its place.',
    message: () => 'a text cannot begin with * here',
    hint: () => 'put it in quotes',
  },
  'key-unknown': {
    about: 'A key that pattern files do not have, perhaps misspelt.',
    message: (v) => `there is no key \`${text(v, 'key')}\` in a pattern file`,
    hint: maybe,
  },
  'key-missing': {
    about: 'A pattern cannot do without a title, a cast-on and rows.',
    message: (v) => `the key \`${text(v, 'key')}\` is missing`,
    hint: (v) =>
      text(v, 'key') === 'castOn' ? 'such as `castOn: { multiple: 6, plus: 1 }` or `castOn: 23`' : null,
  },
  'value-wrong': {
    about: 'A key has a value of the wrong kind.',
    message: (v) =>
      `\`${text(v, 'key')}\` wants ${text(v, 'expected')}${text(v, 'written') === '' ? '' : `, not \`${text(v, 'written')}\``}`,
  },
  'rows-empty': {
    about: 'There are no rows under `rows`.',
    message: () => 'there are no rows',
    hint: () => 'write one row a line under `rows:`, each after a dash',
  },
  'rows-not-a-list': {
    about: 'Rows are a list, a map from row numbers to rows, or a block with one row a line.',
    message: (v) => `\`${text(v, 'key')}\` is neither a list of rows nor rows by number`,
    hint: () => 'write one row a line, each after a dash: `- k1, *yo, k2tog; rep from * to end`',
  },
  'row-not-text': {
    about: 'A row must be text as a knitter writes it.',
    message: () => 'this row is not text',
    hint: () => 'put the row in quotes',
  },
  'row-heading-wrong': {
    about: 'A row written after a heading needs one like `row 3:` or `rows 2, 4 and 6:`.',
    message: () => 'this is no row heading',
    hint: () => 'write `row 3: …`, `rows 2, 4 and 6: …` or `3-5: …`; put a row with a colon in it in quotes',
  },
  'row-number-wrong': {
    about: 'Rows are numbered from 1.',
    message: (v) => `there can be no row ${number(v, 'number')} here`,
    hint: (v) => `rows are numbered from 1 to ${number(v, 'most')} at most`,
  },
  'row-given-twice': {
    about: 'Two rows have the same number.',
    message: (v) => `row ${number(v, 'number')} is given twice`,
  },
  'row-left-out': {
    about: 'A row number between the first and the last has no row.',
    message: (v) => `row ${number(v, 'number')} is left out, but the rows go on to row ${number(v, 'last')}`,
    hint: (v) => `write row ${number(v, 'number')}, a plain \`purl\` perhaps`,
  },
  'row-as-unknown': {
    about: 'A row that is the same as another must come after it.',
    message: (v) => `there is no row ${number(v, 'number')} before this one`,
  },
  'edges-wrong': {
    about: 'Edge stitches are given as `edges: { before: k3, after: k3 }`.',
    message: () => '`edges` wants `before` and `after`, each a few stitches',
    hint: () => 'such as `edges: { before: k3, after: k3 }`',
  },
  'edge-not-fixed': {
    about: 'Edge stitches are the same number in every row.',
    message: () => 'edge stitches must be a fixed number: no repeat, no `to end`',
    hint: () => 'such as `k3` or `sl1, k2`',
  },
  'too-many-problems': {
    about: 'After a great many problems the rest are only counted.',
    message: (v) => `and ${number(v, 'more')} more problems`,
  },
} satisfies Record<string, Wording>
