import { keyDrawing, toSvg } from '../../engine/drawing/index.ts'
import { type DraftPlace, type Fresh, putStitches, type WrittenAt } from '../../engine/intake/index.ts'
import type { Step } from '../../engine/needles/index.ts'
import { edited, printRow, type TextEdit } from '../../engine/notation/index.ts'
import { catalogue, rightSideLook, type StitchId, stitch, symbolOf } from '../../engine/stitches/index.ts'
import type { ChoiceView } from './answer.ts'
import { unnamed } from './svg.ts'

export interface ChoiceAsk {
  readonly place: DraftPlace
  readonly at: WrittenAt
  readonly side: 'RS' | 'WS'
  /** Stitches that the draft has already: they are offered first. */
  readonly used: ReadonlySet<StitchId>
  /** Words such as 'as row 2', which give way to the row that they stand for; null where the row is written out. */
  readonly standsFor: string | null
}

export interface Choices {
  readonly keeps: readonly ChoiceView[]
  readonly pairs: readonly ChoiceView[]
  readonly others: readonly ChoiceView[]
  readonly out: ChoiceView | null
}

/** Stitches that cannot stand by themselves in the middle of a row. */
const notOffered = ['bind off', 'cast on', 'holding']
const offered = catalogue.filter(({ family, id }) => !notOffered.includes(family) && id !== 'yo2 long')

const takesOf = (fresh: Fresh): number => fresh.reduce((sum, [id, n]) => sum + stitch(id).takes * n, 0)
const makesOf = (fresh: Fresh): number => fresh.reduce((sum, [id, n]) => sum + stitch(id).makes * n, 0)

/** What can be put where a stitch is: what keeps the row's balance first, then the rest with what it does to the count. */
export function choicesAt(ask: ChoiceAsk): Choices {
  const { at, used } = ask
  const here = at.steps[at.step]
  if (!here) return { keeps: [], pairs: [], others: [], out: null }
  const old: Fresh = [[here.stitch, 1]]
  const all = offered
    .filter(({ id }) => id !== here.stitch)
    .toSorted((a, b) => Number(used.has(b.id)) - Number(used.has(a.id)))
    .flatMap(({ id }) => choice(ask, 1, old, [[id, 1]]) ?? [])
  return {
    keeps: all.filter(({ effect }) => effect === ''),
    pairs: pairsAt(ask),
    others: all.filter(({ effect }) => effect !== ''),
    out: choice(ask, 1, old, []),
  }
}

function choice(ask: ChoiceAsk, count: number, old: Fresh, fresh: Fresh): ChoiceView | null {
  const edit = putStitches(ask.at, count, fresh)
  if (!edit) return null
  const stitches = fresh.flatMap(([id, n]) => Array.from({ length: n }, () => id))
  const names = stitches.map((id) => stitch(id).name)
  return {
    words: names.length > 0 ? names.join(', ') : 'take it out',
    short: stitches.map((id) => shortOf(id)).join(', '),
    sign: signsOf(stitches, ask.side),
    effect: effectWords(takesOf(fresh) - takesOf(old), makesOf(fresh) - makesOf(old)),
    change: { kind: 'text', place: ask.place, edit: writtenOut(ask, edit) },
  }
}

const writtenOut = ({ standsFor, at }: ChoiceAsk, edit: TextEdit): TextEdit =>
  standsFor === null ? edit : { start: 0, end: standsFor.length, text: edited(at.text, edit) }

const shortOf = (id: StitchId): string =>
  printRow([{ kind: 'stitch', stitch: id, times: 1, span: { start: 0, end: 0 } }])

/** The signs as they would stand in the chart: seen from the right side, the first worked where the row begins. */
function signsOf(stitches: readonly StitchId[], side: 'RS' | 'WS'): string {
  const seen = side === 'RS' ? stitches.toReversed() : stitches
  return seen
    .map((id) => toSvg(keyDrawing(symbolOf(rightSideLook(id, side)), { cell: 26 }), { idPrefix: 'sign' }))
    .map(unnamed)
    .join('')
}

const stitches = (n: number): string => `${n} ${n === 1 ? 'stitch' : 'stitches'}`

/** What the other stitch does to the row and to the count after it, wherever it is written. */
function effectWords(takes: number, makes: number): string {
  const parts = [
    ...(takes > 0 ? [`needs ${stitches(takes)} more from the row below`] : []),
    ...(takes < 0 ? [`leaves ${stitches(-takes)} of the row below unworked`] : []),
    ...(makes > 0 ? [`${makes} more after this row`] : []),
    ...(makes < 0 ? [`${-makes} fewer after this row`] : []),
  ]
  return parts.join(', ')
}

const isPlain = (step: Step | undefined): boolean =>
  step !== undefined && step.taken.length === 1 && step.made.length === 1

/** A hole with its decrease, in the place of two or three stitches: the row keeps its balance. */
function pairsAt(ask: ChoiceAsk): ChoiceView[] {
  const { at, side } = ask
  const steps = [0, 1, 2].map((i) => at.steps[at.step + i])
  const [a, b, c] = steps
  if (!a || !b) return []
  const [right, left, centre] = side === 'RS' ? ['k2tog', 'ssk', 's2kp'] : ['p2tog', 'ssp', 's2pp']
  const two: Fresh = [
    [a.stitch, 1],
    [b.stitch, 1],
  ]
  const fresh: [number, Fresh, Fresh][] = []
  if (isPlain(a) && isPlain(b))
    for (const [first, second] of [
      ['yo', left],
      [right, 'yo'],
      ['yo', right],
      [left, 'yo'],
    ] as const)
      fresh.push([
        2,
        two,
        [
          [first, 1],
          [second, 1],
        ],
      ])
  if (a.stitch === 'yo' && stitch(b.stitch).takes === 2 && b.made.length === 1)
    fresh.push(
      [
        2,
        two,
        [
          [b.stitch, 1],
          ['yo', 1],
        ],
      ],
      [2, two, [[side === 'RS' ? 'k' : 'p', 2]]],
    )
  if (b.stitch === 'yo' && stitch(a.stitch).takes === 2 && a.made.length === 1)
    fresh.push(
      [
        2,
        two,
        [
          ['yo', 1],
          [a.stitch, 1],
        ],
      ],
      [2, two, [[side === 'RS' ? 'k' : 'p', 2]]],
    )
  if (isPlain(a) && isPlain(b) && isPlain(c) && c)
    fresh.push([
      3,
      [...two, [c.stitch, 1]],
      [
        ['yo', 1],
        [centre, 1],
        ['yo', 1],
      ],
    ])
  return fresh.flatMap(([count, old, put]) => choice(ask, count, old, put) ?? [])
}
