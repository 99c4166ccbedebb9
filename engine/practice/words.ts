import { printRow } from '../notation/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'

export const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

export const low = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

export const listed = (parts: readonly string[], last = 'and'): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} ${last} ${parts.at(-1)}`

const nowhere = { start: 0, end: 0 }

/** As a row writes it: 'k3', 'ssk', 'yo twice'. */
export const written = (id: StitchId, times = 1): string =>
  printRow([{ kind: 'stitch', stitch: id, times, span: nowhere }])

/** 'k2tog, knit two together'. */
export function fullName(id: StitchId): string {
  const { name } = stitch(id)
  const short = written(id)
  return short === name ? name : `${short}, ${name}`
}

/** 'takes 3 and makes 1'. */
export function doesWords(id: StitchId): string {
  const { takes, makes } = stitch(id)
  return `takes ${takes === 0 ? 'none' : takes} and makes ${makes === 0 ? 'none' : makes}`
}
