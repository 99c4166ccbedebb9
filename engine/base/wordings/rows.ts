import { maybe, number, text, type Wording } from './wording.ts'

/** Problems with the words of a row. */
export const rowWordings = {
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
    message: (v) =>
      `\`${text(v, 'written')}\`: from ${number(v, 'least')} to ${number(v, 'most')} stitches can be worked together`,
  },
  'increase-unknown': {
    about: 'Several stitches in one are written as knits and yarn overs, or knits and purls, in turn.',
    message: (v) => `(${text(v, 'written')}) in one stitch is not understood`,
    hint: () => 'write for example `(k1, yo, k1) in next st` or `(k1, p1, k1) in next st`',
  },
  'below-or-back': {
    about: 'Some writers mean through the back loop by k1b, others a knit into the stitch of the row below.',
    message: (v) =>
      `\`${text(v, 'written')}\` means two things: through the back loop, or into the row below`,
    hint: (v) => `write \`${text(v, 'suggestion')}\` for the first; the second is not in our catalogue`,
  },
  'pass-over-nothing': {
    about: 'A pass over needs a slipped stitch and the stitch that it is passed over, just before it.',
    message: () => 'there is no slipped stitch to pass over just before this',
    hint: () => 'write `sl1, k1, psso`, `sl1, k2tog, psso` or `sl2, k1, p2sso`',
  },
  'slip-purlwise-twists': {
    about: 'A stitch that is slipped purlwise and then passed over lies twisted.',
    message: (v) =>
      `slipped purlwise the passed stitch would twist; it is read as \`${text(v, 'stitch')}\`, slipped knitwise`,
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
    message: (v) =>
      `\`${number(v, 'times')} times\` is read as ${number(v, 'times')} more, so ${number(v, 'all')} in all`,
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
    about:
      'British yarn-forward words make a loop between knits and only carry the yarn before a slip. Elsewhere they can be either.',
    message: (v) => `\`${text(v, 'word')}\` could be either here; it is read as ${text(v, 'read')}`,
    hint: () => 'write `yo` for a loop, `yarn to front` for none',
  },
  'note-not-read': {
    about: 'A note in brackets, such as a count, stands in a row. Counts are computed here.',
    message: () => 'this note is left out: it is no stitch',
  },
} satisfies Record<string, Wording>
