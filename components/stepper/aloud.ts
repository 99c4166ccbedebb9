import { rowLabelOf } from '../../engine/lesson/index.ts'
import type { Step, WorkedPattern } from '../../engine/needles/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import type { Spot } from './state.ts'

/** Whether two stitches are written as one: 'k3' is three of them. */
const isWrittenAsOne = (a: Step, b: Step): boolean =>
  a.part === b.part && a.repeat === b.repeat && a.span.start === b.span.start && a.span.end === b.span.end

/** The last stitch of the group that begins at a spot. */
export function groupEnd(worked: WorkedPattern, spot: Spot): Spot {
  const steps = worked.rows[spot.row]?.steps ?? []
  let step = spot.step
  for (;;) {
    const [here, next] = [steps[step], steps[step + 1]]
    if (!here || !next || !isWrittenAsOne(here, next)) return { ...spot, step }
    step += 1
  }
}

/** 'Row 3, right side. Knit 2.': a group of stitches as a voice says it, from its first to its last. */
export function groupWords(worked: WorkedPattern, from: Spot, to: Spot): string {
  const row = worked.rows[from.row]
  const first = row?.steps[from.step]
  const last = row?.steps[to.step]
  if (!row || !first || !last) return ''
  const side = worked.pattern.worked === 'round' ? '' : row.side === 'RS' ? ', right side' : ', wrong side'
  const opening = from.step === 0 ? `${rowLabelOf(worked, row)}${side}. ` : ''
  const loops = last.left + last.right
  const closing = to.step === row.steps.length - 1 ? ` ${loops} ${loops === 1 ? 'stitch' : 'stitches'}.` : ''
  return `${opening}${timesWords(first, to.step - from.step + 1)}.${closing}`
}

function timesWords({ stitch: id }: Step, times: number): string {
  const { name, family } = stitch(id)
  const said = name.charAt(0).toUpperCase() + name.slice(1)
  if (times === 1) return said
  return family === 'plain' ? `${said} ${times}` : `${said}, ${times} times`
}

/** Whether this browser has a voice to read with. */
export const hasVoice = (): boolean => 'speechSynthesis' in window

/** Says words with the browser's own voice; what it still says is cut short. */
export function say(words: string): void {
  if (!hasVoice()) return
  const said = new SpeechSynthesisUtterance(words)
  said.lang = document.documentElement.lang
  speechSynthesis.cancel()
  speechSynthesis.speak(said)
}
