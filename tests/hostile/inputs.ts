/** Files that nobody should send and somebody will. All of them must be told as problems, none may stop the check. */

export interface Input {
  readonly name: string
  readonly content: string | Uint8Array
  /** Where the first error must stand, where that is beyond dispute. */
  readonly line?: number
  readonly column?: number
  readonly row?: number
  /** What the message of some error must contain. */
  readonly says?: string | RegExp
}

const file = (...lines: string[]): string => `${lines.join('\n')}\n`

/** A sound pattern around the given rows; row 1 is on line 4. */
const rows = (...written: string[]): string =>
  file(
    'title: Test',
    'castOn: { multiple: 6, plus: 1 }',
    'rows:',
    ...written.map((row) => `  - ${JSON.stringify(row)}`),
  )

/** A sound pattern with one line more; that line is line 5. */
const withKey = (line: string): string => file('title: Test', 'castOn: 5', 'rows:', '  - knit', line)

const bytes = (...parts: (string | number[])[]): Uint8Array =>
  Uint8Array.from(
    parts.flatMap((part) => (typeof part === 'string' ? [...Buffer.from(part, 'latin1')] : part)),
  )

const utf16 = (text: string, mark: boolean): Uint8Array =>
  Buffer.from((mark ? '\ufeff' : '') + text, 'utf16le')

const bigEndian = (text: string): Uint8Array => Buffer.from(`\ufeff${text}`, 'utf16le').swap16()

const sound = file(
  'title: Test',
  'castOn: { multiple: 6, plus: 1 }',
  'rows:',
  '  - k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end',
  '  - purl',
)

/** Each level names the one before nine times: laid out it has 9^9 entries. */
const aliasBomb = file(
  'a: &a [lace, lace, lace, lace, lace, lace, lace, lace, lace]',
  ...[...'bcdefghi'].map((name, i) => {
    const before = 'abcdefgh'[i]
    return `${name}: &${name} [${Array.from({ length: 9 }, () => `*${before}`).join(', ')}]`
  }),
  'title: Test',
  'castOn: 5',
  'rows: *i',
)

const structure: readonly Input[] = [
  { name: 'empty', content: '' },
  { name: 'white space', content: ' \n\n\t\n' },
  { name: 'a comment alone', content: '# nothing here\n' },
  {
    name: 'broken yaml, a bracket left open',
    content: file('title: Test', 'castOn: { multiple: 6, plus: 1', 'rows:', '  - knit'),
  },
  {
    name: 'broken yaml, a quote left open',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - "knit', '  - purl'),
  },
  { name: 'broken yaml, a tab for indent', content: file('title: Test', 'castOn: 5', 'rows:', '\t- knit') },
  { name: 'two documents', content: `${sound}---\n${sound}` },
  { name: 'a list', content: file('- knit', '- purl') },
  { name: 'a number', content: '12\n' },
  { name: 'a sentence', content: 'Cast on seven stitches and knit.\n' },
  { name: 'the same key twice', content: withKey('title: Other'), line: 5, column: 1 },
  { name: 'an unknown key', content: withKey('castOff: loosely'), line: 5, column: 1, says: 'castOff' },
  {
    name: 'an unknown key in edges',
    content: withKey('edges: { before: k2, behind: k2 }'),
    line: 5,
  },
  {
    name: '__proto__',
    content: withKey('__proto__: { growing: true }'),
    line: 5,
    column: 1,
    says: '__proto__',
  },
  {
    name: '__proto__ in castOn',
    content: file('title: Test', 'castOn: { __proto__: { multiple: 6 }, plus: 1 }', 'rows:', '  - knit'),
    line: 2,
  },
  {
    name: 'constructor',
    content: withKey('constructor: { prototype: { growing: true } }'),
    line: 5,
    column: 1,
    says: 'constructor',
  },
  { name: 'toString', content: withKey('toString: 1'), line: 5, column: 1, says: 'toString' },
  { name: 'alias bomb', content: aliasBomb },
  { name: 'an alias to itself', content: file('title: Test', 'castOn: 5', 'rows: &r', '  - knit', '  - *r') },
  {
    name: 'yaml lists ten thousand deep',
    content: `title: Test\ncastOn: 5\nrows: ${'['.repeat(10_000)}${']'.repeat(10_000)}\n`,
  },
  {
    name: 'yaml maps ten thousand deep',
    content: `title: Test\ncastOn: ${'{a: '.repeat(10_000)}1${'}'.repeat(10_000)}\n`,
  },
]

