import { limits } from '../base/index.ts'
import { rowLabel } from '../notation/index.ts'
import type { CastOn } from '../pattern/index.ts'

/** What a pasted text holds. Every line of it is in one of these. */
export interface Pasted {
  readonly rows: readonly string[]
  /** A line that says how many to cast on. */
  readonly castOn: { readonly castOn: CastOn; readonly words: string } | null
  /** Lines round the rows that are no rows: a name, remarks, 'Repeat rows 1 to 4'. */
  readonly beside: readonly string[]
}

interface Heading {
  readonly numbers: readonly number[]
  /** Characters that it takes. */
  readonly length: number
  /** 'Row 2 and all even rows:': every second row from there on that is not given. */
  readonly on: boolean
}

const andAll = /^\s*(?:rows?|rounds?|rnds?)\s*(\d{1,4})\s*(?:,|and|&)\s*(?:all|every)\b[^:]{0,40}:\s*(?=\S)/i

function headed(line: string): Heading | null {
  const all = andAll.exec(line)
  if (all) return { numbers: [Number(all[1])], length: all[0].length, on: true }
  const label = rowLabel(line)
  return label && label.length < line.length
    ? { numbers: label.numbers, length: label.length, on: false }
    : null
}

/** 'Repeat these 4 rows for pattern': what to do with the rows, no row. */
const isAboutRows = (line: string): boolean =>
  /^(?:rep(?:eat)?|work|continue|these|cont)\b.*\b(?:rows?|rounds?|rnds?|pattern)\b/i.test(line)

/** 'Multiple of 6 sts + 1', 'Cast on 23 sts'. */
function castOnIn(line: string): CastOn | null {
  const rule =
    /\bmultiple\s+of\s+(\d{1,4})\b(?:\s*(?:sts?|stitches)\b\.?)?(?:\s*,?\s*(?:\+|plus|and)\s*(\d{1,4}))?/i.exec(
      line,
    )
  if (rule) return Number(rule[1]) > 0 ? { multiple: Number(rule[1]), plus: Number(rule[2] ?? 0) } : null
  const fixed = /^(?:cast\s+on|co)\s+(\d{1,4})\s*(?:sts?|stitches)?\s*\.?$/i.exec(line)
  return fixed && Number(fixed[1]) > 0 ? { fixed: Number(fixed[1]) } : null
}

/**
 * Reads a pasted text line by line. Where lines are headed ('Row 1:'), a line without a heading goes on with the row
 * before, 'Rows 2, 4 and 6: purl' fills all three, and what stands before the first row is told apart. Rows whose
 * numbers do not make up a whole are left as they stand, so that nothing is lost.
 */
export function readPaste(text: string): Pasted {
  const lines = text
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
  const first = lines.findIndex((line) => headed(line) !== null)
  const says =
    lines.length > 1
      ? lines.findIndex((line, i) => !headed(line) && (first < 0 || i < first) && castOnIn(line))
      : -1
  const words = lines[says] ?? ''
  const rule = castOnIn(words)
  const castOn = rule && says >= 0 ? { castOn: rule, words } : null
  const rest = lines.filter((_, i) => !(castOn && i === says))
  if (first < 0) {
    const rows = rest.filter((line) => !isAboutRows(line))
    return { rows, castOn, beside: rest.filter(isAboutRows) }
  }
  const lead = lines.slice(0, first).filter((_, i) => !(castOn && i === says))
  const body = lines.slice(first)
  const about = body.filter((line) => !headed(line) && isAboutRows(line))
  const written = body.filter((line) => headed(line) || !isAboutRows(line))
  return { rows: rowsByNumber(written) ?? written, castOn, beside: [...lead, ...about] }
}

function rowsByNumber(lines: readonly string[]): string[] | null {
  const rows = new Map<number, string>()
  let last: readonly number[] = []
  let on: number | null = null
  for (const line of lines) {
    const label = headed(line)
    if (label?.numbers.some((number) => number < 1 || number > limits.rows || rows.has(number))) return null
    last = label?.numbers ?? last
    if (label?.on) on = last[0] ?? null
    const words = label ? line.slice(label.length) : line
    for (const number of last) rows.set(number, [rows.get(number), words].filter(Boolean).join(' '))
  }
  if (on !== null) fillOn(rows, on)
  const from = Math.min(...rows.keys())
  const all = Array.from(rows, (_, i) => rows.get(from + i))
  return all.every((row) => row !== undefined) ? all : null
}

/** A row that stands for every second one after it, up to the one behind the last that is given. */
function fillOn(rows: Map<number, string>, from: number): void {
  const words = rows.get(from) ?? ''
  const last = Math.max(...rows.keys())
  for (let number = from + 2; number <= last + 1 && number <= limits.rows; number += 2)
    if (!rows.has(number)) rows.set(number, words)
}
