import type { FabricLoop, FabricLoopId } from '../fabric/index.ts'
import type { Swatch } from './close-up-swatch.ts'

type Side = 'right' | 'wrong'

export const closeUpTitle = ({ stitch }: Swatch, side: Side): string =>
  `${stitch.id}: ${stitch.name}, close up, ${side} side`

/** The picture in sentences, from the loops that it is drawn from. */
export function closeUpWords(swatch: Swatch, side: Side): string {
  const { fabric, made, taken, stitch } = swatch
  const loops = made.flatMap((id) => fabric.loops[id] ?? [])
  const alike = Map.groupBy(loops, (loop) => tellings(swatch, loop, side, 1))
  const told = [...alike.values()].flatMap((same) =>
    same[0] ? tellings(swatch, same[0], side, same.length) : [],
  )
  return [
    ...told,
    ...(made.length === 0 ? ['The loop waits on a holder: nothing is drawn through it.'] : []),
    ...crossingWords(swatch, side),
    ...(stitch.effect.made.some(({ banded }) => banded)
      ? ['The yarn over was passed over them and lies round their necks.']
      : []),
    ...(stitch.effect.made.some(({ beaded }) => beaded) ? ['A bead sits on the new loop.'] : []),
    ...(taken.length > 1
      ? [`Loops ${listOf(taken.map((_, i) => i + 1))} are numbered from the left needle’s tip.`]
      : []),
  ].join(' ')
}

const listOf = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join('') : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`

/** What there is to say of `count` loops that are alike. */
function tellings(swatch: Swatch, loop: FabricLoop, side: Side, count: number): string {
  const one = swatch.made.length === 1 ? 'The new loop' : 'One new loop'
  const [subject, s] = count === 1 ? [one, 's'] : [`${count} new loops`, '']
  if (swatch.taken.includes(loop.id)) return slippedWords(swatch, loop, side)
  switch (loop.kind) {
    case 'over':
      return swatch.stitch.takes > 0
        ? `${count === 1 ? 'A yarn over lies' : `${count} yarn overs lie`} between them, drawn through nothing.`
        : `${count === 1 ? 'A yarn over hangs' : `${count} yarn overs hang`} from no loop: a hole opens under ${count === 1 ? 'it' : 'them'}.`
    case 'strand':
      return `${subject} ${outWords(loop, side, s)} the running strand between two stitches, which is twisted shut.`
    case 'cast on':
      return `${subject} is the yarn laid across itself.`
    default:
      if (isBarred(swatch, loop)) return barWords(loop, side)
      return throughWords(swatch, loop, side, `${subject} ${outWords(loop, side, s)}`)
  }
}

/** Out over what it is drawn through, or away behind it, as it is seen. */
const outWords = ({ face }: FabricLoop, side: Side, s: string): string =>
  (face === 'knit') === (side === 'right') ? `come${s} out over` : `go${s === '' ? '' : 'es'} back behind`

function slippedWords({ fabric }: Swatch, loop: FabricLoop, side: Side): string {
  const inFront = fabric.lines.some(({ yarnInFront }) => yarnInFront.includes(loop.id))
  const where = inFront === (side === 'right') ? 'in front of' : 'behind'
  return `The loop is slipped: it reaches up past the row, and the yarn passes ${where} it.`
}

function throughWords({ made, taken }: Swatch, loop: FabricLoop, side: Side, opening: string): string {
  const number = (id: FabricLoopId): number => taken.indexOf(id) + 1
  const stack = (side === 'right' ? loop.parents : loop.parents.toReversed()).filter((id) => number(id) > 0)
  const twisted = loop.parents.filter((id, i) => loop.twisted[i] === true && number(id) > 0)
  const alone = taken.length === 1
  const heads = alone ? 'the head of its loop' : `the ${headsWords(stack.map(number))}`
  return [
    `${opening} ${heads}.`,
    ...(stack.length > 1 ? [`From front to back lie ${stack.map(number).join(', ')}.`] : []),
    ...(twisted.length === 0 ? [] : [twistedWords(alone ? [] : twisted.map(number))]),
    ...(loop.parents.some((id) => made.includes(id)) ? ['The new loop before it was passed over it.'] : []),
  ].join(' ')
}

/** A loop through the back leg of a loop that others were drawn through the front of. */
const isBarred = ({ made, taken }: Swatch, { twisted }: FabricLoop): boolean =>
  taken.length === 1 && made.length > 1 && twisted.includes(true)

function barWords({ face }: FabricLoop, side: Side): string {
  const isSeen = (face === 'knit') === (side === 'right')
  const bar = isSeen
    ? 'the old loop lies across its feet as a bar'
    : 'the bar across its feet shows on the other side'
  return `One new loop goes through the back leg: ${bar}.`
}

const headsWords = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? 'head of loop' : 'heads of loops'} ${listOf(numbers.toSorted((a, b) => a - b))}`

function twistedWords(numbers: readonly number[]): string {
  if (numbers.length === 0) return 'The old loop is twisted: its legs cross.'
  return numbers.length === 1
    ? `Loop ${numbers[0]} is twisted: its legs cross.`
    : `Loops ${listOf(numbers)} are twisted: their legs cross.`
}

/** Which loops travel in front in a crossing, as it is seen. */
function crossingWords({ stitch, taken }: Swatch, side: Side): string[] {
  const { inFront } = stitch.effect
  if (inFront.length === 0) return []
  const all = taken.map((_, i) => i + 1)
  const front = side === 'right' ? inFront : all.filter((n) => !inFront.includes(n))
  const behind = all.filter((n) => !front.includes(n))
  return [
    `${front.length === 1 ? 'Loop' : 'Loops'} ${listOf(front)} cross${front.length === 1 ? 'es' : ''} in front of ${listOf(behind)}.`,
  ]
}
