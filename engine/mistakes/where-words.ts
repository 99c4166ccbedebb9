import { stitch } from '../stitches/index.ts'
import { type Plan, sectionWords } from './plan.ts'
import type { LookAt, TellApart } from './tell-apart.ts'
import { type Clues, madeBefore, type NearPlace, type PossiblePlace } from './where.ts'
import { capital, listed, low, numberWord, rowName, stitches } from './words.ts'

/** 'Row 3, repeat 2: 8 of 25 stitches done'. */
export function placeHeadline(plan: Plan, { row, done }: Pick<PossiblePlace, 'row' | 'done'>): string {
  const acts = plan.rows[row]?.acts ?? []
  const name = rowName(plan, row)
  if (done === 0) return `${name} is about to begin`
  if (done >= acts.length) return `${name} is done`
  return `${name}, ${sectionWords(plan, acts[done]?.section ?? 0)}: ${done} of ${stitches(acts.length)} done`
}

/** Stitches as a row writes them, like ones together: 'yo, k3, sk2p'. */
export function writtenRun(ids: readonly string[]): string {
  const runs: { id: string; times: number }[] = []
  for (const id of ids) {
    const last = runs.at(-1)
    if (last?.id === id) last.times++
    else runs.push({ id, times: 1 })
  }
  return runs.map(({ id, times }) => written(id, times)).join(', ')
}

function written(id: string, times: number): string {
  const { us } = stitch(id)
  if (id === 'k' || id === 'p') return `${us}${times}`
  return times === 1 ? us : times === 2 ? `${us} twice` : `${us} ${times} times`
}

export interface PlaceWords {
  readonly headline: string
  /** The stitches before, the newest last, and those to come; empty where there are none. */
  readonly before: string
  readonly after: string
  readonly onNeedles: string
}

/** A place with the words round it. */
export function placeWordsAt(plan: Plan, place: Pick<PossiblePlace, 'row' | 'done'>, around = 4): PlaceWords {
  const { worked } = plan
  const row = worked.rows[place.row]
  const step = row?.steps[place.done - 1]
  const after = (row?.steps ?? []).slice(place.done, place.done + around).map((one) => one.stitch)
  const [left, right] = [step?.left ?? row?.before.length ?? 0, step?.right ?? row?.waiting.length ?? 0]
  return {
    headline: placeHeadline(plan, place),
    before: writtenRun(madeBefore(worked, place).slice(-around)),
    after: writtenRun(after),
    onNeedles: `${left} still to be worked, ${right} on the needle with the new stitches`,
  }
}

const looking: Readonly<Record<LookAt, string>> = {
  side: 'Which side of the work faces you, with the yarn ready to go on?',
  'last stitch': 'Look at the last stitch that you made. What is it?',
  'loop to come': 'Look at the next loop that you would work. What is it, one row down?',
  'stitches worked': 'Count the needle that holds the new stitches. How many are there?',
  'stitches to come': 'Count the needle with the stitches still to be worked. How many are there?',
}

const seen: Readonly<Record<string, string>> = {
  RS: 'The right side',
  WS: 'The wrong side',
  hole: 'A yarn over: a loop laid over the needle, with a hole under it',
  'two together': 'Two stitches worked together',
  'three together': 'Three stitches worked together',
  knit: 'A smooth stitch: knitted',
  purl: 'A stitch with a bump under it: purled',
  plain: 'A plain stitch: no hole and no decrease',
  none: 'There is none',
  'something else': 'Something else',
}

/** The question that tells places apart, and the words of its choices. */
export function tellApartWords({ look, choices }: TellApart): { question: string; choices: string[] } {
  return {
    question: looking[look],
    choices: choices.map(({ sees }) => seen[sees] ?? capital(stitches(Number(sees)))),
  }
}

/** Why no place fits, kindly, and what the needles hold in all against what the rows ever have. */
export function noPlaceWords(plan: Plan, clues: Clues): string[] {
  const { left, right } = clues
  if (left === undefined || right === undefined)
    return ['No place in this pattern agrees with all of that. Leave out whatever you are least sure of.']
  const all = left + right
  const rows = possibleRows(plan, clues)
  const names = rows.filter((row) => holdsEver(plan, row, all)).map((row) => low(rowName(plan, row)))
  const none = rows.length === 1 ? `${low(rowName(plan, rows[0] ?? 0))} never has` : 'no row ever has'
  return [
    `No place fits that has ${left} still to be worked and ${right} done.`,
    names.length === 0
      ? `Together that is ${stitches(all)}, and ${none} so many.`
      : `Together that is ${stitches(all)}, as at some moment of ${listed(names)}, but never split like that.`,
    'Count once more. If it stays so, a stitch may have come or gone.',
  ]
}

/** Rows that the reader may be in. */
const possibleRows = ({ worked }: Plan, { row: only, side }: Clues): number[] =>
  worked.rows.flatMap((row, index) =>
    (only === undefined || only === index) && (side === undefined || side === row.side) ? [index] : [],
  )

/** Whether both needles together hold so many at some moment of a row. */
function holdsEver({ worked }: Plan, row: number, all: number): boolean {
  const { before = [], waiting = [], steps = [] } = worked.rows[row] ?? {}
  return before.length + waiting.length === all || steps.some(({ total }) => total === all)
}

/** 'Here you would have one too few among the new stitches.' */
export function nearWords({ offLeft, offRight }: NearPlace): string {
  const part = (by: number, where: string): string[] =>
    by === 0 ? [] : [`${numberWord(Math.abs(by))} too ${by < 0 ? 'few' : 'many'} ${where}`]
  const off = [...part(offLeft, 'still to be worked'), ...part(offRight, 'among the new stitches')]
  return off.length === 0 ? 'The counts would fit here.' : `Here you would have ${listed(off)}.`
}
