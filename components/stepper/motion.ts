import type { Frame, Frames } from '../../engine/drawing/index.ts'
import type { Act } from './acts.ts'
import { playFor } from './clock.ts'
import { firstPicture, lastPicture } from './pictures.ts'
import { type Player, playerIn } from './player.ts'
import { type Actor, turning } from './ways.ts'

/** How a picture changes: one stitch on or back, the work turned round for it, or at once. */
export type Change = 'on' | 'back' | 'turn on' | 'turn back' | 'at once'

/** Milliseconds: from one place to stop to the next, through a frame that is only passed, and for turning the work. */
const lengths = { stop: 420, passing: 230, turn: 500 } as const
/** A stitch that is stepped to takes no longer than this. */
const mostForStep = 1900
/** Who steps on sooner than this wants to be elsewhere, not to watch. */
const hurry = 350
/** Watched again it takes its time. */
const calm = 1.6

const still = matchMedia('(prefers-reduced-motion: reduce)')

/** Whether less movement is wished for. */
export const isStill = (): boolean => still.matches

/** Which of a stitch's motions is shown. */
export interface Place {
  /** From 0, before the stitch, to `of`, after it. */
  readonly motion: number
  readonly of: number
  readonly words: string
  /** The reader went there by herself. */
  readonly chosen: boolean
}

export interface Stage {
  /** Shows a stitch after it is worked, and the way to it. What still moves is cut short. */
  show(act: Act, change: Change): void
  /** The stitch from its beginning, slowly. Asked for by itself, it moves even where less movement is wished. */
  again(): void
  /** One motion on or back within the stitch. */
  move(by: 1 | -1): void
  slower: boolean
}

/** An element that shows one stitch at a time. Between the motions rests a picture; movement only leads the eye to it. */
export function stageOn(element: HTMLElement, first: Act, tell: (place: Place) => void): Stage {
  let act = first
  let at = first.told.length - 1
  let player: Player | null = null
  let cutShort = (): void => {}
  let shownAt = Number.NEGATIVE_INFINITY

  const rest = (chosen: boolean): void => {
    player?.svg.classList.remove('is-moving')
    if (at === act.told.length - 1) {
      element.replaceChildren(lastPicture(act))
      player = null
    }
    tell(placeIn(act.told, at, chosen))
  }
  const run = (actor: Actor, milliseconds: number, after: () => void): void => {
    cutShort = playFor(milliseconds * (stage.slower ? 2 : 1), actor, after)
  }
  /** From one frame of a stitch to another, on or back, through all between them. */
  const play = (of: Act, from: number, to: number, pace: number, after: () => void): void => {
    player ??= playerIn(element, of)
    const moving = player
    if (!moving) return after()
    moving.svg.classList.add('is-moving')
    const { frames } = of.frames()
    const legs = legsOf(frames, from, to)
    const length = legs.reduce((sum, leg) => sum + leg.length, 0)
    let told = -1
    const actor = (part: number): void => {
      const leg = legAt(legs, part * length)
      putLeg(moving, leg)
      const stop = stopAfter(frames, from, to, leg.index)
      if (stop !== told && of === act) tell(placeIn(of.told, stop, false))
      told = stop
    }
    run(actor, length * pace, after)
  }
  const stage: Stage = {
    slower: false,
    show(next, change) {
      cutShort()
      const [old, before] = [act, element.querySelector('svg')]
      act = next
      at = next.told.length - 1
      player = null
      const end = (): void => rest(false)
      const isHurried = performance.now() - shownAt < hurry
      shownAt = performance.now()
      if (change === 'at once' || isHurried || still.matches || !before) return end()
      const goOn = (): void => play(next, 0, at, paceFor(next), end)
      if (change === 'on') return goOn()
      if (change === 'back') return play(old, old.told.length - 1, 0, paceFor(old), end)
      element.replaceChildren(change === 'turn on' ? firstPicture(next) : lastPicture(next))
      const fresh = element.querySelector('svg')
      if (!fresh) return end()
      const { actor, clear } = turning(before, fresh)
      run(actor, lengths.turn, () => {
        clear()
        if (change === 'turn on') goOn()
        else end()
      })
    },
    again() {
      cutShort()
      at = act.told.length - 1
      play(act, 0, at, calm, () => rest(true))
    },
    move(by) {
      cutShort()
      const { told } = act
      const to =
        by === 1
          ? told.findIndex(({ stop }, i) => stop && i > at)
          : told.findLastIndex(({ stop }, i) => stop && i < at)
      if (to < 0) return
      const from = at
      at = to
      if (still.matches) {
        player ??= playerIn(element, act)
        const frame = act.frames().frames[to]
        if (frame) player?.put(frame, frame, 0)
        return rest(true)
      }
      play(act, from, to, calm, () => rest(true))
    },
  }
  return stage
}

interface Leg {
  readonly from: Frame
  readonly to: Frame
  readonly length: number
}

const legLength = (isWhole: boolean): number => (isWhole ? lengths.stop : lengths.passing)

function legsOf(frames: readonly Frame[], from: number, to: number): Leg[] {
  const by = from < to ? 1 : -1
  return Array.from({ length: Math.abs(to - from) }, (_, i) => {
    const [a, b] = [frames[from + i * by], frames[from + (i + 1) * by]]
    if (!a || !b) throw new Error('a stitch has no such frame')
    return { from: a, to: b, length: legLength(a.stop && b.stop) }
  })
}

/** Which leg of the way one is on after so long, and how far along it. */
function legAt(legs: readonly Leg[], time: number): Leg & { readonly index: number; readonly part: number } {
  let begins = 0
  for (const [index, leg] of legs.entries()) {
    if (time <= begins + leg.length || index === legs.length - 1) {
      return { ...leg, index, part: Math.min(1, (time - begins) / leg.length) }
    }
    begins += leg.length
  }
  throw new Error('a way without legs')
}

/** Slow at places to stop, and straight through the others. */
const putLeg = (player: Player, { from, to, part }: ReturnType<typeof legAt>): void =>
  player.put(from, to, eased(part, from.stop, to.stop))

/** The frame that the movement goes to next, among those to stop at. */
function stopAfter(frames: readonly Frame[], from: number, to: number, leg: number): number {
  const by = from < to ? 1 : -1
  for (let at = from + (leg + 1) * by; at !== to; at += by) if (frames[at]?.stop) return at
  return to
}

const eased = (part: number, startsSlowly: boolean, endsSlowly: boolean): number => {
  if (startsSlowly && endsSlowly) return part * part * (3 - 2 * part)
  if (startsSlowly) return part * part
  return endsSlowly ? part * (2 - part) : part
}

function paceFor({ told }: Act): number {
  const length = told
    .slice(1)
    .map(({ stop }, i) => legLength(stop && told[i]?.stop === true))
    .reduce((sum, length) => sum + length, 0)
  return Math.min(1, mostForStep / Math.max(1, length))
}

function placeIn(told: Frames['told'], at: number, chosen: boolean): Place {
  const stops = told.flatMap(({ stop }, i) => (stop ? [i] : []))
  return { motion: stops.indexOf(at), of: stops.length - 1, words: told[at]?.words ?? '', chosen }
}
