/** What may stand on a class's paper beside the rows, the cast-on and the cautions, which always do. */
export const sections = [
  'plan',
  'picture',
  'bring',
  'key',
  'chart',
  'stuck',
  'notes',
  'homework',
  'row cards',
] as const
export type Section = (typeof sections)[number]

export const papers = ['a4', 'letter'] as const
export type Paper = (typeof papers)[number]

/**
 * How the paper is printed. 'large': 24 points, one column, nothing that only a picture says. 'easier': wide spacing on
 * tinted paper. 'left-handed': chart, order and lean words in the mirror. 'for copying': lines and type that stay legible
 * when a copier makes it smaller.
 */
export const prints = ['usual', 'large', 'easier', 'left-handed', 'for copying'] as const
export type Print = (typeof prints)[number]

/** A stretch of the class with its three aims. */
export interface ClassPart {
  readonly minutes: number
  readonly what: string
  readonly all: string
  readonly most: string
  readonly quick: string
}

export interface ClassPattern {
  /** The pattern's address in the library. */
  readonly pattern: string
  readonly repeats: number
}

/** A class as its teacher plans it. Texts are empty where she says nothing. */
export interface ClassPlan {
  readonly title: string
  readonly guild: string
  readonly date: string
  readonly place: string
  readonly yarn: string
  /** Millimetres; null where each pattern's own needle is meant. */
  readonly needle: number | null
  readonly patterns: readonly ClassPattern[]
  readonly parts: readonly ClassPart[]
  readonly bring: readonly string[]
  readonly homework: string
  readonly sections: readonly Section[]
  readonly terms: 'us' | 'uk'
  readonly paper: Paper
  readonly print: Print
}

/** A class of which nothing is said yet: everything on the paper but the row cards. */
export const emptyClass: ClassPlan = {
  title: '',
  guild: '',
  date: '',
  place: '',
  yarn: '',
  needle: null,
  patterns: [],
  parts: [],
  bring: [],
  homework: '',
  sections: sections.filter((section) => section !== 'row cards'),
  terms: 'us',
  paper: 'a4',
  print: 'usual',
}

/** Minutes of all parts together. */
export const minutesOf = ({ parts }: Pick<ClassPlan, 'parts'>): number =>
  parts.reduce((sum, { minutes }) => sum + minutes, 0)
