import type { Issue } from '../engine/base/index.ts'
import type { Proof } from '../engine/counts/index.ts'
import { checkPattern, problemText } from '../engine/intake/index.ts'
import { type WorkedPattern, work } from '../engine/needles/index.ts'
import { type Pattern, workedAgain } from '../engine/pattern/index.ts'

/** What every pattern file has, proved or not. */
interface Filed {
  /** The file's name without its ending: the pattern's address. */
  readonly slug: string
  /** Where the file stands, from the project's root. */
  readonly file: string
  /** The file as it was written. */
  readonly text: string
  readonly title: string
  readonly issues: readonly Issue[]
}

/** A pattern whose counts are proved. */
export interface ProvedEntry extends Filed {
  readonly proved: true
  readonly pattern: Pattern
  readonly proof: Proof
  readonly draft: boolean
}

/** A draft with errors: shown, but nothing in it is a fact. */
export interface UnprovedEntry extends Filed {
  readonly proved: false
  /** Null where the file cannot be read as a pattern at all. */
  readonly pattern: Pattern | null
  readonly draft: true
}

export type Entry = ProvedEntry | UnprovedEntry

type Checked = Entry | { readonly problems: string }

function checkedFile(path: string, text: string): Checked {
  const file = path.replace(/^(\.\.\/)+/, '')
  const source = { name: file, text }
  const { pattern, proof, issues, sound } = checkPattern(source)
  const slug = file.replace(/^.*\//, '').replace(/\.yaml$/, '')
  const filed = { slug, file, text, title: pattern?.title ?? slug, issues }
  if (sound && pattern && proof) return { ...filed, proved: true, pattern, proof, draft: pattern.draft }
  if (saysDraft(pattern, text)) return { ...filed, proved: false, pattern, draft: true }
  return { problems: problemText({ source, issues }) }
}

/** A file that is too broken to be read still says that it is a draft. */
const saysDraft = (pattern: Pattern | null, text: string): boolean =>
  pattern?.draft ?? /^draft:[ \t]*true[ \t]*(#.*)?$/m.test(text)

/** Every file is looked at before the build stops, so that one look at the list is enough to mend them all. */
function allSound(checked: readonly Checked[]): Entry[] {
  const problems = checked.flatMap((one) => ('problems' in one ? [one.problems] : []))
  if (problems.length > 0) {
    const files = problems.length === 1 ? 'One pattern is' : `${problems.length} patterns are`
    throw new Error(`${files} not sound. Mend each, or mark it \`draft: true\`.\n\n${problems.join('\n')}`)
  }
  return checked.filter((one) => 'slug' in one)
}

function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value
  Object.freeze(value)
  for (const inner of Object.values(value)) frozen(inner)
  return value
}

const files = import.meta.glob<string>('../content/patterns/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** Every pattern of the guild, read and proved once a build, by slug. */
export const library: readonly Entry[] = frozen(
  allSound(Object.entries(files).map(([path, text]) => checkedFile(path, text))),
)

export const provedEntries: readonly ProvedEntry[] = library.filter((entry) => entry.proved)

/** The proved pattern of that slug. Throws where there is none: pages name only patterns that they need. */
export function provedEntry(slug: string): ProvedEntry {
  const entry = provedEntries.find((one) => one.slug === slug)
  if (!entry) throw new Error(`there is no proved pattern called '${slug}'`)
  return entry
}

const workedBefore = new Map<string, WorkedPattern>()

/** A proved pattern worked loop by loop over so many repeats, its rows so many times one above the other; once a build. */
export function workedOf(entry: ProvedEntry, repeats: number, times = 1): WorkedPattern {
  const key = `${entry.slug} ${repeats} ${times}`
  const known = workedBefore.get(key)
  if (known) return known
  const { worked, issues } = work(times === 1 ? entry.pattern : workedAgain(entry.pattern, times), repeats)
  if (!worked) throw new Error(problemText({ source: { name: entry.file, text: entry.text }, issues }))
  workedBefore.set(key, worked)
  return worked
}
