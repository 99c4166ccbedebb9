import type { StitchId } from '../../engine/stitches/index.ts'
import { siteRoot } from '../pattern-facts.ts'
import { slugOf } from './slug.ts'

export const stitchesAddress = (): string => `${siteRoot()}stitches/`
export const stitchAddress = (id: StitchId): string => `${stitchesAddress()}${slugOf(id)}/`
export const closeUpAddress = (id: StitchId): string => `${stitchAddress(id)}close-up.svg`
