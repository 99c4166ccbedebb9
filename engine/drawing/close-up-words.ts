import type { FabricLoop, FabricLoopId } from '../fabric/index.ts'
import type { Swatch } from './close-up-swatch.ts'

type Side = 'right' | 'wrong'

export const closeUpTitle = ({ stitch }: Swatch, side: Side): string =>
  `${stitch.id === stitch.name ? stitch.id : `${stitch.id}: ${stitch.name}`}, close up, ${side} side`

/** The picture in sentences, from the loops that it is drawn from. */
export function closeUpWords(swatch: Swatch, side: Side): string {
  const { fabric, made, taken } = swatch
  const loops = made.flatMap((id) => fabric.loops[id] ?? [])
  const numbers = taken.length < 2 ? '' : ` Loops ${listOf(taken.map((_, i) => i + 1))} are numbered from the left needle’s tip.`
  const told = [...new Set(loops.map((loop) => loopWords(swatch, loop, side)))]
  return `${told.join(' ')}${numbers}`
}

const listOf = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join('') : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`

function loopWords({ made, taken, stitch }: Swatch, loop: FabricLoop, side: Side): string {
  if (taken.includes(loop.id)) {
    return stitch.family === 'holding' ? 'The loop waits on a holder: nothing is drawn through it.' : 'The loop is slipped: it reaches up past the row, and no new loop is drawn through it there.'
  }
  if (loop.kind === 'over') return 'A yarn over hangs from no loop: a hole opens under it.'
  if (loop.kind === 'strand') return 'The new loop is drawn through the running strand between two stitches, which is twisted shut.'
  if (loop.kind === 'cast on') return 'The new loop is the yarn laid across itself.'
  const number = (id: FabricLoopId): number => taken.indexOf(id) + 1
  const through = (side === 'right' ? loop.parents : loop.parents.toReversed()).filter((id) => number(id) > 0)
  const others = loop.parents.filter((id) => made.includes(id))
  const seen = (loop.face === 'knit') === (side === 'right') ? 'comes out over' : 'goes back behind'
  const heads = through.length === 0 ? 'the loop below' : `the ${through.length === 1 ? 'head' : 'heads'} of ${taken.length === 1 ? 'its loop' : `${through.length === 1 ? 'loop' : 'loops'} ${listOf(through.map(number).toSorted((a, b) => a - b))}`}`
  const stack = through.length < 2 ? '' : ` From front to back lie ${through.map(number).join(', ')}.`
  const twisted = loop.parents.filter((id, i) => loop.twisted[i] === true && number(id) > 0).map(number)
  const shut = twisted.length === 0 ? '' : ` ${taken.length === 1 ? 'The old loop is' : `Loops ${listOf(twisted)} are`} twisted: ${taken.length === 1 ? 'its' : 'their'} legs cross.`
  const chain = others.length === 0 ? '' : ' The loop before was passed over it.'
  return `The new loop ${seen} ${heads}.${stack}${shut}${chain}`
}
