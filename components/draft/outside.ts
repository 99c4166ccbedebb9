import {
  type Draft,
  draftFromLink,
  draftToLink,
  emptyDraft,
  isBlank,
  longestLink,
} from '../../engine/intake/index.ts'
import { find } from '../mend/dom.ts'
import type { Desk } from './desk.ts'
import { download, fileName, textOf } from './files.ts'
import type { noticeOn } from './notice.ts'
import { browserPacking } from './packing.ts'
import { askOfFile } from './reckoner.ts'
import { type Shelf, titleOf } from './shelf.ts'
import { showShelf } from './shelf-view.ts'

/** Where drafts come from and go to: the shelf in this browser, files, links, other tabs. */
export interface Outside {
  /** Lays out what the address, this tab or the shelf has. */
  begin(): void
  list(): void
  /** This tab opens its draft again after a reload. */
  remember(): void
  save(): void
  act(name: string): void
}

interface Parts {
  readonly root: HTMLElement
  readonly desk: Desk
  readonly shelf: Shelf
  readonly say: ReturnType<typeof noticeOn>
}

const openKey = 'openwork:draft-open'
const linkName = 'draft='

const whyNot = {
  'another version': 'This link was made by another version of the workbook. Ask for the file instead.',
  'too long': 'This link is too long to be a draft. Nothing was opened.',
  damaged:
    'This link is damaged, perhaps cut off in a message. Nothing was opened; ask for it again, or for the file.',
} as const

export function outsideOf({ root, desk, shelf, say }: Parts): Outside {
  const remember = (): void => {
    try {
      sessionStorage.setItem(openKey, desk.id())
    } catch {
      // The newest draft is opened then.
    }
  }
  const remembered = (): string | null => {
    try {
      return sessionStorage.getItem(openKey)
    } catch {
      return null
    }
  }
  const open = (id: string): boolean => {
    const kept = shelf.read(id)
    if (!kept) return false
    desk.lay(kept.draft, { id, stamp: kept.stamp })
    remember()
    list()
    return true
  }
  const layNew = (draft: Draft): void => {
    desk.lay(draft)
    remember()
    list()
  }
  const takeAway = (id: string): void => {
    const kept = shelf.read(id)
    const isOpen = id === desk.id()
    if (isOpen) desk.keepNow()
    shelf.takeAway(id)
    if (isOpen) layNew(emptyDraft)
    list()
    if (!kept) return
    say(`‘${titleOf(kept.draft)}’ was thrown away.`, {
      words: 'Bring it back',
      go: () => {
        shelf.keep(id, kept.draft, null)
        open(id)
      },
    })
  }
  const list = (): void => showShelf(root, shelf.list(), desk.id(), { onOpen: open, onTakeAway: takeAway })

  const save = async (): Promise<void> => {
    const draft = desk.draft()
    const told = await askOfFile({ ask: 'write', draft })
    if (told) download(fileName(draft), told.text)
    else say('The file could not be written just now. Your draft is kept; try again.')
  }
  const read = async (file: File): Promise<void> => {
    const got = await textOf(file)
    if (got.text === null) return say(got.why)
    const told = await askOfFile({ ask: 'read', name: file.name, text: got.text })
    if (!told) return say(`‘${file.name}’ took too long to read. Nothing was opened.`)
    if (!told.draft)
      return say(
        `‘${file.name}’ was not opened; your draft is as it was. What stands in the way:\n${told.problems}`,
      )
    layNew(told.draft)
    const remarks = told.remarks ? ' Remarks after # in the file are not part of the draft.' : ''
    say(`‘${titleOf(told.draft)}’ was opened as a draft of its own.${remarks}`)
  }
  const copyLink = async (): Promise<void> => {
    const payload = await draftToLink(desk.draft(), browserPacking)
    if (payload.length > longestLink)
      return say('This draft is too long for a link. Save it as a file instead.')
    const link = `${location.origin}${location.pathname}#${linkName}${payload}`
    const long =
      payload.length > 2000 ? ' It is long: some mail programs break it. A file is safer then.' : ''
    try {
      await navigator.clipboard.writeText(link)
      say(
        `The link is copied. The draft itself stands in it, behind the #, and is sent to nobody but whom you give it to.${long}`,
      )
    } catch {
      say(`Copy this link:\n${link}`)
    }
  }
  const fromLink = async (): Promise<boolean> => {
    const hash = location.hash.slice(1)
    if (!hash.startsWith(linkName)) return false
    const reading = await draftFromLink(hash.slice(linkName.length), browserPacking)
    history.replaceState(null, '', location.pathname + location.search)
    if (!reading.draft) {
      say(whyNot[reading.why])
      return false
    }
    const text = JSON.stringify(reading.draft)
    const same = shelf.list().find(({ id }) => JSON.stringify(shelf.read(id)?.draft) === text)
    if (same) open(same.id)
    else layNew(reading.draft)
    say(
      `‘${titleOf(reading.draft)}’ came with the link. It is a draft of your own now; what you change stays here.`,
    )
    return true
  }

  const chosen = find<HTMLInputElement>(root, '[data-file]')
  chosen.addEventListener('change', () => {
    const file = chosen.files?.[0]
    if (file) void read(file)
    chosen.value = ''
  })
  root.addEventListener('dragover', (event) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault()
  })
  root.addEventListener('drop', (event) => {
    const file = event.dataTransfer?.files[0]
    if (!file) return
    event.preventDefault()
    void read(file)
  })
  addEventListener('storage', ({ key }) => {
    list()
    if (shelf.idOf(key) !== desk.id() || !desk.isElsewhere()) return
    say('This draft was just changed in another tab. What you write here is kept as a second draft.', {
      words: 'Show the other one',
      go: () => open(desk.id()),
    })
  })
  addEventListener('pagehide', desk.keepNow)
  document.addEventListener('visibilitychange', desk.keepNow)
  addEventListener('hashchange', () => void fromLink())
  return {
    begin() {
      const id = remembered()
      const newest = shelf.list()[0]?.id
      const isOpen = (id !== null && open(id)) || (newest !== undefined && open(newest))
      if (!isOpen) layNew(emptyDraft)
      void fromLink()
    },
    list,
    remember,
    save: () => void save(),
    act(name) {
      if (name === 'save') void save()
      else if (name === 'open') chosen.click()
      else if (name === 'link') void copyLink()
      else if (name === 'new') {
        desk.keepNow()
        if (!isBlank(desk.draft())) layNew(emptyDraft)
        find(root, '[data-field="title"]').focus()
      }
    },
  }
}
