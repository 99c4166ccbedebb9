import { type Issue, limits, type Span } from '../base/index.ts'
import { type Item, type RepeatItem, takesAndMakes } from '../pattern/index.ts'
import { findStitch } from '../stitches/index.ts'
import { type Extent, tookReach, tookRepeatExtent, tookTimes } from './extent.ts'
import { lex } from './lexer.ts'
import { readBindOffOrCastOn, readMarkOrTurn, readPassOver, readYarn } from './read-other.ts'
import { readKnitOrPurl, readNamedStitch, readSlip } from './read-stitch.ts'
import {
  checkedNumber,
  numberOf,
  type Raw,
  type Reader,
  report,
  spanFrom,
  token,
  took,
  tookPhrase,
  tookStitches,
  word,
} from './reader.ts'
import { type SettleOptions, settle } from './settle.ts'
import { closestWord } from './suggest.ts'
import { knownWords, stitchWords } from './vocabulary.ts'

export interface ReadOptions extends Partial<SettleOptions> {
  /** The row's number, for the problems. */
  readonly row?: number | null
  /** Where an offset of the row's text lies in the file that it comes from. */
  readonly place?: (offset: number) => number
}

export interface RowReading {
  readonly items: readonly Item[]
  readonly issues: readonly Issue[]
  /** The row that this one says it is the same as ('as row 2'); its items are then empty. */
  readonly sameAs: number | null
}

/**
 * Reads one row as knitters write it. Always gives what could be read; every problem has its place.
 * Spans are offsets in the row's text, or in the file when `place` is given.
 */
export function readRow(text: string, options: ReadOptions = {}): RowReading {
  const row = options.row ?? null
  const issues: Issue[] = []
  if (text.length > limits.rowCharacters) {
    const span = { start: 0, end: text.length }
    issues.push({
      code: 'row-too-long',
      severity: 'error',
      span,
      row,
      values: { most: limits.rowCharacters },
    })
    return placed({ items: [], issues, sameAs: null }, options.place)
  }
  const same = /^\s*(?:same\s+)?as\s+(?:row|round|rnd)\s+(\d{1,4})\s*\.?\s*$/i.exec(text)
  if (same) return { items: [], issues, sameAs: Number(same[1]) }
  const r: Reader = { tokens: lex(text), issues, row, at: 0, depth: 0 }
  const items = settle(readItems(r, 'row'), r, {
    doubleYarnOver: options.doubleYarnOver ?? 'two',
    bindOffLeaves: options.bindOffLeaves ?? 'extra',
  })
  if (items.length === 0 && issues.length === 0) report(r, 'row-empty', { start: 0, end: text.length })
  return placed({ items: items.filter((item) => isKnittable(item, r)), issues, sameAs: null }, options.place)
}

/** Brackets in brackets can ask for more stitches than a number holds; counts stay exact only below a limit. */
function isKnittable(item: Item, r: Reader): boolean {
  const inner = item.kind === 'repeat' ? takesAndMakes(item.items) : takesAndMakes([item])
  const times = item.kind === 'repeat' && item.until.kind === 'times' ? item.until.times : 1
  const most = inner === null ? 0 : Math.max(inner.takes, inner.makes) * times
  if (most <= limits.stitchesInRow) return true
  report(r, 'too-many-stitches', item.span, { most: limits.stitchesInRow })
  return false
}

type Within = 'row' | 'bracket' | 'repeat'

/** Items up to the end of the row, the closing bracket or the words that close the repeat. */
function readItems(r: Reader, within: Within): Raw[] {
  const items: Raw[] = []
  /** How many of the last items hang together by hyphens: k1-yo-k1. */
  let linked = 1
  for (let t = token(r); t; t = token(r)) {
    if (t.kind === 'comma' || t.kind === 'break') {
      r.at++
    } else if (t.kind === 'hyphen') {
      r.at++
      linked++
    } else if (t.kind === 'close') {
      if (within === 'bracket') return items
      report(r, 'bracket-not-open', t.span, { bracket: t.text })
      r.at++
    } else if (t.kind === 'open') {
      items.push(...readGroup(r))
    } else if (t.kind === 'star') {
      if (within === 'repeat' && closesRepeat(r)) return items
      items.push(...readRepeat(r, within))
    } else if (opensRepeatClause(r)) {
      if (within === 'repeat') return items
      skipRepeatClause(r)
    } else if (isInOneStitch(r)) {
      items.push(...intoOneStitch(r, items.splice(-linked)))
      linked = 1
    } else {
      const before = r.at
      const read = readElement(r)
      if (read) items.push(read)
      if (r.tokens[before - 1]?.kind !== 'hyphen') linked = 1
    }
  }
  return items
}

