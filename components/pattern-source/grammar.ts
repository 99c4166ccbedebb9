import type { LanguageRegistration } from 'shiki/core'

/**
 * Pattern files for a highlighter: keys, and within a row its stitches with their counts, repeats, brackets and words.
 * It only tells words apart; whether a row is right is for the reader of pattern files to say.
 */
export const grammar: LanguageRegistration = {
  name: 'pattern',
  scopeName: 'source.pattern',
  patterns: [
    { include: '#comment' },
    { include: '#rows' },
    { include: '#setting' },
    { include: '#continued' },
  ],
  repository: {
    comment: { match: '(^|\\s)#.*$', name: 'comment.pattern' },
    rows: {
      begin: '^(rows|setUp)(:)\\s*$',
      beginCaptures: { 1: { name: 'key.pattern' }, 2: { name: 'punctuation.pattern' } },
      end: '^(?=\\S)',
      patterns: [{ include: '#comment' }, { include: '#heading' }, { include: '#row' }],
    },
    heading: {
      match: '^(\\s*-?\\s*)((?:[Rr]ows?|[Rr]ounds?|[Rr]nds?)\\s+[\\d\\s,andto–-]+)(:)',
      captures: { 2: { name: 'heading.pattern' }, 3: { name: 'punctuation.pattern' } },
    },
    setting: {
      begin: '^\\s*([A-Za-z]\\w*)(:)(?=\\s|$)',
      beginCaptures: { 1: { name: 'key.pattern' }, 2: { name: 'punctuation.pattern' } },
      end: '$',
      patterns: [
        { include: '#comment' },
        {
          match: '\\b([A-Za-z]\\w*)(:)(?=\\s)',
          captures: { 1: { name: 'key.pattern' }, 2: { name: 'punctuation.pattern' } },
        },
        { match: '\'[^\']*\'|"[^"]*"', name: 'text.pattern' },
        { match: '(?<![\\w.])\\d+(\\.\\d+)?(?![\\w.])', name: 'count.pattern' },
        { match: '[{}\\[\\]]', name: 'punctuation.pattern' },
        { match: '[,>-]', name: 'punctuation.pattern' },
        { match: '[^\\s,{}\\[\\]\'"#>-][^,{}\\[\\]#]*', name: 'text.pattern' },
      ],
    },
    continued: { match: '\\S.*$', name: 'text.pattern' },
    row: {
      patterns: [
        { match: '\\*|;?\\s*\\b(rep(eat)?)\\s+from\\b', name: 'repeat.pattern' },
        { match: '\\b(to end|to last|twice|times|more|in all|across)\\b', name: 'repeat.pattern' },
        { match: '[\\[\\]()]', name: 'bracket.pattern' },
        {
          match: '\\b(k|p|sl|yo|m|nupp)(\\d+)(tog)?((?: tbl)?)\\b',
          captures: {
            1: { name: 'stitch.pattern' },
            2: { name: 'count.pattern' },
            3: { name: 'stitch.pattern' },
            4: { name: 'stitch.pattern' },
          },
        },
        { match: '\\b(sts?|row|round|of)\\b', name: 'word.pattern' },
        { match: '\\b[A-Za-z][A-Za-z0-9/]*( tbl| wyif| wyib)?\\b', name: 'stitch.pattern' },
        { match: '\\d+', name: 'count.pattern' },
        { match: '[-,;:\'"]', name: 'punctuation.pattern' },
      ],
    },
  },
}
