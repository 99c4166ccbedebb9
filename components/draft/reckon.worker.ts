import type { Told, WorkAsk } from './answer.ts'
import { lookAt } from './look-at.ts'
import { answerOf, mendsOf, type WorkedDraft, workedDraft } from './work-draft.ts'

/** The draft that was asked about last. */
let worked: WorkedDraft | null = null

function tell(ask: WorkAsk): Told {
  switch (ask.ask) {
    case 'check':
      worked = workedDraft(ask.draft, ask.repeats)
      return { told: 'check', answer: answerOf(worked) }
    case 'mends':
      return { told: 'mends', mends: worked ? mendsOf(worked) : [] }
    case 'stitch':
      return { told: 'stitch', view: worked && lookAt(worked, ask.index, ask.step) }
  }
}

addEventListener('message', ({ data }: MessageEvent<{ id: number; ask: WorkAsk }>) => {
  postMessage({ id: data.id, told: tell(data.ask) })
})