const fillers = ['and', 'then', 'end', 'ends', 'ending', 'with', 'next', 'the']

/** One stitch or one thing done between stitches. Null where nothing could be read (told, and stepped over). */
function readElement(r: Reader): Raw | null {
  const t = token(r)
  if (t?.kind === 'word' && fillers.includes(t.text)) {
    r.at++
    return null
  }
  const read =
    readMarkOrTurn(r) ??
    readBindOffOrCastOn(r) ??
    readPassOver(r) ??
    readYarn(r) ??
    readSlip(r) ??
    readKnitOrPurl(r) ??
    readNamedStitch(r)
  if (!read) skipUnknown(r)
  return read
}

/** Tells an unknown word, with the word that was perhaps meant, and steps over it (and over what belongs to it). */
function skipUnknown(r: Reader): void {
  const from = r.at
  const first = token(r)
  r.at++
  if (!first) return
  if (first.kind !== 'word') {
    report(r, 'character-unknown', first.span, { character: first.text })
    return
  }
  const second = token(r)
  const joined = second?.kind === 'word' && second.spaced ? first.text + second.text : ''
  if (joined !== '' && (stitchWords.has(joined) || joined === 'psso')) {
    r.at++
    report(r, 'unknown-word', spanFrom(r, from), {
      word: `${first.text} ${second?.text}`,
      suggestion: joined,
    })
    return
  }
  report(r, 'unknown-word', first.span, {
    word: first.text.slice(0, 40),
    suggestion: closestWord(first.text, knownWords) ?? '',
  })
  // What directly follows an unknown word up to the next comma belongs to it: one problem is enough.
  while (token(r)?.kind === 'word' && !opensRepeatClause(r)) r.at++
}

function readGroup(r: Reader): Raw[] {
  const from = r.at
  r.at++
  if (isNote(r)) return skipNote(r, from)
  if (r.depth >= limits.nesting) {
    report(r, 'nesting-too-deep', spanFrom(r, from), { most: limits.nesting })
    r.at = r.tokens.length
    return []
  }
  r.depth++
  const items = readItems(r, 'bracket')
  r.depth--
  if (token(r)?.kind === 'close') r.at++
  else
    report(
      r,
      'bracket-not-closed',
      spanFrom(r, from).start === undefined ? { start: 0, end: 1 } : openingSpan(r, from),
    )
  if (items.length === 0) report(r, 'bracket-empty', spanFrom(r, from))
  if (isInOneStitch(r)) return intoOneStitch(r, items, from)
  const rep = took(r, 'rep', 'repeat')
  const reach = tookReach(r)
  const span = spanFrom(r, from)
  if (reach) return [{ kind: 'repeat', items: items as Item[], until: reach, span }]
  const times = tookTimes(r)
  if (times === null && (rep || numberOf(word(r)) !== null)) {
    const n = numberOf(word(r)) ?? 1
    report(r, 'times-missing', spanFrom(r, from), { number: n })
    if (numberOf(word(r)) !== null) r.at++
  }
  return [
    {
      kind: 'group',
      items: items as Item[],
      times: checkedNumber(r, times ?? 1, span),
      span: spanFrom(r, from),
    },
  ]
}

const openingSpan = (r: Reader, from: number): Span => r.tokens[from]?.span ?? { start: 0, end: 1 }

/** '(RS)' or '(13 sts)': a note for the reader, no stitch. */
const isNote = (r: Reader): boolean =>
  ['rs', 'ws'].includes(word(r)) ||
  (numberOf(word(r)) !== null && /^(st|sts|stitch|stitches)$/.test(word(r, 1)))

function skipNote(r: Reader, from: number): Raw[] {
  while (token(r) && token(r)?.kind !== 'close') r.at++
  if (token(r)) r.at++
  report(r, 'note-not-read', spanFrom(r, from), {}, 'warning')
  return []
}

const isInOneStitch = (r: Reader): boolean => ['in', 'into'].includes(word(r))

