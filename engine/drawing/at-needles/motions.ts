import type { HandLoopName, Motion } from '../../stitches/index.ts'
import type { Scene, Told, Way } from './scene.ts'
import type { YarnSide } from './yarn-side.ts'

/** A scene on its way, before it has words. */
export type Seen = Pick<Told, 'scene' | 'stop'>

/** One motion of a stitch, with what was before it. */
export interface Turn {
  readonly last: Scene
  /** What the hands hold afterwards. */
  readonly after: Scene['hands']
  readonly motion: Motion
  /** Where the yarn hangs when the whole stitch is done. */
  readonly yarnAfter: YarnSide
  /** A loop of a bind-off waits on the right needle. */
  readonly chain: boolean
}

const stopAt = (scene: Scene): Seen => ({ scene, stop: true })
const passBy = (scene: Scene): Seen => ({ scene, stop: false })

/** A motion as one scene or a few. */
export function sceneOf(turn: Turn): Seen[] {
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
function over({ last, after, yarnAfter }: Turn, { turns, long, backward }: Motion & { do: 'over' }): Seen[] {
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
  if (end !== undefined && end.scene.yarn !== yarnAfter && to !== yarnAfter) {
    scenes.push(stopAt({ ...end.scene, yarn: yarnAfter }))
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

export function chainOver(last: Scene): Seen[] {
  const over = last.hands.right.filter((name) => name.startsWith('new')).slice(0, 1)
  return lifting(last, { ...last, ...resting, passed: true }, { by: 'left', loops: ['before 1'], over })
}
