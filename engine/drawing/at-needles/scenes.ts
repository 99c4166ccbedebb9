import {
  type HandSteps,
  type Hold,
  handStepsInTurn,
  type Mount,
  type Neighbours,
  performInTurn,
  type Stitch,
} from '../../stitches/index.ts'
import { chainOver, type Seen, sceneOf } from './motions.ts'
import type { Name, Scene, Told } from './scene.ts'
import type { YarnSide } from './yarn-side.ts'

export interface Telling {
  readonly stitch: Stitch
  readonly mounts: readonly Mount[]
  readonly hold: Hold
  readonly neighbours: Neighbours
  /** Where the yarn hangs before the stitch and after it. */
  readonly yarn: { readonly before: YarnSide; readonly after: YarnSide }
  /** A loop of a bind-off waits on the right needle, to be lifted over the next one. */
  readonly chain: boolean
}

/** A stitch as the scenes of its motions: the first before it, the last after it. */
export function scenesOf(telling: Telling): Told[] {
  const { stitch, mounts, hold, neighbours, yarn } = telling
  const hands = performInTurn(stitch.motions, mounts, stitch.takes)
  const steps = handStepsInTurn(stitch, hold, neighbours)
  const [start] = hands
  if (start === undefined) return []
  const holds = stitch.effect.held > 0
  let last: Scene = { ...atRest, holds, hands: start, yarn: yarn.before }
  const told: Told[] = [{ scene: last, words: '', stop: true }]
  for (const [i, motion] of stitch.motions.entries()) {
    const after = hands[i + 1] ?? start
    const scenes = sceneOf({ last, after, motion, yarnAfter: yarn.after, chain: telling.chain })
    told.push(...worded(scenes, steps.motions[i] ?? [], told.at(-1)?.words ?? ''))
    last = told.at(-1)?.scene ?? last
  }
  if (telling.chain && !last.passed && hands.at(-1)?.right.some((name) => name.startsWith('new'))) {
    told.push(...worded(chainOver(last), [chainWords], ''))
  }
  return ended(told, steps, yarn.after)
}

const chainWords =
  'With the left tip, lift the last bound-off stitch over the new one and off the right needle.'

/** The last scene is the rest after the stitch: nothing is left to do but to carry the yarn where the next one wants it. */
function ended(told: readonly Told[], { afterwards }: HandSteps, yarn: YarnSide): Told[] {
  const last = told.at(-1)
  if (last === undefined) return []
  const { hands } = last.scene
  const words = [last.words, ...afterwards].filter((one) => one !== '').join(' ')
  const { passed, holds } = last.scene
  const end = { scene: { ...atRest, hands, yarn, passed, holds }, words, stop: true }
  return [...(told.length > 1 ? told.slice(0, -1) : told), end]
}

const atRest = {
  tip: { at: 'rest' },
  wrapped: null,
  through: new Map<Name, readonly Name[]>(),
  behind: false,
  lifted: null,
  taking: [],
  passed: false,
  bead: null,
} as const

/** Words for the scenes of one motion: each place to stop has its own as far as there are enough, the last one all the rest. */
function worded(scenes: readonly Seen[], steps: readonly string[], before: string): Told[] {
  const stops = scenes.filter(({ stop }) => stop).length
  let stop = 0
  return scenes.map((seen) => {
    const own =
      steps.length < stops
        ? steps.slice(Math.floor((stop * steps.length) / stops)).slice(0, 1)
        : stop < stops - 1
          ? steps.slice(stop, stop + 1)
          : steps.slice(stop)
    if (seen.stop) stop += 1
    return { ...seen, words: own.length > 0 ? own.join(' ') : before }
  })
}
