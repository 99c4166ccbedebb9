import {
  numberOf,
  type Reader,
  report,
  spanFrom,
  token,
  took,
  tookNumber,
  tookPhrase,
  tookStitches,
  word,
} from './reader.ts'

export type Extent = { kind: 'end' } | { kind: 'last'; stitches: number } | { kind: 'times'; times: number }

/** How often a bracket or a stitch is worked: 'twice', '3 times', '× 3', 'x3'. Null where nothing of the kind stands here. */
export function tookTimes(r: Reader): number | null {
  if (took(r, 'once')) return 1
  if (took(r, 'twice')) return 2
  if (took(r, 'thrice')) return 3
  if (numberOf(word(r)) !== null && ['times', 'time', 'x'].includes(word(r, 1))) {
    const n = tookNumber(r)
    r.at++
    return n
  }
  if (numberOf(word(r)) !== null && token(r, 1)?.kind === 'times') {
    const n = tookNumber(r)
    r.at++
    return n
  }
  if ((token(r)?.kind === 'times' || word(r) === 'x') && numberOf(word(r, 1)) !== null) {
    r.at++
    const n = tookNumber(r)
    took(r, 'times')
    return n
  }
  const joined = /^(?:x(\d+)|(\d+)x)$/.exec(word(r))
  if (!joined) return null
  r.at++
  return Number(joined[1] ?? joined[2])
}

const toTheEnd = [
  'to end of row',
  'to end of round',
  'to end of rnd',
  'to the end of the row',
  'to the end of the round',
  'to the end',
  'to end',
  'across all sts',
  'across all stitches',
  'across row',
  'across the row',
  'across',
  'around',
  'all sts',
  'all stitches',
  'all round',
  'all',
  'every st',
  'every stitch',
  'each st',
  'each stitch',
  'rem sts',
  'remaining sts',
  'remaining stitches',
  'the row',
  'row',
  'round',
  'rnd',
  'even',
]

/** 'to end', 'across', 'to last 3 sts', 'until 3 sts remain'. Null where nothing of the kind stands here. */
export function tookReach(r: Reader): { kind: 'end' } | { kind: 'last'; stitches: number } | null {
  const from = r.at
  if (tookPhrase(r, 'to within last', 'to the last', 'to last', 'until the last', 'until last') !== '') {
    const n = tookNumber(r) ?? 1
    tookStitches(r)
    return { kind: 'last', stitches: n }
  }
  if (took(r, 'until')) {
    const n = tookNumber(r)
    tookStitches(r)
    if (n !== null && took(r, 'remain', 'remains', 'left', 'rem')) return { kind: 'last', stitches: n }
    r.at = from
    return null
  }
  if (tookPhrase(r, ...toTheEnd) !== '') {
    tookPhrase(r, 'of row', 'of the row', 'of round', 'of rnd', 'of the round')
    return { kind: 'end' }
  }
  if (tookPhrase(r, 'to marker', 'to next marker', 'to m') !== '') {
    report(r, 'reach-to-marker', spanFrom(r, from))
    return { kind: 'end' }
  }
  return null
}

/**
 * How far 'rep from *' goes. A bare number of times means so many more, as the trade mostly has it, and is warned of.
 * Null where it does not say.
 */
export function tookRepeatExtent(r: Reader): Extent | null {
  const reach = tookReach(r)
  if (reach) return reach
  const from = r.at
  if (numberOf(word(r)) !== null && word(r, 1) === 'more') {
    const n = tookNumber(r) ?? 1
    r.at++
    took(r, 'times', 'time')
    return { kind: 'times', times: n + 1 }
  }
  const n = tookTimes(r)
  if (n === null) return null
  if (took(r, 'more')) return { kind: 'times', times: n + 1 }
  if (tookPhrase(r, 'in all', 'in total', 'total', 'altogether', 'all told') !== '')
    return { kind: 'times', times: n }
  report(r, 'repeat-times-more', spanFrom(r, from), { times: n, all: n + 1 }, 'warning')
  return { kind: 'times', times: n + 1 }
}
