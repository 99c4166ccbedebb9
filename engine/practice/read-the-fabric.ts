import { closeUpDrawing } from '../drawing/index.ts'
import { rightSideLook, type StitchId, stitch } from '../stitches/index.ts'
import type { Choice, ChoosePart, Exercise } from './exercise.ts'
import { type Random, shuffled } from './luck.ts'
import { nearStitches } from './near-stitches.ts'
import type { Table } from './table.ts'
import { fullName, written } from './words.ts'

type Made = Omit<Exercise, 'kind' | 'number'>
type Side = 'right' | 'wrong'

const described = new Map<string, string>()

/** What a close-up shows, in words found from its loops; two stitches with the same words look the same. */
export function closeUpWords(id: StitchId, side: Side): string {
  const key = `${side} ${id}`
  const known = described.get(key) ?? closeUpDrawing(id, { side, units: 20 }).description ?? ''
  described.set(key, known)
  return known
}

/** Stitches that stand in the fabric as one place to look at. */
const isSeen = (id: StitchId): boolean =>
  !['bind off', 'cast on', 'holding', 'slip', 'bead'].includes(stitch(id).family) &&
  stitch(id).effect.held === 0

/** The pattern's own stitches by their look from the right side, those of wrong-side rows among them. */
export function ownLooks({ worked }: Table): StitchId[] {
  const looks = worked.rows.flatMap(({ side, steps }) =>
    steps.map((step) => rightSideLook(step.stitch, worked.pattern.worked === 'round' ? 'RS' : side)),
  )
  return [...new Set(looks)].filter(isSeen)
}

/** Stitches to choose from that all look different. */
function lookingDifferent(ids: readonly StitchId[], side: Side): StitchId[] {
  const seen = new Set<string>()
  return ids.filter((id) => {
    const words = closeUpWords(id, side)
    return seen.has(words) ? false : seen.add(words)
  })
}

function choicesFor(table: Table, id: StitchId, side: Side, random: Random): Choice[] {
  const own = shuffled(ownLooks(table), random)
  const [mirror] = nearStitches(table, id)
  const near = nearStitches(table, id).filter(isSeen)
  const first = mirror !== undefined && isSeen(mirror) ? [mirror] : []
  const ids = lookingDifferent([id, ...first, ...own, ...near], side).slice(0, 4)
  return shuffled(ids, random).map((one) => ({
    id: one,
    words: fullName(one),
    right: one === id,
    reply:
      one === id
        ? `Yes, ${written(id)}. ${closeUpWords(id, side)}`
        : `${written(one)} looks otherwise: ${closeUpWords(one, side)}`,
  }))
}

const letters = ['A', 'B', 'C'] as const

function partFor(table: Table, id: StitchId, i: number, random: Random): ChoosePart {
  const side: Side = random() < 0.75 ? 'right' : 'wrong'
  return {
    form: 'choose',
    id: `look${i + 1}`,
    ask: `${letters[i]}, seen from the ${side} side: which stitch is it?`,
    gap: false,
    picture: { form: 'close-up', stitch: id, side },
    choices: choicesFor(table, id, side, random),
  }
}

/** Close-ups of the pattern's own stitches, to be named. */
export function readTheFabric(table: Table, random: Random): Made | string {
  const own = ownLooks(table)
  const lace = shuffled(
    own.filter((id) => stitch(id).family !== 'plain'),
    random,
  )
  const plain = shuffled(
    own.filter((id) => stitch(id).family === 'plain'),
    random,
  )
  if (own.length === 0) return 'It has no stitch that can be seen by itself.'
  const asked = [...lace, ...(random() < 0.4 || lace.length < 2 ? plain.slice(0, 1) : [])]
  const ids = shuffled(asked.slice(0, 6), random).slice(0, letters.length)
  const parts = ids.map((id, i) => partFor(table, id, i, random))
  return {
    ask: [
      'Stitches of this pattern close up, each worked on a right-side row in a plain piece. What is new is red; what it took is numbered from the left needle’s tip.',
    ],
    shown: [],
    parts,
    because: parts.flatMap(({ ask, choices }) => {
      const right = choices.find((choice) => choice.right)
      return right ? [`${ask.slice(0, 1)}: ${right.words}.`] : []
    }),
    after: [],
    mistake: null,
  }
}