const values: readonly Input[] = [
  { name: 'no title', content: file('castOn: 5', 'rows:', '  - knit') },
  { name: 'no cast-on', content: file('title: Test', 'rows:', '  - knit') },
  { name: 'no rows', content: file('title: Test', 'castOn: 5') },
  { name: 'rows are a number', content: file('title: Test', 'castOn: 5', 'rows: 5'), line: 3 },
  { name: 'rows are none', content: file('title: Test', 'castOn: 5', 'rows: []'), line: 3 },
  { name: 'rows are nothing', content: file('title: Test', 'castOn: 5', 'rows:'), line: 3 },
  { name: 'a row is empty', content: rows('knit', ''), line: 5 },
  {
    name: 'a row is a number',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - knit', '  - 7'),
    line: 5,
  },
  { name: 'a row is a list', content: file('title: Test', 'castOn: 5', 'rows:', '  - [knit]'), line: 4 },
  ...[
    '0',
    '-3',
    '2.5',
    '1e999',
    '.inf',
    '.nan',
    '99999999999999999999',
    'many',
    '[]',
    '{}',
    '{ multiple: -6, plus: 1 }',
    '{ multiple: 6, plus: -7 }',
    '{ multiple: 1e308, plus: 1 }',
    '{ multiple: 6, plus: one }',
    'true',
    '',
  ].map((castOn) => ({
    name: `castOn: ${castOn}`,
    content: file('title: Test', `castOn: ${castOn}`, 'rows:', '  - knit'),
    line: 2,
  })),
  { name: 'worked sideways', content: withKey('worked: sideways'), line: 5 },
  { name: 'first side left', content: withKey('firstSide: left'), line: 5 },
  { name: 'growing maybe', content: withKey('growing: maybe'), line: 5 },
  { name: 'needle infinite', content: withKey('needle: .inf'), line: 5 },
  { name: 'needle negative', content: withKey('needle: -4'), line: 5 },
  { name: 'title a list', content: file('title: [a, b]', 'castOn: 5', 'rows:', '  - knit'), line: 1 },
]

