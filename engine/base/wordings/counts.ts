import { number, stitches, times, type Values, type Wording } from './wording.ts'

/** '6 per repeat plus 1', as the count after a row is written. */
function countWords(perRepeat: number, plus: number): string {
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
    const change =
      missing > 0
        ? `took ${stitches(missing)} more, a k${missing} or the like left out perhaps`
        : `took ${stitches(-missing)} fewer`
    return `It would fit if the repeat ${change}: ${meant} instead of ${width}.`
  }
  const [over, ends] = [number(v, 'over'), number(v, 'ends')]
  const end = ends > 0 ? ' (the stitches before and after the repeat counted in)' : ''
  return `It would fit if the stitches outside the repeat took ${over} more or ${width - over} fewer${end}, or on another cast-on.`
}

/** Problems with counts: rows that do not fit, the cast-on rule, loops that are missing. */
export const countWordings = {
  'row-leaves-stitches': {
    about: 'A row does not work all the loops that are on the needle.',
    message: (v) =>
      `uses ${number(v, 'used')} of ${stitches(number(v, 'available'))}${forRepeats(v)}: ${number(v, 'rest')} ${number(v, 'rest') === 1 ? 'is' : 'are'} left over`,
    hint: (v) =>
      `It would fit if it worked ${stitches(number(v, 'rest'))} more, or on ${number(v, 'used')} cast on.`,
  },
  'row-needs-stitches': {
    about: 'A row wants more loops than are on the needle.',
    message: (v) =>
      `uses ${stitches(number(v, 'used'))}, but there are ${number(v, 'available')}${forRepeats(v)}: ${number(v, 'rest')} too few`,
    hint: (v) =>
      `It would fit if it worked ${stitches(number(v, 'rest'))} fewer, or if a row before it made ${number(v, 'rest')} more.`,
  },
  'row-too-short': {
    about: 'The stitches around a repeat already want more loops than there are.',
    message: (v) =>
      `the stitches before and after its repeat need more than the ${stitches(number(v, 'here'))} of one pattern repeat`,
    hint: () => 'state a cast-on with a larger plus, or shorten the ends of the row',
  },
  'repeat-does-not-fit': {
    about:
      'A repeat does not go into the loops of the row without a remainder, for some number of pattern repeats.',
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
      const what =
        more > 0
          ? `a decrease is missing, or a yarn over is too many`
          : `a yarn over is missing, or a decrease is too many`
      return `Over all rows ${what} (${more > 0 ? '+' : ''}${more} in one repeat). If the piece is meant to change its width, say \`growing: true\`.`
    },
  },
  'cast-on-too-weak': {
    about: 'The stated cast-on allows numbers of stitches on which the rows do not come out.',
    message: (v) => `the rows need ${rule(v)} cast on`,
    hint: (v) =>
      number(v, 'multiple') === 0
        ? `write \`castOn: ${number(v, 'plus')}\``
        : `write \`castOn: { multiple: ${number(v, 'multiple')}, plus: ${number(v, 'plus')} }\``,
  },
  'cast-on-too-strong': {
    about: 'The rows also come out on other numbers of stitches than the stated cast-on allows.',
    message: (v) => `the rows come out on ${rule(v)} already; the stated rule leaves some of these out`,
  },
  'held-loops-missing': {
    about: 'A join takes a loop that waits on a holder; there must be one.',
    message: (v) => `${stitches(number(v, 'short'))} more would have to wait on the holder to be joined`,
    hint: () =>
      'say at `held:` how many stitches of the other piece wait, or put some on a holder in a row before',
  },
  'too-much-work': {
    about: 'So many repeats would make a piece larger than anyone knits, and take for ever to work out.',
    message: (v) =>
      `${times(number(v, 'repeats'), 'repeat')} (${stitches(number(v, 'stitches'))}) is more than we work out: at most ${stitches(number(v, 'most'))} in a row and ${number(v, 'steps')} in all`,
    hint: () => 'ask for fewer repeats',
  },
  'row-cannot-be-worked': {
    about: 'A row could not be worked to its end; its count is wrong.',
    message: (v) => `cannot be worked for ${times(number(v, 'repeats'), 'repeat')}`,
  },
} satisfies Record<string, Wording>
