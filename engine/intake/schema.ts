import { z } from 'zod'
import { printable } from '../base/index.ts'

/** Text without characters that steer a terminal or the reading direction, however they were written. */
const text = (most: number) =>
  z
    .string()
    .max(most)
    .refine((value) => printable(value.replace(/[\n\r\t]/g, ' ')) === value.replace(/[\n\r\t]/g, ' '))
const words = z.union([text(200).transform((one) => [one]), z.array(text(200)).max(50)])
const count = z.number().int().min(0).max(10_000)
const version = z.union([text(20), z.number().transform(String)])
/** Set-up rows count down from 0. */
const rowNumbers = z.array(z.number().int().min(-1000).max(10_000)).max(200)
const date = z.union([text(30), z.date().transform((d) => d.toISOString().slice(0, 10))])

export const castOnSchema = z.union([
  z
    .number()
    .int()
    .min(1)
    .max(10_000)
    .transform((fixed) => ({ fixed })),
  z.strictObject({ multiple: z.number().int().min(1).max(10_000), plus: count.default(0) }),
])

/** Everything in a pattern file but its rows and edges, which are read as knitters write them. */
export const fileSchema = z.strictObject({
  title: text(200).min(1),
  castOn: castOnSchema,
  worked: z.enum(['flat', 'round']).default('flat'),
  firstSide: z.enum(['RS', 'WS']).default('RS'),
  rows: z.unknown(),
  setUp: z.unknown().optional(),
  edges: z.unknown().optional(),
  growing: z.boolean().default(false),
  doubleYarnOver: z.enum(['two', 'one']).default('two'),
  bindOffLeaves: z.enum(['extra', 'first']).default('extra'),
  held: count.default(0),
  draft: z.boolean().default(false),
  also: words.default([]),
  notToConfuseWith: words.default([]),
  tradition: text(200).optional(),
  level: z.enum(['Basic', 'Easy', 'Intermediate', 'Complex']).optional(),
  teaches: words.default([]),
  source: z
    .union([
      text(500).transform((title) => ({ title })),
      z.strictObject({
        title: text(300),
        author: text(200).optional(),
        year: z.number().int().min(1000).max(2200).optional(),
        place: text(300).optional(),
      }),
    ])
    .optional(),
  contributor: text(200).optional(),
  licence: text(200).optional(),
  tested: text(500).optional(),
  version: version.optional(),
  corrections: z
    .array(z.strictObject({ version, date, change: text(500), rows: rowNumbers.optional() }))
    .max(100)
    .default([]),
  yarn: text(200).optional(),
  needle: z.number().min(0.5).max(50).optional(),
  blocked: text(200).optional(),
  unblocked: text(200).optional(),
  notes: text(4000).optional(),
})

export type PatternFile = z.infer<typeof fileSchema>

/** Keys that a pattern file may have. */
export const fileKeys: readonly string[] = Object.keys(fileSchema.shape)
