import type { Drawing } from '../../engine/drawing/index.ts'
import { stepping, turning, type Way } from './ways.ts'

/** How a picture changes: one stitch on or back, the work turned round, or at once. */
export type Change = 'on' | 'back' | 'turn' | 'at once'

/** Milliseconds for one stitch. */
const duration = 500

const still = matchMedia('(prefers-reduced-motion: reduce)')

type Library = typeof import('@svgdotjs/svg.js')

let library: Library | null = null

/** Fetches what moves the pictures, once there is time. Until then, and without it, pictures change at once. */
export function prepareMotion(): void {
  if (still.matches || library) return
  import('@svgdotjs/svg.js').then(
    (fetched) => {
      library = fetched
    },
    () => {},
  )
}

export interface Stage {
  /** Shows a picture, and the way to it. What still moves is cut short. */
  show(svg: string, drawing: Drawing, change: Change): void
  slower: boolean
}

/** An element that holds one picture at a time. The picture is the state; movement only leads the eye to it. */
export function stageOn(element: HTMLElement, shown: Drawing): Stage {
  let last = shown
  let cutShort = (): void => {}
  const stage: Stage = {
    slower: false,
    show(svg, drawing, change) {
      cutShort()
      cutShort = () => {}
      const [before, old] = [last, element.querySelector('svg')]
      element.innerHTML = svg
      last = drawing
      const fresh = element.querySelector('svg')
      if (change === 'at once' || still.matches || !library || !old || !fresh) return
      const way = change === 'turn' ? turning(old, fresh) : stepping(old, fresh, before, drawing, change)
      cutShort = play(library, way, stage.slower ? 0.5 : 1)
    },
  }
  return stage
}

/** Runs a way from its beginning; gives what ends it early. */
function play({ easing, Runner, Timeline }: Library, { actors, clear }: Way, speed: number): () => void {
  const act = (part: number): void => {
    for (const actor of actors) actor(easing['<>'](part))
  }
  act(0)
  const timeline = new Timeline()
  const runner = new Runner(duration).during(act)
  runner.after(clear)
  timeline.speed(speed).schedule(runner, 0, 'now').play()
  return () => {
    timeline.pause()
    clear()
  }
}
