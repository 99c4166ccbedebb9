import { classProblemText, type KnownPatterns, readClass } from '../engine/intake/index.ts'
import { type ClassPlan, type Handout, handoutOf } from '../engine/lesson/index.ts'
import { library, provedEntries } from './library.ts'

/** A class of the guild that stands as a file. */
export interface ClassEntry {
  /** The file's name without its ending: the class's address. */
  readonly slug: string
  readonly text: string
  readonly plan: ClassPlan
  readonly handout: Handout
}

const files = import.meta.glob<string>('../content/classes/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
})

const known: KnownPatterns = new Map(library.map(({ slug, proved }) => [slug, { proved }]))

/** Addresses below /classes/ that are not classes. */
const taken: readonly string[] = ['new', 'patterns']

type Read = ClassEntry | { readonly problems: string }

function readFile(path: string, text: string): Read {
  const name = path.replace(/^(\.\.\/)+/, '')
  const slug = name.replace(/^.*\//, '').replace(/\.yaml$/, '')
  const { plan, problems } = readClass({ name, text }, known)
  if (taken.includes(slug)) return { problems: `${name}: a class cannot be called \`${slug}\`\n` }
  if (!plan || problems.length > 0) return { problems: classProblemText({ name, text }, problems) }
  return { slug, text, plan, handout: handoutOf(plan, provedEntries) }
}

function allRead(read: readonly Read[]): ClassEntry[] {
  const problems = read.flatMap((one) => ('problems' in one ? [one.problems] : []))
  if (problems.length > 0) throw new Error(`Some classes cannot be printed.\n\n${problems.join('\n')}`)
  return read.filter((one) => 'slug' in one)
}

/** Every class of the guild, read once a build. A file with a problem stops the build and tells all of them. */
export const classes: readonly ClassEntry[] = allRead(
  Object.entries(files).map(([path, text]) => readFile(path, text)),
)
