import { tookTimes } from './extent.ts'
import {
  checkedNumber,
  type Raw,
  type Reader,
  report,
  spanFrom,
  took,
  tookNumber,
  tookPhrase,
  tookStitches,
  word,
} from './reader.ts'
import { yarnBackWords, yarnForwardWords, yarnOverWords } from './vocabulary.ts'

/** psso, p2sso, pass the slipped stitch over, pass yo over. */
export function readPassOver(r: Reader): Raw | null {
  const from = r.at
  if (took(r, 'psso', 'p1sso', 'p2sso', 'p3sso', 'pso'))
    return { kind: 'pass', what: 'slipped', span: spanFrom(r, from) }
  if (took(r, 'pyo')) return { kind: 'pass', what: 'yarn over', span: spanFrom(r, from) }
  if (word(r) !== 'pass') return null
  let ahead = 1
  while (ahead < 8 && word(r, ahead) !== '' && word(r, ahead) !== 'over') ahead++
  if (word(r, ahead) !== 'over') return null
  const yarnOver =
    word(r, ahead - 1) === 'yo' || (word(r, ahead - 1) === 'yarn' && word(r, ahead + 1) === 'over')
  r.at += ahead + 1
  if (yarnOver && word(r, -1) === 'over') took(r, 'over')
  return { kind: 'pass', what: yarnOver ? 'yarn over' : 'slipped', span: spanFrom(r, from) }
}

/** The yarn carried forward or back, and British words for a yarn over. */
export function readYarn(r: Reader): Raw | null {
  const from = r.at
  const here = word(r)
  if (
    tookPhrase(r, 'yarn back', 'yarn to back', 'bring yarn to back') !== '' ||
    (yarnBackWords.has(here) && took(r, here))
  ) {
    return { kind: 'yarn', to: 'back', span: spanFrom(r, from) }
  }
  if (tookPhrase(r, 'yarn to front', 'bring yarn to front') !== '')
    return { kind: 'yarn', to: 'front', span: spanFrom(r, from) }
  if (yarnOverWords.has(here) && took(r, here)) {
    const twice = tookTimes(r)
    if (twice === 2) return { kind: 'stitch', stitch: 'yo2', times: 1, span: spanFrom(r, from) }
    return { kind: 'stitch', stitch: 'yo', times: twice ?? 1, span: spanFrom(r, from) }
  }
  if (tookPhrase(r, 'yarn forward', 'wool forward') !== '' || (yarnForwardWords.has(here) && took(r, here))) {
    if (tookTimes(r) === 2) return { kind: 'stitch', stitch: 'yo2', times: 1, span: spanFrom(r, from) }
    return { kind: 'yarnForward', word: here, span: spanFrom(r, from) }
  }
  return null
}

/** bind off 4, cast off all, BO 3 purlwise, cast on 2. */
export function readBindOffOrCastOn(r: Reader): Raw | null {
  const from = r.at
  const short = /^(bo|co)(\d+)?$/.exec(word(r))
  const long = tookPhrase(r, 'bind off', 'cast off', 'cast on')
  if (!short && long === '') return null
  if (short) r.at++
  const on = long === 'cast on' || short?.[1] === 'co'
  tookPhrase(r, 'the next', 'next')
  const all = tookPhrase(r, 'all', 'all remaining', 'remaining') !== ''
  const count =
    short?.[2] === undefined ? tookNumber(r) : checkedNumber(r, Number(short[2]), spanFrom(r, from))
  tookStitches(r)
  let purl = false
  for (;;) {
    if (took(r, 'purlwise', 'pwise')) purl = true
    else if (tookPhrase(r, 'knitwise', 'kwise', 'loosely', 'in pattern', 'in patt', 'in pat') === '') break
  }
  if (on) {
    if (count === null) report(r, 'number-missing', spanFrom(r, from), { word: 'cast on', base: 'cast on ' })
    return { kind: 'stitch', stitch: 'co', times: count ?? 1, span: spanFrom(r, from) }
  }
  const many = all || count === null ? 'all' : count
  return {
    kind: 'bindOff',
    stitch: purl ? 'bo p' : 'bo',
    count: many,
    leavesOne: false,
    span: spanFrom(r, from),
  }
}

/** pm, slip marker, turn, wrap and turn, join in the round, stitches put on a holder and taken back. */
export function readMarkOrTurn(r: Reader): Raw | null {
  const from = r.at
  const marker = (action: 'place' | 'slip' | 'remove'): Raw => {
    tookPhrase(r, 'a marker', 'markers', 'marker', 'm')
    return { kind: 'marker', action, span: spanFrom(r, from) }
  }
  if (took(r, 'pm')) return marker('place')
  if (took(r, 'sm', 'slm')) return marker('slip')
  if (took(r, 'rm')) return marker('remove')
  if (['marker', 'm', 'a'].includes(word(r, 1))) {
    if (took(r, 'place')) return marker('place')
    if (took(r, 'sl', 'slip')) return marker('slip')
    if (took(r, 'remove')) return marker('remove')
  }
  if (tookPhrase(r, 'w&t', 'wrap and turn', 'wrap & turn') !== '')
    return { kind: 'turn', wrap: true, span: spanFrom(r, from) }
  if (took(r, 'turn')) return { kind: 'turn', wrap: false, span: spanFrom(r, from) }
  if (took(r, 'join')) {
    tookPhrase(r, 'in the round', 'in round', 'to work in the round', 'for working in the round')
    return { kind: 'joinRound', span: spanFrom(r, from) }
  }
  return readHolder(r, from)
}

function readHolder(r: Reader, from: number): Raw | null {
  if (took(r, 'place', 'hold', 'put')) {
    tookPhrase(r, 'the next', 'next')
    const count = tookNumber(r)
    if (count === null) {
      r.at = from
      return null
    }
    tookStitches(r)
    tookPhrase(r, 'on holder', 'on a holder', 'onto holder', 'onto a holder', 'on hold')
    return { kind: 'stitch', stitch: 'hold', times: count, span: spanFrom(r, from) }
  }
  if (word(r) !== 'return') return null
  r.at++
  const count = tookNumber(r) ?? 1
  took(r, 'held')
  tookStitches(r)
  tookPhrase(r, 'to needle', 'to the needle', 'to left needle', 'from holder')
  return { kind: 'resume', count, span: spanFrom(r, from) }
}