const notation: readonly Input[] = [
  { name: 'ss k', content: rows('k1, yo, ss k, k4'), line: 4, column: 14, row: 1, says: 'ssk' },
  { name: 'k2tgo', content: rows('knit', 'p1, yo, k2tgo, p4'), line: 5, column: 14, row: 2, says: 'k2tog' },
  { name: 'an unknown word', content: rows('k1, wibble, k5'), line: 4, column: 10, row: 1, says: 'wibble' },
  { name: 'a repeat left open', content: rows('k1, *yo, ssk, k4'), line: 4, column: 10, row: 1 },
  { name: 'a bracket left open', content: rows('k1, [yo, ssk twice, k2'), line: 4, column: 10, row: 1 },
  { name: 'a bracket closed twice', content: rows('k1, (yo, ssk)), k4'), line: 4, row: 1 },
  { name: 'a repeat of no star', content: rows('k1, yo, ssk; rep from * to end'), line: 4, row: 1 },
  {
    name: 'a row that leaves stitches',
    content: rows('k1, *yo, ssk, k3; rep from * to end'),
    line: 4,
    row: 1,
  },
  {
    name: 'a fixed row that needs more',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - knit', '  - k6'),
    line: 5,
    row: 2,
  },
  {
    name: 'a count that is not back',
    content: rows('k1, *yo, k6; rep from * to end', 'purl'),
    line: 5,
    row: 2,
  },
  {
    name: 'a repeat that can never close',
    content: rows('*k2tog, yo, k1; rep from * to end'),
    line: 4,
    row: 1,
  },
  { name: 'a repeat that takes nothing', content: rows('*yo; rep from * to end'), line: 4, row: 1 },
  { name: 'a repeat of nothing', content: rows('*; rep from * to end'), line: 4, row: 1 },
  { name: 'brackets of nothing', content: rows('() 3 times, k7'), line: 4, row: 1 },
  {
    name: 'a repeat within a repeat',
    content: rows('*k1, *yo, k2tog; rep from * to last st, k1; rep from * to end'),
    line: 4,
    row: 1,
  },
  { name: 'a row that names itself', content: rows('as row 1'), line: 4, row: 1 },
  { name: 'two rows that name each other', content: rows('as row 2', 'as row 1') },
  { name: 'a row that names none', content: rows('knit', 'as row 9'), line: 5, row: 2 },
  {
    name: 'a million repeats',
    content: file('title: Test', 'castOn: 1000000', 'rows:', '  - "[k1] 1000000 times"'),
  },
  {
    name: 'a thousand thousands',
    content: file('title: Test', 'castOn: 1000000', 'rows:', '  - "[[k1] 1000 times] 1000 times"'),
  },
  {
    name: 'brackets that multiply',
    content: file('title: Test', 'castOn: 5', 'rows:', `  - "${'['.repeat(9)}k1${'] 99 times'.repeat(9)}"`),
  },
  {
    name: 'brackets that multiply beyond all counting',
    content: rows(`${'['.repeat(11)}k1${'] 1000000 times'.repeat(11)}`),
    line: 4,
    row: 1,
  },
  { name: 'a number of twenty digits', content: rows('k99999999999999999999'), line: 4, row: 1 },
  { name: 'no times at all', content: rows('[k1, yo] 0 times, k7'), line: 4, row: 1 },
  { name: 'knit none', content: rows('k0, k7'), line: 4, row: 1 },
  { name: 'a negative number', content: rows('k-3, k10'), line: 4, row: 1 },
  {
    name: 'brackets five thousand deep',
    content: rows(`${'('.repeat(5_000)}k1${')'.repeat(5_000)}`),
    line: 4,
  },
  { name: 'five thousand brackets left open', content: rows('['.repeat(5_000)), line: 4 },
  { name: 'five thousand stars', content: rows('*'.repeat(5_000)), line: 4 },
  { name: 'commas alone', content: rows(','.repeat(5_000)), line: 4 },
]

const sizes: readonly Input[] = [
  { name: 'a megabyte of notes', content: `${sound}notes: ${'lace '.repeat(220_000)}\n` },
  {
    name: 'a megabyte in one row',
    content: file('title: Test', 'castOn: 5', 'rows:', `  - ${'k1, '.repeat(260_000)}k1`),
  },
  { name: 'a megabyte of one word', content: 'k'.repeat(1_100_000) },
  {
    name: 'a megabyte of keys',
    content: Array.from({ length: 60_000 }, (_, i) => `key${i}: ${i}`).join('\n'),
  },
  {
    name: 'two thousand rows',
    content: file('title: Test', 'castOn: 5', 'rows:', ...Array.from({ length: 2_000 }, () => '  - knit')),
  },
  { name: 'ten thousand unknown words', content: rows('wibble, '.repeat(2_000)), line: 4 },
]

