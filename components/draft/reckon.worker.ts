import { writeDraft } from '../../engine/intake/index.ts'
import type { Ask, Told } from './answer.ts'
import { lookAt } from './look-at.ts'
import { answerOf, mendsOf, readFile, type WorkedDraft, workedDraft } from './work-draft.ts'

/** The draft that was asked about last. */
let worked: WorkedDraft | null = null

function tell(ask: Ask): Told {
  switch (ask.ask) {
    case 'check':
      worked = workedDraft(ask.draft, ask.repeats)
      return { told: 'check', answer: answerOf(worked) }
    case 'mends':
      return { told: 'mends', mends: worked ? mendsOf(worked) : [] }
    case 'stitch':
      return { told: 'stitch', view: worked && lookAt(worked, ask.index, ask.step) }
    case 'write':
      return { told: 'write', text: writeDraft(ask.draft) }
    case 'read':
      return { told: 'read', ...readFile(ask.name, ask.text) }
  }
}

addEventListener('message', ({ data }: MessageEvent<{ id: number; ask: Ask }>) => {
  postMessage({ id: data.id, told: tell(data.ask) })
})
