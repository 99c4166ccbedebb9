import type { WorkedPattern } from '../../engine/needles/index.ts'
import type { Sight } from './picture.ts'

const often = (times: number): string => (times === 1 ? 'once' : times === 2 ? 'twice' : `${times} times`)

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`

/** '2 repeats, 21 stitches cast on; 8 rows worked twice'. */
export function extentWords({ pattern, repeats, castOn }: WorkedPattern, times: number): string {
  const { rows, setUp, worked } = pattern
  const word = worked === 'round' ? 'round' : 'row'
  const across = 'fixed' in pattern.castOn ? '' : `${counted(repeats, 'repeat')}, `
  const width = `${across}${castOn} ${castOn === 1 ? 'stitch' : 'stitches'} cast on`
  const first = setUp.length > 0 ? `${counted(setUp.length, `set-up ${word}`)}, then ` : ''
  return `${width}; ${first}${counted(rows.length / times, word)} worked ${often(times)}`
}

/** 'as knitted', 'blocked', '40 % of the way to blocked'. */
export function blockingWords(blocking: number): string {
  if (blocking <= 0) return 'as knitted'
  return blocking >= 1 ? 'blocked' : `${Math.round(blocking * 100)} % of the way to blocked`
}

export const sightWords = ({ side, blocking }: Pick<Sight, 'side' | 'blocking'>): string =>
  `${side} side, ${blockingWords(blocking)}`
