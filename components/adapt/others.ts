import { checkDraft } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { askOfFile } from '../draft/reckoner.ts'
import { patternFileAddress } from '../handout/addresses.ts'

/** Another pattern of the library, from its own file and proved again here; null where it cannot be had. */
export async function fetchPattern(slug: string): Promise<Pattern | null> {
  try {
    const answer = await fetch(patternFileAddress(slug))
    if (!answer.ok) return null
    const told = await askOfFile({ ask: 'read', name: `${slug}.yaml`, text: await answer.text() })
    const checked = told?.draft ? checkDraft(told.draft) : null
    return checked?.sound ? checked.pattern : null
  } catch {
    return null
  }
}
