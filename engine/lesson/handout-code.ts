import { printRow } from '../notation/index.ts'
import type { Pattern } from '../pattern/index.ts'

/** Capitals and digits that nobody takes for one another: without 0 O Q D, 1 I L, 2 Z, 5 S, 6 G, 8 B, U V. */
const letters = '3479ACEFHJKMNPRTWXY'
const length = 6

/** All that a knitter works from, and the version; notes and credits may be mended without a new code. */
function worksFrom(pattern: Pattern): string {
  const { title, castOn, worked, firstSide, growing, doubleYarnOver, bindOffLeaves, held, edges } = pattern
  const rows = [...pattern.setUp, ...pattern.rows].map(({ number, items }) => [number, printRow(items)])
  return JSON.stringify([
    ...[title, pattern.about.version ?? 'draft', worked, firstSide, growing, doubleYarnOver, bindOffLeaves],
    'fixed' in castOn ? castOn.fixed : [castOn.multiple, castOn.plus],
    ...[held, printRow(edges.before), printRow(edges.after)],
    rows,
  ])
}

/** The hash FNV-1a in 32 bits, as its authors Fowler, Noll and Vo state it, over the two bytes of each UTF-16 unit. */
function hash(text: string): number {
  let value = 0x811c9dc5
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    for (const byte of [unit & 0xff, unit >> 8]) value = Math.imul(value ^ byte, 0x01000193)
  }
  return value >>> 0
}

/**
 * The short code of a printed page: it names this pattern in this version, and changes when a row, the cast-on or the
 * version does. Two threes, such as 'K7X-3MA'.
 */
export function pageCode(pattern: Pattern): string {
  let rest = hash(worksFrom(pattern))
  let code = ''
  for (let i = 0; i < length; i++) {
    code += letters[rest % letters.length]
    rest = Math.floor(rest / letters.length)
  }
  return `${code.slice(0, 3)}-${code.slice(3)}`
}
