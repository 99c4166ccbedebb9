import { type Hands, must, nextLeft, noteCrossing, takeLeft } from './in-hands.ts'
import { heldLoop, turned } from './loops.ts'
import type { Motion } from './stitch.ts'

/**
 * Entered from the left, a loop swings half a turn as the needle straightens: one way through its front, the
 * other through its back. Together from the left, the tip meets the far loop first, which so goes deepest.
 */
export function slip(hands: Hands, { loops, as, together }: Motion & { do: 'slip' }): void {
  const taken = takeLeft(hands, loops)
  noteCrossing(hands, taken)
  const by = { purlwise: 0, knitwise: -2, throughBack: 2 }[as]
  const moved = taken.map((loop) => ({ ...turned(loop, by), float: hands.yarnAt }))
  hands.right.push(...(together && as !== 'purlwise' ? moved.reverse() : moved))
}

/** Tip to tip the newest loop goes first, and so ends deepest: the order of the row is kept. */
export function giveBack(hands: Hands, count: number): void {
  must(hands.right.length >= count, `return or meet ${count}: the right needle has ${hands.right.length}`)
  hands.left.unshift(...hands.right.splice(hands.right.length - count))
}

export function hold(hands: Hands, { loops, where }: Motion & { do: 'hold' }): void {
  must(hands.cable === null, 'hold: the cable needle is taken')
  hands.cable = { where, loops: takeLeft(hands, loops) }
  hands.crossing[where].push(...hands.cable.loops)
}

export function unhold(hands: Hands): void {
  must(hands.cable !== null, 'unhold: the cable needle is empty')
  hands.left.unshift(...hands.cable.loops)
  hands.cable = null
}

export function fetchHeld(hands: Hands, count: number): void {
  nextLeft(hands, 1)
  for (let i = 0; i < count; i += 1) {
    hands.fetched += 1
    hands.left.splice(1 + i, 0, heldLoop(hands.fetched))
  }
}