const encodings: readonly Input[] = [
  {
    name: 'latin-1',
    content: bytes('title: Rosace d', [0xe9], 'ploy', [0xe9], 'e\ncastOn: 5\nrows:\n  - knit\n'),
  },
  { name: 'utf-16 with its mark', content: utf16(sound, true) },
  { name: 'utf-16 without a mark', content: utf16(sound, false) },
  { name: 'utf-16, big end first', content: bigEndian(sound) },
  {
    name: 'half a character',
    content: bytes('title: Test ', [0xe2, 0x82], '\ncastOn: 5\nrows:\n  - knit\n'),
  },
  {
    name: 'a picture',
    content: bytes([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d, 0x49, 0x48, 0x44, 0x52]),
  },
  { name: 'a nul in the title', content: file('title: Te\0st', 'castOn: 5', 'rows:', '  - knit'), line: 1 },
  { name: 'a nul in a row', content: file('title: Test', 'castOn: 5', 'rows:', '  - k1\0, k4'), line: 4 },
  {
    name: 'a nul in a quoted row',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - "k1\\0, k4"'),
    line: 4,
  },
  {
    name: 'escape codes in a row',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - "k1, \\e[31mk4"'),
    line: 4,
  },
  {
    name: 'escape codes in the title',
    content: file('title: "Te\\e[31mst"', 'castOn: 5', 'rows:', '  - knit'),
    line: 1,
  },
  { name: 'a bell in a row', content: file('title: Test', 'castOn: 5', 'rows:', '  - "k1\\a, k4"'), line: 4 },
  {
    name: 'text turned round in a row',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - "k1, \u202ek4"'),
    line: 4,
  },
  {
    name: 'text turned round by an escape in the title',
    content: file('title: "Te\\u202est"', 'castOn: 5', 'rows:', '  - knit'),
    line: 1,
  },
  {
    name: 'text turned round in the title',
    content: file('title: "Te\u202est"', 'castOn: 5', 'rows:', '  - knit'),
    line: 1,
  },
  { name: 'an isolate left open in the notes', content: withKey('notes: "from \u2067here"'), line: 5 },
  {
    name: 'half a surrogate pair',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - "k1, \\uD83E, k4"'),
    line: 4,
  },
]

/** The same mistakes in files with the line ends of another system: places must not shift. */
const lineEnds: readonly Input[] = [
  {
    name: 'crlf, ss k',
    content: rows('knit', 'k1, yo, ss k, k4').replaceAll('\n', '\r\n'),
    line: 5,
    column: 14,
    row: 2,
    says: 'ssk',
  },
  {
    name: 'crlf, an unknown key',
    content: withKey('castOff: loosely').replaceAll('\n', '\r\n'),
    line: 5,
    column: 1,
    says: 'castOff',
  },
  {
    name: 'crlf, broken yaml',
    content: file('title: Test', 'castOn: 5', 'rows:', '  - "knit').replaceAll('\n', '\r\n'),
  },
  {
    name: 'characters outside the first plane before the word',
    content: rows('k1, 🧶, ss k'),
    line: 4,
    row: 1,
  },
]

export const hostile: readonly Input[] = [
  ...structure,
  ...values,
  ...notation,
  ...sizes,
  ...encodings,
  ...lineEnds,
]

/** Files that look odd and are right. */
export const harmless: readonly Input[] = [
  { name: 'plain', content: sound },
  { name: 'crlf', content: sound.replaceAll('\n', '\r\n') },
  { name: 'with a byte order mark', content: `\ufeff${sound}` },
  { name: 'no line end at the end', content: sound.trimEnd() },
  { name: 'a title in another script', content: sound.replace('Test', 'Ажур 🧶 ניסיון') },
]

/** Whether these are read or refused is the reader's choice; they too must have an answer. */
export const eitherWay: readonly Input[] = [
  {
    name: 'a multiple without a plus',
    content: file('title: Test', 'castOn: { multiple: 6 }', 'rows:', '  - "*k6; rep from * to end"'),
  },
  { name: 'a tag of another language', content: withKey('notes: !!js/function "function () {}"') },
  {
    name: 'an anchor used once',
    content: file('title: &t Test', 'castOn: 5', 'rows:', '  - knit', 'notes: *t'),
  },
  {
    name: 'a title as long as a page',
    content: file(`title: ${'lace '.repeat(600)}`, 'castOn: 5', 'rows:', '  - knit'),
  },
  { name: 'unicode spaces between stitches', content: rows('k1,\u00a0yo,\u2003ssk,\u200b k4') },
]
