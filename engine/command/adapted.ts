import { type Adapted, adapt, adaptationNames, type Request, readRequests } from '../adapt/index.ts'
import type { Pattern } from '../pattern/index.ts'

/** What is asked for by `--adapt`; or, for a name that is not known, the words for wrong usage. */
export function requestsFrom(
  list: string,
): { readonly requests: readonly Request[] } | { readonly wrong: string } {
  const read = readRequests(list)
  if (!('unknown' in read)) return { requests: read }
  const meant = read.suggestion === null ? '' : `; did you mean \`${read.suggestion}\`?`
  const known = `--adapt knows ${adaptationNames.join(', ')}`
  return { wrong: `no adaptation is called \`${read.unknown}\`${meant}\n${known}` }
}

/** The pattern adapted, with the report told through `tell`; null where it cannot be done, with the reason told. */
export function adaptedFor(
  pattern: Pattern,
  requests: readonly Request[],
  tell: (text: string) => void,
): Pick<Adapted, 'pattern' | 'closing'> | null {
  const done = adapt(pattern, requests)
  if (!done.ok) {
    const { sentence, hint } = done.refusal
    tell(`It cannot be adapted so. ${sentence}\n${hint === null ? '' : `  To try: ${hint}.\n`}`)
    return null
  }
  for (const { ease, sentence } of done.changes) tell(`${ease === 'hard' ? 'Take care: ' : ''}${sentence}\n`)
  for (const { sentence } of done.offers) tell(`You may choose: ${sentence}\n`)
  if (requests.length > 0) tell(`${castOnWords(done)}\n`)
  return done
}

function castOnWords({ counts }: Adapted): string {
  const [only] = counts
  if (counts.length === 1) return `Cast on ${only?.stitches} stitches.`
  return `Cast on ${counts.map(({ stitches }) => stitches).join(', ')} … stitches for ${counts.map(({ repeats }) => repeats).join(', ')} … repeats.`
}
