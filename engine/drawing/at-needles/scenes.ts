import {
  type HandLoopName,
  type HandSteps,
  type Hold,
  handStepsInTurn,
  type Motion,
  type Mount,
  type Neighbours,
  performInTurn,
  type Stitch,
} from '../../stitches/index.ts'
import type { Name, Scene, Told, Way } from './scene.ts'
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
    const scenes = sceneOf({ ...telling, last, after, motion })
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

type Seen = Pick<Told, 'scene' | 'stop'>

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

interface Turn extends Telling {
  readonly last: Scene
  readonly after: Scene['hands']
  readonly motion: Motion
}

const stopAt = (scene: Scene): Seen => ({ scene, stop: true })
const passBy = (scene: Scene): Seen => ({ scene, stop: false })

/** A motion as one scene or a few. */
function sceneOf(turn: Turn): Seen[] {
  const { last, after, motion } = turn
  const rest: Scene = { ...last, ...resting, hands: after }
  switch (motion.do) {
    case 'slip':
      return [
        ...through(last, last.hands.left.slice(0, motion.loops), slipWays[motion.as]).map(({ scene }) =>
          passBy(scene),
        ),
        stopAt(rest),
      ]
    case 'return':
      return [passBy({ ...last, ...resting, taking: last.hands.right.slice(-motion.loops) }), stopAt(rest)]
    case 'meet':
      return through(rest, after.left.slice(0, motion.loops), 'knit back').slice(1)
    case 'enter':
      return enter(turn, motion)
    case 'enterBelow':
      return enterBelow(rest, motion.of)
    case 'wrap':
      return [
        stopAt({
          ...last,
          wrapped: last.tip.at === 'loops' && last.tip.way.startsWith('purl') ? 'purl' : 'knit',
        }),
      ]
    case 'draw':
      return [stopAt(drawn(last, after))]
    case 'drop':
      return [stopAt({ ...rest, through: new Map() })]
    case 'over':
      return over(turn, motion)
    case 'pass':
      return pass(turn, motion)
    case 'yarn':
      return [stopAt({ ...rest, yarn: motion.to === 'front' ? 'front' : 'behind' })]
    case 'bead':
      return [passBy({ ...rest, bead: 'above' }), stopAt({ ...rest, bead: 'on' })]
    default:
      return [stopAt(rest)]
  }
}

const resting = { tip: { at: 'rest' }, wrapped: null, behind: false, lifted: null, taking: [] } as const

const slipWays: Readonly<Record<'knitwise' | 'purlwise' | 'throughBack', Way>> = {
  knitwise: 'knit',
  purlwise: 'purl',
  throughBack: 'purl back',
}

/** The tip before the loops, and then through them. */
function through(scene: Scene, loops: readonly HandLoopName[], way: Way): Seen[] {
  const at = (deep: boolean): Scene => ({ ...scene, ...resting, tip: { at: 'loops', loops, way, deep } })
  return [passBy(at(false)), stopAt(at(true))]
}

function enter({ last, after }: Turn, { loops, as, leg }: Motion & { do: 'enter' }): Seen[] {
  const face = as === 'knitwise' ? 'knit' : 'purl'
  const way: Way = leg === 'front' ? face : `${face} back`
  const scene: Scene = { ...last, hands: after, yarn: face === 'knit' ? 'behind' : 'front' }
  const both = through(scene, after.left.slice(0, loops), way)
  // After the left tip has met the loops, the right one is in them already.
  const isIn = last.tip.at === 'loops' && last.tip.way === way
  return isIn ? both.slice(1) : both
}

/** The loop under the newest one is lifted on the left tip first; the one under the next is entered where it lies. */
function enterBelow(rest: Scene, of: 'next' | 'newest'): Seen[] {
  if (of === 'newest') return through({ ...rest, yarn: 'behind' }, ['below 0'], 'knit')
  return [stopAt({ ...rest, tip: { at: 'below' }, yarn: 'behind' })]
}

function drawn(last: Scene, hands: Scene['hands']): Scene {
  const name = hands.right.at(-1)
  const loops = last.tip.at === 'loops' ? last.tip.loops : []
  const through = new Map(last.through)
  if (name !== undefined && loops.length > 0) through.set(name, loops)
  return {
    ...last,
    ...resting,
    hands,
    through,
    behind: last.wrapped === 'purl',
    yarn: last.wrapped === 'purl' ? 'front' : 'behind',
  }
}

/** Forward between the needles where it hangs behind, over the needle, and forward again where a purl comes next. */
function over({ last, after, yarn }: Turn, { turns, long, backward }: Motion & { do: 'over' }): Seen[] {
  const scenes: Seen[] = []
  const [from, to]: [YarnSide, YarnSide] = backward ? ['behind', 'front'] : ['front', 'behind']
  for (let turn = 1; turn <= turns; turn++) {
    const less = long ? 0 : turns - turn
    const hands = { ...after, right: after.right.slice(0, after.right.length - less) }
    const before = scenes.at(-1)?.scene ?? { ...last, ...resting }
    if (before.yarn !== from) scenes.push(stopAt({ ...before, yarn: from }))
    scenes.push(stopAt({ ...last, ...resting, hands, yarn: to }))
  }
  const end = scenes.at(-1)
  if (end !== undefined && end.scene.yarn !== yarn.after && to !== yarn.after) {
    scenes.push(stopAt({ ...end.scene, yarn: yarn.after }))
  }
  return scenes
}

function pass(turn: Turn, { loops, over: under, from }: Motion & { do: 'pass' }): Seen[] {
  const { last, after, chain } = turn
  const rest: Scene = { ...last, ...resting, hands: after }
  if (from === 'left') {
    const { left } = last.hands
    return lifting(last, rest, {
      by: 'right',
      loops: left.slice(under, under + loops),
      over: left.slice(0, under),
    })
  }
  const { right } = last.hands
  if (right.length === under) return chain ? chainOver(last) : [stopAt(rest)]
  const first = right.length - under - loops
  return lifting(last, rest, {
    by: 'left',
    loops: right.slice(first, first + loops),
    over: right.slice(first + loops),
  })
}

const lifting = (last: Scene, rest: Scene, lifted: NonNullable<Scene['lifted']>): Seen[] => [
  stopAt({ ...last, ...resting, lifted }),
  stopAt(rest),
]

function chainOver(last: Scene): Seen[] {
  const over = last.hands.right.filter((name) => name.startsWith('new')).slice(0, 1)
  return lifting(last, { ...last, ...resting, passed: true }, { by: 'left', loops: ['before 1'], over })
}
