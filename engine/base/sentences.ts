import type { Issue } from './issue.ts'
import { printable } from './source.ts'

/** A problem in words: what is wrong and why, and what to try. */
export interface Sentence {
  readonly message: string
  /** What to try, or null where the message says it all. */
  readonly hint: string | null
}

type Values = Issue['values']
interface Wording {
  /** For the page of problems: what this problem is, in general. */
  readonly about: string
  readonly message: (v: Values) => string
  readonly hint?: (v: Values) => string | null
}

const number = (v: Values, name: string): number => Number(v[name] ?? 0)
const text = (v: Values, name: string): string => printable(String(v[name] ?? ''))
const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`
const times = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`
const maybe = (v: Values): string | null => (text(v, 'suggestion') === '' ? null : `did you mean \`${text(v, 'suggestion')}\`?`)

/** '6 per repeat plus 1', as the count after a row is written. */
export function countWords(perRepeat: number, plus: number): string {
  if (perRepeat === 0) return String(plus)
  if (plus === 0) return `${perRepeat} a repeat`
  return `${perRepeat} a repeat ${plus > 0 ? 'plus' : 'less'} ${Math.abs(plus)}`
}

const rule = (v: Values): string => {
  if (number(v, 'multiple') === 0) return `exactly ${stitches(number(v, 'plus'))}`
  const plus = number(v, 'plus')
  return `a multiple of ${number(v, 'multiple')}${plus > 0 ? ` plus ${plus}` : ''}`
}

const forRepeats = (v: Values): string =>
  number(v, 'fixed') === 1 ? '' : ` for ${times(number(v, 'repeats'), 'repeat')}`

/** What would make a repeat of the wrong width fit. */
function unevenHint(v: Values): string {
  const [meant, width] = [number(v, 'meant'), number(v, 'width')]
  if (meant > 0) {
    const missing = meant - width
    const change = missing > 0 ? `took ${stitches(missing)} more, a k${missing} or the like left out perhaps` : `took ${stitches(-missing)} fewer`
    return `It would fit if the repeat ${change}: ${meant} instead of ${width}.`
  }
  const [over, ends] = [number(v, 'over'), number(v, 'ends')]
  const end = ends > 0 ? ' (the stitches before and after the repeat counted in)' : ''
  return `It would fit if the stitches outside the repeat took ${over} more or ${width - over} fewer${end}, or on another cast-on.`
}

