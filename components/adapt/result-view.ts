import type { Adapted } from '../../engine/adapt/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { find } from '../mend/dom.ts'
import { rowWord } from '../pattern-facts.ts'
import { chartParts } from './chart-view.ts'
import { filed } from './filed.ts'
import { offerParts } from './offers-view.ts'
import { proofParts } from './proof-view.ts'
import { rowsList } from './rows-view.ts'
import { draftAddress, saveFile } from './take-along.ts'

export interface Result {
  /** `taken`: the steps that were done, in words. `hash`: what the address has behind the page. */
  show(done: Adapted, taken: readonly string[], hash: string): void
}

interface Shown {
  readonly done: Adapted
  readonly taken: readonly string[]
  readonly hash: string
}

/** What came of the steps: proof, cast-on, offers, rows, chart, and ways to take it along. */
export function resultOn(
  root: HTMLElement,
  { was, take }: { readonly was: Pattern; readonly take: (written: string) => void },
): Result {
  let shown: Shown | null = null
  const put = (slot: string, parts: readonly (Node | string)[]): void =>
    find(root, `[data-slot="${slot}"]`).replaceChildren(...parts)
  const say = (words: string): void => put('away', [words])

  const showRows = (): void => {
    const uk = root.querySelector('[data-terms][value="uk"]:checked') !== null
    if (shown) put('rows', rowsList(shown.done, uk ? 'uk' : 'us'))
  }
  const showLink = async (of: Shown): Promise<void> => {
    const link = find<HTMLAnchorElement>(root, '[data-drafting]')
    const address = await draftAddress(filed(of.done, was, of.taken))
    if (shown !== of) return
    link.hidden = address === null
    if (address !== null) link.href = address
  }

  for (const choice of root.querySelectorAll('[data-terms]')) choice.addEventListener('change', showRows)
  find(root, '[data-save]').addEventListener('click', async () => {
    if (!shown) return
    const saved = await saveFile(filed(shown.done, was, shown.taken))
    say(
      saved
        ? 'The file is saved. Read back, it is proved as it is here.'
        : 'The file could not be written just now. Try again.',
    )
  })
  find(root, '[data-print]').addEventListener('click', () => print())
  find(root, '[data-copy]').addEventListener('click', async () => {
    const { origin, pathname } = location
    const link = `${origin}${pathname}${shown?.hash ?? ''}`
    try {
      await navigator.clipboard.writeText(link)
      say('The link is copied. Whoever opens it sees the same steps.')
    } catch {
      say(`Copy this link: ${link}`)
    }
  })

  return {
    show(done, taken, hash) {
      shown = { done, taken, hash }
      const { pattern } = done
      put('name', [filed(done, was, taken).title])
      put('proof', proofParts(done))
      put('offers', offerParts(pattern, take))
      put('rows-name', [`${rowWord(pattern)}s in words`])
      showRows()
      put('chart', chartParts(pattern))
      say('')
      void showLink(shown)
    },
  }
}