/** '(k1, yo, k1) in next st': several loops worked into one. */
function intoOneStitch(r: Reader, items: readonly Raw[], start = r.at): Raw[] {
  const first = items[0]
  const from = start
  r.at++
  tookPhrase(r, 'the next', 'the same', 'next', 'same', 'one', '1', 'first', 'each')
  took(r, '1', 'one')
  tookStitches(r)
  const words: string[] = []
  for (const item of items) {
    if (item.kind !== 'stitch') words.push('?')
    else
      for (let i = 0; i < item.times && words.length < 12; i++)
        words.push(item.stitch === 'yo' ? 'yo' : `${item.stitch}1`)
  }
  const id = `(${words.join(', ')}) in 1`
  const span = {
    start: Math.min(first?.span.start ?? Infinity, spanFrom(r, from).start),
    end: spanFrom(r, from).end,
  }
  if (!findStitch(id)) {
    report(r, 'increase-unknown', span, { written: words.join(', ').slice(0, 60) })
    return []
  }
  const times = tookTimes(r) ?? 1
  return [{ kind: 'stitch', stitch: id, times, span }]
}

/** Whether 'rep from *' or the like stands here. */
const opensRepeatClause = (r: Reader): boolean =>
  ['rep', 'repeat', 'reps', 'repeating'].includes(word(r)) &&
  (['from', 'between'].includes(word(r, 1)) || token(r, 1)?.kind === 'star' || isNearlyFrom(r))

/** 'rep form *': one problem, and the repeat is closed all the same. */
const isNearlyFrom = (r: Reader): boolean =>
  token(r, 2)?.kind === 'star' && word(r, 1) !== '' && closestWord(word(r, 1), ['from']) !== null

/** A star that closes: '*…*' before 'rep', or at the very end. */
function closesRepeat(r: Reader): boolean {
  const next = token(r, 1)
  if (next && next.kind !== 'comma' && next.kind !== 'break' && !['rep', 'repeat'].includes(next.text))
    return false
  r.at++
  return true
}

function readRepeat(r: Reader, within: Within): Raw[] {
  const from = r.at
  const star = openingSpan(r, from)
  while (token(r)?.kind === 'star') r.at++
  if (within !== 'row') report(r, within === 'repeat' ? 'repeat-in-repeat' : 'repeat-in-brackets', star)
  const items = readItems(r, 'repeat')
  while (token(r)?.kind === 'comma' || token(r)?.kind === 'break') r.at++
  if (!opensRepeatClause(r)) {
    report(r, 'repeat-not-closed', star)
    return items
  }
  const extent = readRepeatClause(r)
  const span = spanFrom(r, from)
  if (items.length === 0) report(r, 'bracket-empty', span)
  return [{ kind: 'repeat', items: items as RepeatItem['items'], until: extent ?? { kind: 'open' }, span }]
}

function readRepeatClause(r: Reader): Extent | null {
  const nearly = !['from', 'between'].includes(word(r, 1)) && isNearlyFrom(r)
  r.at++
  if (nearly) {
    const values = { word: word(r), suggestion: 'from' }
    r.at++
    report(r, 'unknown-word', spanFrom(r, r.at - 1), values)
  }
  took(r, 'from', 'between')
  while (token(r)?.kind === 'star') r.at++
  if (['to', 'and'].includes(word(r)) && token(r, 1)?.kind === 'star') {
    r.at++
    while (token(r)?.kind === 'star') r.at++
  }
  if (token(r)?.kind === 'comma' && ['to', 'until', 'across'].includes(word(r, 1))) r.at++
  return tookRepeatExtent(r)
}

function skipRepeatClause(r: Reader): void {
  const from = r.at
  readRepeatClause(r)
  report(r, 'repeat-without-star', spanFrom(r, from))
}

/** Moves every span to where it lies in the file. */
function placed(reading: RowReading, place: ((offset: number) => number) | undefined): RowReading {
  if (!place) return reading
  const move = (span: Span): Span => ({
    start: place(span.start),
    end: Math.max(place(span.start), place(Math.max(0, span.end - 1)) + 1),
  })
  const moveItem = (item: Item): Item => {
    const span = move(item.span)
    return item.kind === 'group' || item.kind === 'repeat'
      ? { ...item, span, items: item.items.map(moveItem) }
      : { ...item, span }
  }
  return {
    items: reading.items.map(moveItem),
    issues: reading.issues.map((issue) => (issue.span ? { ...issue, span: move(issue.span) } : issue)),
    sameAs: reading.sameAs,
  }
}
