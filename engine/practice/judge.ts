import type { Answers, ChoosePart, CountPart, Exercise, Part, Reply } from './exercise.ts'
import { judgeOrder } from './judge-order.ts'
import type { Table } from './table.ts'
import { stitches } from './words.ts'

const mostCharacters = 20

/** A count as people type it; null for anything else. */
export function readCount(text: string): number | null {
  const tidy = text.slice(0, mostCharacters).normalize('NFKC').trim()
  const digits = /^(\d{1,4})(?:\s*(?:sts?|stitch(?:es)?)\.?)?$/i.exec(tidy)?.[1]
  return digits === undefined ? null : Number(digits)
}

const open = (part: Part, words: string): Reply => ({ part: part.id, right: null, words })

function judgeChoice(part: ChoosePart, answer: string): Reply {
  const chosen = part.choices.find(({ id }) => id === answer)
  return chosen
    ? { part: part.id, right: chosen.right, words: chosen.reply }
    : open(part, 'Choose one first.')
}

function judgeCount(part: CountPart, answer: string): Reply {
  const count = readCount(answer)
  if (answer.trim() === '') return open(part, 'Write a number first.')
  if (count === null) return open(part, 'That is not a number. Write it in digits, such as 18.')
  if (count === part.right)
    return { part: part.id, right: true, words: `Yes, ${stitches(count)}. ${part.because}` }
  const near = part.near.find((one) => one.count === count)
  return { part: part.id, right: false, words: `${near ? `${near.words} ` : ''}${part.because}` }
}

function judgePart(table: Table, part: Part, answer: string | readonly string[] | undefined): Reply {
  if (part.form === 'order') return judgeOrder(table, part, typeof answer === 'object' ? answer : [])
  const text = typeof answer === 'string' ? answer : ''
  return part.form === 'choose' ? judgeChoice(part, text) : judgeCount(part, text)
}

/** What there is to say of each answer. An order is worked; everything else was worked when the exercise was made. */
export const judge = (table: Table, { parts }: Exercise, answers: Answers): Reply[] =>
  parts.map((part) => judgePart(table, part, Object.hasOwn(answers, part.id) ? answers[part.id] : undefined))

/** The right answer of a part, in words. */
export function rightWords(part: Part): string {
  if (part.form === 'count') return stitches(part.right)
  if (part.form === 'choose') return part.choices.find(({ right }) => right)?.words ?? ''
  return part.right.map((id) => part.pieces.find((piece) => piece.id === id)?.words ?? '').join(', ')
}

/** The answers that are right. */
export function rightAnswers({ parts }: Exercise): Answers {
  return Object.fromEntries(
    parts.map((part) => [
      part.id,
      part.form === 'order'
        ? part.right
        : part.form === 'count'
          ? String(part.right)
          : (part.choices.find(({ right }) => right)?.id ?? ''),
    ]),
  )
}
