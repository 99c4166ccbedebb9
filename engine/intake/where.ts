import { printable } from '../base/index.ts'
import { type Clues, type Glimpse, type GlimpseLook, mostTold } from '../mistakes/index.ts'
import { type ReadOptions, readRow } from '../notation/index.ts'
import type { Item } from '../pattern/index.ts'
import { chosen, type Fields, fieldsOf, mostLoops, readCount, type Unclear } from './evidence.ts'

/** What was told of where a reader is, or every field that is not understood. */
export type ToldWhere =
  | { readonly clues: Clues; readonly unclear: readonly [] }
  | { readonly clues: null; readonly unclear: readonly Unclear[] }

const mostCharacters = 200

/** What a stitch looks like, in the words that a reader may write for it. */
const lookWords: Readonly<Record<string, GlimpseLook>> = {
  hole: 'hole',
  'two together': 'two together',
  '2 together': 'two together',
  'three together': 'three together',
  '3 together': 'three together',
  smooth: 'knit',
  bump: 'purl',
}

/** The words for looks as a page offers them. */
export const offeredLooks = ['hole', 'two together', 'three together', 'smooth', 'bump'] as const

/** How the pattern that is asked about writes: as its own rows are read. */
export type Writing = Pick<ReadOptions, 'doubleYarnOver'>

/** What a reader filled in, by the names of the fields: left, right, last, inRow, facing. */
export function readWhere(form: unknown, rows: number, writing: Writing = {}): ToldWhere {
  const field = fieldsOf(form)
  const [left, right] = [readCount(field('left'), mostLoops), readCount(field('right'), mostLoops)]
  const last = readLast(field('last'), writing)
  const unclear = [
    ...('words' in left ? [{ field: 'left', words: left.words }] : []),
    ...('words' in right ? [{ field: 'right', words: right.words }] : []),
    ...('words' in last ? [{ field: 'last', words: last.words }] : []),
  ]
  if (unclear.length > 0 || 'words' in left || 'words' in right || 'words' in last)
    return { clues: null, unclear }
  const clues = cluesOf(left.value, right.value, last.glimpses, field, rows)
  if (clues.left === undefined && clues.right === undefined && clues.last === undefined)
    return {
      clues: null,
      unclear: [{ field: 'left', words: 'Count one of the needles, or say which stitches you made last.' }],
    }
  return { clues, unclear: [] }
}

function cluesOf(
  left: number | null,
  right: number | null,
  last: readonly Glimpse[],
  field: Fields,
  rows: number,
): Clues {
  const row = chosen(field('inRow'), 0, rows - 1)
  const side = field('facing')
  return {
    ...(left !== null && { left }),
    ...(right !== null && { right }),
    ...(last.length > 0 && { last }),
    ...(row !== null && { row }),
    ...((side === 'RS' || side === 'WS') && { side }),
  }
}

type ReadLast = { readonly glimpses: readonly Glimpse[] } | { readonly words: string }

/** The last stitches as a row would write them, with words for looks between them: 'k2, hole, k2tog'. */
export function readLast(text: unknown, writing: Writing = {}): ReadLast {
  if (text === undefined || text === null || text === '') return { glimpses: [] }
  if (typeof text !== 'string') return { words: 'Write stitches as a row does, such as: k2, yo.' }
  if (text.length > mostCharacters) return { words: 'A few of the last stitches are enough.' }
  const found: Glimpse[] = []
  let written: string[] = []
  const parts = text.normalize('NFKC').split(/[,;]|\bthen\b/i)
  for (const part of [...parts, null]) {
    const look = part === null ? undefined : lookOfWord(part)
    if (part !== null && look === undefined) written.push(part.trim())
    if (part !== null && look === undefined) continue
    const stitches = readStitches(
      written.filter((one) => one !== ''),
      writing,
    )
    if ('words' in stitches) return stitches
    found.push(...stitches.glimpses)
    if (look !== undefined) found.push({ looks: look })
    written = []
  }
  return { glimpses: found.slice(-mostTold) }
}

function lookOfWord(part: string): GlimpseLook | undefined {
  const word = part
    .trim()
    .toLowerCase()
    .replace(/^(?:an?|the) /, '')
    .replace(/\s+/g, ' ')
  return Object.hasOwn(lookWords, word) ? lookWords[word] : undefined
}

/** Stitches in a row's writing, read as a row is. */
function readStitches(written: readonly string[], writing: Writing): ReadLast {
  if (written.length === 0) return { glimpses: [] }
  const text = written.map((one) => one.replace(/^(knit|purl)$/i, (word) => `${word.charAt(0)}1`)).join(', ')
  const { items, issues } = readRow(text, writing)
  const ids = issues.length > 0 ? null : stitchesIn(items)
  if (ids) return { glimpses: ids.map((id) => ({ stitch: id })) }
  return {
    words: `‘${printable(text)}’ is not understood. Write stitches as a row does, such as: k2, yo; or press what you see.`,
  }
}

/** Every stitch one by one, of a long stretch only the last; null where the row says more than stitches. */
function stitchesIn(items: readonly Item[]): string[] | null {
  const found: string[] = []
  for (const item of items) {
    if (item.kind !== 'stitch' && item.kind !== 'group') return null
    const own = item.kind === 'stitch' ? [item.stitch] : stitchesIn(item.items)
    if (!own) return null
    for (let i = 0; i < Math.min(item.times, mostTold); i++) found.push(...own)
  }
  return found.slice(-mostTold)
}
