import { type Request, readRequests } from '../adapt/index.ts'
import { printable } from '../base/index.ts'

/** Where another pattern goes: to the left of this one, above it, or below it. */
export type Together = 'beside' | 'above' | 'below'

/** One step of making a pattern over, as it was written. */
export type MakeOver =
  | { readonly kind: 'request'; readonly written: string; readonly request: Request }
  | { readonly kind: 'together'; readonly written: string; readonly where: Together; readonly slug: string }
  /** Not understood; with a name that it may have been meant for. */
  | { readonly kind: 'unknown'; readonly written: string; readonly suggestion: string | null }

export interface LinkedMakeOvers {
  readonly steps: readonly MakeOver[]
  /** Whether there was more in it than is read. */
  readonly cut: boolean
}

/** More than anyone makes over by hand. */
const [mostCharacters, mostSteps] = [1000, 24]
/** No step is written in more letters. */
const longestStep = 100

const usualWords = ['beside', 'above', 'below'] as const

const tidied = (text: string): string =>
  text
    .normalize('NFKC')
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ')

/** 'mirror', 'wider 2', 'p2tog for ssp', 'beside vine': hyphens and blanks are the same. */
export function readMakeOver(text: string): MakeOver {
  const written = tidied(text)
  const [word, ...rest] = written.split(' ')
  const where = usualWords.find((one) => one === word)
  const slug = rest.join('-')
  if (where && /^[a-z0-9-]{1,80}$/.test(slug)) return { kind: 'together', written, where, slug }
  const read = written.length <= longestStep ? readRequests(written) : null
  if (read === null) return unknown(written, null)
  if ('unknown' in read) return unknown(written, read.suggestion)
  const [request] = read
  return request && read.length === 1 ? { kind: 'request', written, request } : unknown(written, null)
}

const unknown = (written: string, suggestion: string | null): MakeOver => ({
  kind: 'unknown',
  written: printable(written).slice(0, 60),
  suggestion,
})

/** The steps in the last part of an address: '#round,mirror,wider-2'. What is not understood comes back as such. */
export function parseAdaptHash(hash: unknown): LinkedMakeOvers {
  if (typeof hash !== 'string') return { steps: [], cut: false }
  const text = decoded(hash.replace(/^#/, '').slice(0, mostCharacters))
  const parts = text.split(',').filter((part) => part.trim() !== '')
  const steps = parts.slice(0, mostSteps).map(readMakeOver)
  return { steps, cut: hash.length > mostCharacters || parts.length > mostSteps }
}

/** An address may be cut in the middle of a letter. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}

/** The steps as such a part of an address; empty where there are none. */
export const adaptHash = (steps: readonly Pick<MakeOver, 'written'>[]): string =>
  steps.length === 0
    ? ''
    : `#${steps.map(({ written }) => encodeURIComponent(written.replaceAll(' ', '-'))).join(',')}`
