import * as say from './hand-words.ts'
import type { Motion } from './stitch.ts'
import type { Held, Telling } from './telling.ts'

/** Tellers of the motions that move loops between the needles without working them. */

export function tellSlip(telling: Telling, { loops, as, together }: Motion & { do: 'slip' }): string[] {
  const { right, returned, motions, at } = telling
  const back = returned.splice(0, loops)
  right.push(...Array.from({ length: loops }, (_, i): Held => back[i] ?? 'slipped'))
  telling.what = null
  if (together && loops > 1) {
    return [
      say.slipTogetherWords(
        as,
        back.length > 0 ? `those ${say.inWords(loops)}` : say.nextStitches(loops),
        loops,
      ),
    ]
  }
  if (back.includes('new')) return ['Slip the new stitch to the right needle again, as if to purl.']
  const previous = motions[at - 1]
  if (previous?.do === 'slip' && previous.as === as && !previous.together) {
    return ['Slip the one after it in the same way.']
  }
  const alone = motions.length === 1 && as === 'purlwise'
  return [...(alone ? ['Keep the yarn on the wrong side of the work.'] : []), say.slipWords(as)]
}

export function tellReturn(telling: Telling, { loops }: Motion & { do: 'return' }): string[] {
  const back = telling.right.splice(telling.right.length - loops)
  // Tip to tip they keep the order of the row, so the one given back last is next again.
  telling.returned.unshift(...back)
  telling.what = loops === 1 ? 'that stitch' : `those ${say.inWords(loops)} stitches`
  const what = loops > 1 ? say.allOf(loops) : back[0] === 'new' ? 'the new stitch' : 'the stitch'
  return [`Put ${what} back on the left needle, tip to tip, as ${loops === 1 ? 'it sits' : 'they now sit'}.`]
}

export function tellMeet(telling: Telling, { loops }: Motion & { do: 'meet' }): string[] {
  telling.right.splice(telling.right.length - loops)
  telling.inPlace = true
  return [
    `Put the left tip into the fronts of ${say.allOf(loops)} slipped stitches, from left to right: ` +
      'the right tip is now behind it, under their back legs.',
  ]
}

export function tellPass(telling: Telling, { loops, over, from }: Motion & { do: 'pass' }): string[] {
  const { right, returned } = telling
  if (from === 'left') {
    returned.splice(over)
    return [
      'With the right tip, lift the second stitch of the left needle over the first, the new one, and off.',
    ]
  }
  const onto = over === 1 ? 'the new one' : `the ${say.inWords(over)} new ones`
  if (right.length === over) {
    return [
      'With the left tip, lift the stitch before it over the new one and off the right needle. ' +
        'The first stitch of a bind-off has none before it yet.',
    ]
  }
  const [passed] = right.splice(right.length - over - loops, loops)
  return [`With the left tip, lift ${passedWords(passed, loops)} over ${onto} and off the right needle.`]
}

function passedWords(passed: Held | undefined, loops: number): string {
  if (passed === 'yarn over') return 'the loop of the yarn over'
  return loops === 1 ? 'the slipped stitch' : `${say.allOf(loops)} slipped stitches together`
}