const wordings = {
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
    message: (v) => `the file has ${number(v, 'characters')} characters; a pattern file has at most ${number(v, 'most')}`,
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
    about: 'Invisible characters that steer a machine or turn the reading direction have no place in a pattern.',
    message: (v) => `an invisible control character (U+${text(v, 'code')}) stands here`,
    hint: () => 'delete it; it may have come in by copying',
  },
  'yaml-broken': {
    about: 'The file is not put together as keys and values, so nothing in it can be read for certain.',
    message: (v) => text(v, 'reason'),
  },
  'yaml-alias': {
    about: 'A * outside a row stands for a piece of text elsewhere in the file; pattern files say everything in its place.',
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
    hint: (v) => (text(v, 'key') === 'castOn' ? 'such as `castOn: { multiple: 6, plus: 1 }` or `castOn: 23`' : null),
  },
  'value-wrong': {
    about: 'A key has a value of the wrong kind.',
    message: (v) => `\`${text(v, 'key')}\` wants ${text(v, 'expected')}${text(v, 'written') === '' ? '' : `, not \`${text(v, 'written')}\``}`,
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
  'row-empty': {
    about: 'A row without a stitch.',
    message: () => 'this row is empty',
    hint: () => 'write its stitches, or `knit` or `purl` for a plain row',
  },
  'row-too-long': {
    about: 'A row as written has a limit far above any real one.',
    message: (v) => `this row is longer than ${number(v, 'most')} characters`,
  },
  'too-many-stitches': {
    about: 'A row has at most some thousands of stitches; more is a slip of the pen.',
    message: (v) => `this asks for more than ${number(v, 'most')} stitches in one row`,
    hint: () => 'check the number of times',
  },
  'unknown-word': {
    about: 'A word that is no stitch and no instruction that we know.',
    message: (v) => `\`${text(v, 'word')}\` is not understood`,
    hint: maybe,
  },
  'character-unknown': {
    about: 'A sign that rows do not use.',
    message: (v) => `the sign \`${text(v, 'character')}\` has no meaning in a row`,
    hint: () => 'leave it out',
  },
  'number-missing': {
    about: 'A stitch in the middle of a row without how many.',
    message: (v) => `how many times \`${text(v, 'word')}\`?`,
    hint: (v) => `it is read as \`${text(v, 'base')}1\`; write the number, or \`${text(v, 'base')} to end\``,
  },
  'number-zero': {
    about: 'Nothing is worked no times.',
    message: () => 'a number of 0 makes no sense here',
    hint: () => 'leave the stitch out',
  },
  'number-too-large': {
    about: 'A number far above anything that is knitted.',
    message: (v) => `no number here may be above ${number(v, 'most')}`,
  },
  'times-missing': {
    about: 'After a bracket stands a number without the word times.',
    message: () => 'how often is the bracket worked?',
    hint: (v) => `write \`${number(v, 'number')} times\` after it`,
  },
  'decrease-size': {
    about: 'Between 2 and 9 stitches can be worked together.',
    message: (v) => `\`${text(v, 'written')}\`: from ${number(v, 'least')} to ${number(v, 'most')} stitches can be worked together`,
  },
  'increase-unknown': {
    about: 'Several stitches in one are written as knits and yarn overs, or knits and purls, in turn.',
    message: (v) => `(${text(v, 'written')}) in one stitch is not understood`,
    hint: () => 'write for example `(k1, yo, k1) in next st` or `(k1, p1, k1) in next st`',
  },
  'pass-over-nothing': {
    about: 'A pass over needs a slipped stitch and the stitch that it is passed over, just before it.',
    message: () => 'there is no slipped stitch to pass over just before this',
    hint: () => 'write `sl1, k1, psso`, `sl1, k2tog, psso` or `sl2, k1, p2sso`',
  },
  'slip-purlwise-twists': {
    about: 'A stitch that is slipped purlwise and then passed over lies twisted.',
    message: (v) => `slipped purlwise the passed stitch would twist; it is read as \`${text(v, 'stitch')}\`, slipped knitwise`,
    hint: () => 'leave `purlwise` out',
  },
  'bracket-not-closed': {
    about: 'A bracket is opened and never closed.',
    message: () => 'this bracket is not closed',
    hint: () => 'close it where its stitches end, then say how often',
  },
  'bracket-not-open': {
    about: 'A bracket is closed that was never opened.',
    message: (v) => `\`${text(v, 'bracket')}\` closes a bracket that is not open`,
  },
  'bracket-empty': {
    about: 'Nothing stands in a bracket or a repeat.',
    message: () => 'there is no stitch in here',
  },
  'nesting-too-deep': {
    about: 'Brackets within brackets have a limit.',
    message: (v) => `brackets stand more than ${number(v, 'most')} deep here`,
  },
  'repeat-not-closed': {
    about: 'A star opens a repeat; the row must say where it is repeated from.',
    message: () => 'the repeat that begins at this * is never closed',
    hint: () => 'write `; rep from * to end` where it ends',
  },
  'repeat-without-star': {
    about: 'The row says to repeat from a star, and there is none.',
    message: () => 'there is no * to repeat from',
    hint: () => 'put a * before the first stitch of the repeat',
  },
  'repeat-in-repeat': {
    about: 'A star inside a repeat that another star opened.',
    message: () => 'a repeat cannot begin inside another one',
    hint: () => 'use brackets for the inner one: `[k1, yo] 3 times`',
  },
  'repeat-in-brackets': {
    about: 'A star inside brackets.',
    message: () => 'a repeat with a * cannot stand inside brackets',
    hint: () => 'use brackets for both: `[k1, [yo, k2tog] twice] 3 times`',
  },
  'repeat-times-more': {
    about: 'After a star, "4 times" usually means 4 more after the first; some writers mean 4 in all.',
    message: (v) => `\`${number(v, 'times')} times\` is read as ${number(v, 'times')} more, so ${number(v, 'all')} in all`,
    hint: (v) => `write \`${number(v, 'times')} times more\` or \`${number(v, 'times')} times in all\``,
  },
  'reach-to-marker': {
    about: 'Rows go to the end or to so many stitches before it; a marker holds no count.',
    message: () => 'where is that marker? A row here goes to the end, or to so many stitches before it',
    hint: () => 'write `to last 3 sts`',
  },
  'turn-not-last': {
    about: 'After a turn a new row begins.',
    message: () => 'after `turn` a new row begins',
    hint: () => 'put what follows in a row of its own',
  },
  'yarn-forward-ambiguous': {
    about: 'British yarn-forward words make a loop between knits and only carry the yarn before a slip. Elsewhere they can be either.',
    message: (v) => `\`${text(v, 'word')}\` could be either here; it is read as ${text(v, 'read')}`,
    hint: () => 'write `yo` for a loop, `yarn to front` for none',
  },
  'note-not-read': {
    about: 'A note in brackets, such as a count, stands in a row. Counts are computed here.',
    message: () => 'this note is left out: it is no stitch',
  },
  'row-leaves-stitches': {
    about: 'A row does not work all the loops that are on the needle.',
    message: (v) =>
      `uses ${number(v, 'used')} of ${stitches(number(v, 'available'))}${forRepeats(v)}: ${number(v, 'rest')} ${number(v, 'rest') === 1 ? 'is' : 'are'} left over`,
    hint: (v) => `It would fit if it worked ${stitches(number(v, 'rest'))} more, or on ${number(v, 'used')} cast on.`,
  },
  'row-needs-stitches': {
    about: 'A row wants more loops than are on the needle.',
    message: (v) =>
      `uses ${stitches(number(v, 'used'))}, but there are ${number(v, 'available')}${forRepeats(v)}: ${number(v, 'rest')} too few`,
    hint: (v) => `It would fit if it worked ${stitches(number(v, 'rest'))} fewer, or if a row before it made ${number(v, 'rest')} more.`,
  },
  'row-too-short': {
    about: 'The stitches around a repeat already want more loops than there are.',
    message: (v) => `the stitches before and after its repeat need more than the ${stitches(number(v, 'here'))} of one pattern repeat`,
    hint: () => 'state a cast-on with a larger plus, or shorten the ends of the row',
  },
  'repeat-does-not-fit': {
    about: 'A repeat does not go into the loops of the row without a remainder, for some number of pattern repeats.',
    message: (v) =>
      `uses ${number(v, 'used')} of ${stitches(number(v, 'available'))} for ${times(number(v, 'repeats'), 'repeat')}: ${number(v, 'rest')} ${number(v, 'rest') === 1 ? 'is' : 'are'} left over`,
    hint: unevenHint,
  },
  'repeat-takes-nothing': {
    about: 'A repeat that takes no loop from the needle can never come to the end of it.',
    message: () => 'this repeat takes no stitch from the needle, so it never comes to the end',
    hint: () => 'put a stitch that takes one into it, or say how many times',
  },
  'count-not-back': {
    about: 'After the last row the count must be what row 1 began with, since row 1 comes again.',
    message: (v) => {
      const after = countWords(number(v, 'afterPerRepeat'), number(v, 'afterPlus'))
      const before = countWords(number(v, 'beforePerRepeat'), number(v, 'beforePlus'))
      return `ends with ${after}, but row 1 needs ${before} to begin again`
    },
    hint: (v) => {
      const more = number(v, 'morePerRepeat') + number(v, 'morePlus')
      const what = more > 0 ? `a decrease is missing, or a yarn over is too many` : `a yarn over is missing, or a decrease is too many`
      return `Over all rows ${what} (${more > 0 ? '+' : ''}${more} in one repeat). If the piece is meant to change its width, say \`growing: true\`.`
    },
  },
  'cast-on-too-weak': {
    about: 'The stated cast-on allows numbers of stitches on which the rows do not come out.',
    message: (v) => `the rows need ${rule(v)} cast on`,
    hint: (v) => (number(v, 'multiple') === 0 ? `write \`castOn: ${number(v, 'plus')}\`` : `write \`castOn: { multiple: ${number(v, 'multiple')}, plus: ${number(v, 'plus')} }\``),
  },
  'cast-on-too-strong': {
    about: 'The rows also come out on other numbers of stitches than the stated cast-on allows.',
    message: (v) => `the rows come out on ${rule(v)} already; the stated rule leaves some of these out`,
  },
  'held-loops-missing': {
    about: 'A join takes a loop that waits on a holder; there must be one.',
    message: (v) => `${stitches(number(v, 'short'))} more would have to wait on the holder to be joined`,
    hint: () => 'say at `held:` how many stitches of the other piece wait, or put some on a holder in a row before',
  },
  'too-much-work': {
    about: 'So many repeats would make a piece larger than anyone knits, and take for ever to work out.',
    message: (v) => `${times(number(v, 'repeats'), 'repeat')} (${stitches(number(v, 'stitches'))}) is more than we work out: at most ${stitches(number(v, 'most'))} in a row and ${number(v, 'steps')} in all`,
    hint: () => 'ask for fewer repeats',
  },
  'row-cannot-be-worked': {
    about: 'A row could not be worked to its end; its count is wrong.',
    message: (v) => `cannot be worked for ${times(number(v, 'repeats'), 'repeat')}`,
  },
  'too-many-problems': {
    about: 'After a great many problems the rest are only counted.',
    message: (v) => `and ${number(v, 'more')} more problems`,
  },
} satisfies Record<string, Wording>

export type IssueCode = keyof typeof wordings

/** The row that a problem speaks of, to begin its sentence with. */
export function rowName(row: number): string {
  return row >= 1 ? `Row ${row}` : 'A set-up row'
}

const countCodes: readonly IssueCode[] = [
  'row-leaves-stitches', 'row-needs-stitches', 'repeat-does-not-fit', 'count-not-back', 'row-too-short', 'row-cannot-be-worked',
]

/** A problem in words. The row is named where the sentence is about the whole row. */
export function sentenceOf(issue: Issue): Sentence {
  const wording: Wording = wordings[issue.code]
  const message = wording.message(issue.values)
  const named = issue.row !== null && countCodes.includes(issue.code)
  const full = named ? `${rowName(issue.row ?? 0)}${issue.code === 'row-too-short' ? ': ' : ' '}${message}` : message
  return { message: full, hint: wording.hint?.(issue.values) ?? null }
}

/** Every kind of problem with what it is about, for the page of problems. */
export const problemKinds: readonly { readonly code: IssueCode; readonly about: string }[] = Object.entries(wordings).map(
  ([code, wording]) => ({ code: code as IssueCode, about: wording.about }),
)
