import { z } from 'zod'
import { printable } from '../base/index.ts'
import { type ClassPlan, emptyClass, papers, prints, sections } from '../lesson/index.ts'

/** Text without characters that steer a machine or the reading direction. */
const text = (most: number) =>
  z
    .string()
    .max(most)
    .refine((value) => printable(value.replace(/[\n\r\t]/g, ' ')) === value.replace(/[\n\r\t]/g, ' '))
const wordsOrNumber = (most: number) => z.union([text(most), z.number().transform(String)])

/** A class with more would not be taught in a year. */
const mostPatterns = 30
const mostParts = 40
export const mostClassRepeats = 60

const pattern = z.union([
  text(100).transform((name) => ({ pattern: name, repeats: 3 })),
  z.strictObject({ pattern: text(100), repeats: z.number().int().min(1).max(mostClassRepeats).default(3) }),
])

const part = z.strictObject({
  minutes: z.number().int().min(0).max(600),
  what: text(300),
  all: text(300).default(''),
  most: text(300).default(''),
  quick: text(300).default(''),
})

/** Everything that a class file may say. What it leaves out is as in a class of which nothing is said yet. */
export const classSchema = z.strictObject({
  title: text(200).default(''),
  guild: text(200).default(''),
  date: wordsOrNumber(100).default(''),
  place: text(200).default(''),
  yarn: text(200).default(''),
  needle: z.number().min(0.5).max(50).nullable().default(null),
  patterns: z.array(pattern).max(mostPatterns).default([]),
  parts: z.array(part).max(mostParts).default([]),
  bring: z.array(text(200)).max(50).default([]),
  homework: text(2000).default(''),
  sections: z.array(z.enum(sections)).default([...emptyClass.sections]),
  terms: z.enum(['us', 'uk']).default('us'),
  paper: z.enum(papers).default('a4'),
  print: z.enum(prints).default('usual'),
})

type Shape = typeof classSchema.shape
export type ClassKey = keyof Shape

export const classKeys = Object.keys(classSchema.shape) as readonly ClassKey[]

const listOf = (names: readonly string[]): string => `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`

/** What each key wants, in words. */
export const wanted: Readonly<Record<ClassKey, string>> = {
  title: 'the name of the class, in quotes if it begins with a sign',
  guild: 'who holds the class',
  date: 'a day in words or figures',
  place: 'where it is held',
  yarn: 'the yarn in words',
  needle: 'a size in millimetres, such as 4.5',
  patterns: `a list such as \`- { pattern: reed-bed, repeats: 3 }\`, repeats from 1 to ${mostClassRepeats}, at most ${mostPatterns} patterns`,
  parts:
    'a list such as `- { minutes: 15, what: casting on, all: 13 stitches }`; minutes are a whole number, and `most` and `quick` may follow',
  bring: 'a list of things, one a line after a dash',
  homework: 'a text of at most 2000 characters',
  sections: `a list of these: ${sections.join(', ')}`,
  terms: 'us or uk',
  paper: listOf(papers),
  print: listOf(prints),
}

/** The keys of a list's entries, for whom a misspelt one may have meant. */
export const innerKeys: Readonly<Partial<Record<string, readonly string[]>>> = {
  patterns: ['pattern', 'repeats'],
  parts: ['minutes', 'what', 'all', 'most', 'quick'],
}

/** A value of the right shape as a plan. Whether its patterns are in the library is asked elsewhere. */
export const planOf = (parsed: z.output<typeof classSchema>): ClassPlan => parsed

/** The keys of a plan, and the entries of its lists, that pass by themselves; the rest as in a class of which nothing is said. */
export function savedPlan(plain: Readonly<Record<string, unknown>>): ClassPlan {
  const passes = (key: ClassKey, value: unknown): boolean => classSchema.shape[key].safeParse(value).success
  const kept = classKeys.flatMap((key) => {
    const value = Object.hasOwn(plain, key) ? plain[key] : undefined
    if (value === undefined) return []
    if (passes(key, value)) return [[key, value]]
    return Array.isArray(value) ? [[key, value.filter((entry) => passes(key, [entry]))]] : []
  })
  const parsed = classSchema.safeParse(Object.fromEntries(kept))
  return planOf(parsed.success ? parsed.data : classSchema.parse({}))
}
