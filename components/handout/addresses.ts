import type { HandoutPictures } from '../../engine/lesson/index.ts'
import { fabricFileAddress, siteRoot } from '../pattern-facts.ts'

export const classesAddress = (): string => `${siteRoot()}classes/`
export const classAddress = (slug: string): string => `${classesAddress()}${slug}/`
/** The class as the file that it was made from. */
export const classFileAddress = (slug: string): string => `${classesAddress()}${slug}.yaml`
export const builderAddress = (): string => `${classesAddress()}new/`
/** A pattern's own file, for the builder to prove again. */
export const patternFileAddress = (slug: string): string => `${classesAddress()}patterns/${slug}.yaml`

/** The pictures that stand as files beside a pattern's page. */
export const picturesOf = (slug: string): HandoutPictures => ({
  blocked: fabricFileAddress({ slug }, 'fabric'),
  asKnitted: fabricFileAddress({ slug }, 'as-knitted'),
})
