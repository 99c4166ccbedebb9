import { escapeText, neighboursOf } from '../../engine/drawing/index.ts'
import {
  type CallOut,
  type Lesson,
  type LessonStep,
  lessonStep,
  rowLabelOf,
} from '../../engine/lesson/index.ts'
import type { WorkedRow } from '../../engine/needles/index.ts'
import { type Hold, handSteps, stitch } from '../../engine/stitches/index.ts'
import type { Spot } from './state.ts'
import { progressIn, type Word, wordsOf } from './words.ts'

/** What is shown at one stitch, as HTML for each place of the page that changes. Made alike at build time and in the browser. */
export interface Slots {
  readonly status: string
  readonly name: string
  readonly place: string
  readonly count: string
  readonly needleCounts: string
  readonly balance: string
  readonly turn: string
  readonly hands: string
  readonly look: string
  readonly callOuts: string
  readonly row: string
  readonly words: string
}

const text = escapeText
const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

export function slotsAt(lesson: Lesson, spot: Spot, hold: Hold): Slots | null {
  const at = lessonStep(lesson, spot.row, spot.step)
  if (!at) return null
  return {
    status: text(at.status),
    name: text(capital(at.stitchName)),
    place: text(placeWords(at)),
    count: countHtml(at),
    needleCounts: text(`${at.step.left} on the left needle, ${at.step.right} on the right.`),
    balance: text(at.balance.words),
    turn: paragraph(turnWords(lesson, spot)),
    hands: handSteps(stitch(at.step.stitch), hold, neighboursOf(at.row, spot.step))
      .map((one) => `<li>${text(one)}</li>`)
      .join(''),
    look: paragraph(at.lookCheck ?? ''),
    callOuts: at.callOuts.map(callOutHtml).join(''),
    row: rowHtml(lesson, at),
    words: wordsHtml(lesson, spot, at.row),
  }
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

const paragraph = (words: string): string => (words === '' ? '' : `<p>${text(words)}</p>`)

/** Where in its row a stitch stands. */
function placeWords({ place, row, step }: LessonStep): string {
  if (place !== null) return place
  if (step.part !== 'row') return 'Edge stitch'
  const repeated = row.steps.findIndex((one) => one.repeat !== null)
  if (repeated < 0) return `Stitch ${step.step} of ${row.steps.length}`
  return step.step <= repeated ? 'Before the first repeat' : 'After the last repeat'
}

const countHtml = ({ countBefore, countAfter }: LessonStep): string =>
  `<span aria-hidden="true"><span class="count-before">${countBefore}</span> <span class="count-arrow">→</span> ` +
  `<strong>${countAfter}</strong> <span class="count-unit">${countAfter === 1 ? 'stitch' : 'stitches'}</span></span>` +
  `<span class="visually-hidden">${stitches(countBefore)} before, ${countAfter} after</span>`

/** Between two rows the work changes hands. */
function turnWords({ worked }: Lesson, { row, step }: Spot): string {
  const isRound = worked.pattern.worked === 'round'
  const [here, next] = [worked.rows[row], worked.rows[row + 1]]
  if (!here) return ''
  const words: string[] = []
  if (step === 0 && row > 0) {
    const face = here.side === 'RS' ? 'right side' : 'wrong side'
    words.push(
      isRound ? 'A new round begins at the marker.' : `The work is turned: you look at the ${face} now.`,
    )
  }
  if (step === here.steps.length - 1 && next) {
    const label = rowLabelOf(worked, next).toLowerCase()
    const last = here.turned
      ? 'Leave the other stitches where they are.'
      : `The last stitch of the ${isRound ? 'round' : 'row'}.`
    words.push(isRound ? `${last} Next comes ${label}.` : `${last} Turn the work for ${label}.`)
  }
  return words.join(' ')
}

const callOutHtml = ({ title, words, folded }: CallOut): string =>
  `<details${folded ? '' : ' open'}><summary>${text(title)}</summary><p>${text(words)}</p></details>`

function rowHtml({ worked }: Lesson, { row }: LessonStep): string {
  const side = worked.pattern.worked === 'round' ? '' : row.side === 'RS' ? ', right side' : ', wrong side'
  const [begins, ends] = [row.before.length + row.waiting.length, row.after.length + row.unworked.length]
  const counts =
    begins === ends ? `${stitches(begins)} before and after` : `begins with ${begins}, ends with ${ends}`
  return `${text(rowLabelOf(worked, row) + side)} <span class="row-counts">${counts}</span>`
}

function wordsHtml({ worked }: Lesson, spot: Spot, row: WorkedRow): string {
  const { pattern } = worked
  const written = [...pattern.setUp, ...pattern.rows][spot.row]
  if (!written) return ''
  return wordsOf(row, written, pattern)
    .map(({ kind, label, words }) => {
      const pieces = words.map((word) => wordHtml(word, row, spot.step)).join('')
      return `<div class="box ${kind}"><span class="box-label">${text(label)}</span> <span class="box-words">${pieces}</span></div>`
    })
    .join('')
}

function wordHtml(word: Word, row: WorkedRow, step: number): string {
  if (word.steps.length === 0) return text(word.text)
  if (!word.steps.includes(step)) return `<span class="word">${text(word.text)}</span>`
  const progress = progressIn(word, row, step)
  const often = progress === null ? '' : ` <small>${progress}</small>`
  return `<span class="word is-here" aria-current="step">${text(word.text)}${often}</span>`
}
