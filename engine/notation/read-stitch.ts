import { findStitch } from '../stitches/index.ts'
import { tookReach, tookTimes } from './extent.ts'
import {
  checkedNumber,
  numberOf,
  type Raw,
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
import { stitchWords } from './vocabulary.ts'

const throughTheBack = [
  'tbl',
  'through back loop',
  'through back loops',
  'through the back loop',
  'through the back loops',
  'through back',
  'through the back',
  'through back legs',
  'through the back legs',
]

/** A stitch item, worked as often as the words after it say. */
function stitches(r: Reader, from: number, id: string, times = 1): Raw {
  const again = tookTimes(r)
  if (again !== null && id === 'yo' && times === 1 && again === 2) {
    return { kind: 'stitch', stitch: 'yo2', times: 1, span: spanFrom(r, from) }
  }
  const all = again === null ? times : checkedNumber(r, times * again, spanFrom(r, from))
  return { kind: 'stitch', stitch: id, times: all, span: spanFrom(r, from) }
}

/** The held stitch of another piece that is worked together with this one: 'join', 'with 1 held st'. */
const tookHeld = (r: Reader): boolean =>
  tookPhrase(
    r,
    'join',
    'with 1 held st',
    'with one held st',
    'with one held stitch',
    'with 1 held stitch',
    'with next held st',
  ) !== ''

/** k, p, k3, knit 3, k2tog, k 2 tog, p3tog tbl, k1 tbl, knit to end, purl across. Null where none of them stands here. */
export function readKnitOrPurl(r: Reader): Raw | null {
  const from = r.at
  if (/^[kp]\d*b$/.test(word(r))) return readBelow(r)
  const found = /^(knit|purl|k|p)(\d+)?(?:(tog)(tbl)?|(tbl))?$/.exec(word(r))
  if (!found) return null
  r.at++
  const base = found[1]?.startsWith('k') ? 'k' : 'p'
  let count = found[2] === undefined ? null : checkedNumber(r, Number(found[2]), spanFrom(r, from))
  let together = found[3] !== undefined
  let back = found[4] !== undefined || found[5] !== undefined
  if (count === null && !together) {
    tookPhrase(r, 'the next', 'next')
    const run = /^(\d+)tog(tbl)?$/.exec(word(r))
    if (run) {
      r.at++
      count = Number(run[1])
      together = true
      back ||= run[2] !== undefined
    } else if (
      numberOf(word(r)) !== null &&
      !['times', 'time', 'x'].includes(word(r, 1)) &&
      token(r, 1)?.kind !== 'times'
    ) {
      count = tookNumber(r)
    }
  }
  if (!together) tookStitches(r)
  if (took(r, 'tog', 'together', 'togtbl')) {
    together = true
    back ||= r.tokens[r.at - 1]?.text === 'togtbl'
  }
  if (tookPhrase(r, ...throughTheBack) !== '') back = true
  if (together) return readTogether(r, from, base, count, back)
  const id = back ? `${base} tbl` : base
  if (base === 'k' && tookPhrase(r, 'with bead', 'with a bead') !== '')
    return stitches(r, from, 'bead', count ?? 1)
  if (count === 1 && base === 'k' && tookHeld(r)) return stitches(r, from, 'k2tog join')
  if (count === null) {
    const until = tookReach(r)
    if (until) return { kind: 'across', stitch: id, until, span: spanFrom(r, from) }
    const alone = from === 0 && r.at >= r.tokens.length
    const spelt = found[1] === 'knit' || found[1] === 'purl'
    const lastWord = r.tokens.slice(r.at).every((t) => t.kind === 'break')
    if (alone || (spelt && lastWord))
      return { kind: 'across', stitch: id, until: { kind: 'end' }, span: spanFrom(r, from) }
    if (tookTimesAhead(r)) return stitches(r, from, id, 1)
    report(r, 'number-missing', spanFrom(r, from), { word: r.tokens[from]?.text ?? base, base }, 'warning')
  }
  return stitches(r, from, id, count ?? 1)
}

/** 'k1b': to some writers through the back loop, to others into the stitch of the row below. */
function readBelow(r: Reader): Raw {
  const from = r.at
  const [, base, number] = /^([kp])(\d*)b$/.exec(word(r)) ?? []
  r.at++
  report(r, 'below-or-back', spanFrom(r, from), {
    written: r.tokens[from]?.text ?? '',
    suggestion: `${base}${number || 1} tbl`,
  })
  return { kind: 'stitch', stitch: `${base} tbl`, times: Number(number || 1), span: spanFrom(r, from) }
}

function tookTimesAhead(r: Reader): boolean {
  const at = r.at
  const there = tookTimes(r) !== null
  r.at = at
  return there
}

function readTogether(r: Reader, from: number, base: string, count: number | null, back: boolean): Raw {
  const size = count ?? 2
  const joined = size === 2 && !back && tookHeld(r)
  const id = `${base}${size}tog${back ? ' tbl' : ''}${joined ? ' join' : ''}`
  if (!findStitch(id)) {
    report(r, 'decrease-size', spanFrom(r, from), { written: id, least: 2, most: 9 })
    return stitches(r, from, `${base}2tog`)
  }
  return stitches(r, from, id)
}

/** ssk, yo, m1l, nupp5, 1/1 RC and the other stitches that have a word of their own. */
export function readNamedStitch(r: Reader): Raw | null {
  const from = r.at
  const two = `${word(r)} ${word(r, 1)}`
  const crossing = two.toUpperCase()
  if (/^\d\/\d [RL]P?C$/.test(crossing) && findStitch(crossing)) {
    r.at += 2
    return stitches(r, from, crossing)
  }
  if (tookPhrase(r, 'yarn over', 'yarn overs') !== '') return stitches(r, from, 'yo')
  if (tookPhrase(r, 'double yarn over', 'double yo') !== '') return stitches(r, from, 'yo2')
  if (tookPhrase(r, 'make 1', 'make one') !== '') return stitches(r, from, 'm1')
  if (tookPhrase(r, 'slip slip knit', 'slip slip purl') !== '') {
    return stitches(r, from, r.tokens[r.at - 1]?.text === 'purl' ? 'ssp' : 'ssk')
  }
  const id = stitchWords.get(word(r))
  if (id === undefined) return null
  r.at++
  if (id === 'ssk' && tookHeld(r)) return stitches(r, from, 'ssk join')
  if (r.tokens[from]?.text === 'nupp' && numberOf(word(r)) !== null && findStitch(`nupp${word(r)}`))
    return stitches(r, from, `nupp${r.tokens[r.at++]?.text}`)
  return stitches(r, from, id)
}

/** sl1, slip 2 knitwise, sl 1 wyif, sl1 pwise with yarn in back. */
export function readSlip(r: Reader): Raw | null {
  const from = r.at
  const found = /^(?:(sl|slip)(\d+)?|s(\d+)|sl(\d+)([kp]))$/.exec(word(r))
  if (!found || ['marker', 'm', 'markers'].includes(word(r, 1))) return null
  r.at++
  tookPhrase(r, 'the next', 'next', 'first', 'the first')
  const written = found[2] ?? found[3] ?? found[4]
  const count =
    written === undefined ? (tookNumber(r) ?? 1) : checkedNumber(r, Number(written), spanFrom(r, from))
  tookStitches(r)
  let as: 'bare' | 'knitwise' | 'purlwise' =
    found[5] === undefined ? 'bare' : found[5] === 'k' ? 'knitwise' : 'purlwise'
  let yarn: 'front' | 'back' | null = null
  for (;;) {
    if (tookWise(r, 'k') || tookPhrase(r, 'kwise', 'knitwise', 'as if to knit', 'kw') !== '') as = 'knitwise'
    else if (tookWise(r, 'p') || tookPhrase(r, 'pwise', 'purlwise', 'as if to purl', 'pw') !== '')
      as = 'purlwise'
    else if (tookPhrase(r, 'wyif', 'wyf', 'with yarn in front', 'with yarn at front') !== '') yarn = 'front'
    else if (tookPhrase(r, 'wyib', 'wyb', 'with yarn in back', 'with yarn at back') !== '') yarn = 'back'
    else if (tookPhrase(r, 'to holder', 'onto holder', 'on holder', 'to a holder', 'onto a holder') !== '') {
      return { kind: 'stitch', stitch: 'hold', times: count, span: spanFrom(r, from) }
    } else if (!took(r, 'tog', 'together')) break
  }
  return { kind: 'slip', count, as, yarn, span: spanFrom(r, from) }
}

/** 'k-wise' and 'p-wise'. */
function tookWise(r: Reader, letter: string): boolean {
  if (word(r) !== letter || token(r, 1)?.kind !== 'hyphen' || word(r, 2) !== 'wise') return false
  r.at += 3
  return true
}
