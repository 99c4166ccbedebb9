import type { MeasureUnit } from '../../engine/intake/index.ts'
import type { Gauge, Wishes } from '../../engine/measure/index.ts'
import { many, sizeWords, yarnWords } from './words.ts'

/** What the sheet was reckoned from, for paper, where the form is not seen. Nothing told gives no words. */
export function toldWords(wishes: Wishes, unit: MeasureUnit): string {
  const { swatch, weighed, measuredYarn, ball, width, length, pace, added } = wishes
  const gauge = (name: string, found: Gauge | null): string | null =>
    found && `${gaugeWords(found, unit)} ${name}`
  const yarn = (mm: number): string => yarnWords({ value: mm, least: mm, most: mm }, unit)
  const band = [
    ball.length === null ? null : yarn(ball.length),
    ball.grams === null ? null : `${ball.grams} g`,
  ]
  const parts = [
    width === null ? null : `wanted width ${sizeWords(width, unit)}`,
    length === null ? null : `wanted length ${sizeWords(length, unit)}`,
    added === 0 ? null : many(added, 'edge stitch', 'edge stitches'),
    gauge('before blocking', swatch.before),
    gauge('after blocking', swatch.after),
    swatch.before || swatch.after ? `gauge in ${swatch.of}` : null,
    band.some((part) => part !== null)
      ? `a ball of ${band.filter((part) => part !== null).join(', ')}`
      : null,
    weighed &&
      `a swatch of ${weighed.stitches} stitches and ${weighed.rows} rows weighing ${weighed.grams} g`,
    measuredYarn && `${measuredYarn.stitches} stitches from ${sizeWords(measuredYarn.length, unit)} of yarn`,
    pace === null ? null : `${pace} stitches a minute`,
  ].filter((part) => part !== null)
  return parts.length === 0 ? '' : `Reckoned from: ${parts.join('; ')}.`
}

const gaugeWords = ({ stitches, rows, over }: Gauge, unit: MeasureUnit): string =>
  `${many(stitches, 'stitch', 'stitches')}${rows === null ? '' : ` and ${many(rows, 'row')}`} in ${sizeWords(over, unit)}`
