import { catalogue, type StitchId } from '../../engine/stitches/index.ts'
import { siteRoot } from '../pattern-facts.ts'
import { slugOf } from './slug.ts'

export const stitchesAddress = (): string => `${siteRoot()}stitches/`
export const stitchAddress = (id: StitchId): string => `${stitchesAddress()}${slugOf(id)}/`
export const closeUpAddress = (id: StitchId): string => `${stitchAddress(id)}close-up.svg`

/** The page of the stitch that some words name in short or in full; null where they name none. */
export function pageOfStitch(words: string): string | null {
  const named = catalogue.find(({ us, name }) => us === words || name === words)
  return named ? stitchAddress(named.id) : null
}
