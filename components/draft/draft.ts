import { changed, type DraftChange } from '../../engine/intake/index.ts'
import { find } from '../mend/dom.ts'
import type { Answer, MendView } from './answer.ts'
import { showCards } from './card-view.ts'
import { changePart } from './change-view.ts'
import { chartPart, type Here } from './chart-view.ts'
import { clothPart } from './cloth-view.ts'
import { deskWith } from './desk.ts'
import { textsOf, withRow } from './edit-rows.ts'
import { headPart } from './head-view.ts'
import { noticeOn } from './notice.ts'
import { outsideOf } from './outside.ts'
import { askOfFile, reckonerFor } from './reckoner.ts'
import { rowHands } from './row-hands.ts'
import { type RowEvents, rowsView } from './rows-view.ts'
import { shelfOn } from './shelf.ts'
import { inSlices } from './slices.ts'
import { stitchPart } from './stitch-view.ts'
import { takeRows } from './take-rows.ts'

/** Milliseconds without a key before suggestions and the stitch that is looked at are worked out. */
const rest = 200

function start(root: HTMLElement): void {
  const say = noticeOn(root)
  const stand = find(root, '[data-stand]')
  const shelf = shelfOn(localStorageOrNone(), Date.now, () => crypto.randomUUID())
  const paint = inSlices()
  let answer: Answer | null = null
  let mends: readonly MendView[] = []
  let here: Here | null = null
  let chosenBy: 'chart' | 'row' = 'row'
  let repeats: number | null = null
  let resting = 0

  const reckoner = reckonerFor({
    onAnswer(fresh) {
      answer = fresh
      mends = []
      show()
      clearTimeout(resting)
      resting = window.setTimeout(afterRest, rest)
    },
    onStuck: () =>
      say(
        'This took too long to work out and was stopped. Is there a number in the rows that is far too large? Your rows are kept.',
      ),
  })
  const desk = deskWith(shelf, () => crypto.randomUUID(), Date.now, {
    onDraft(fields) {
      const draft = desk.draft()
      if (fields === 'anew') {
        rows.sync(draft)
        head.sync(draft)
      }
      setTools()
      reckoner.check(draft, repeats)
    },
    onKept: () => outside.list(),
    onSecond: (title) => {
      outside.remember()
      say(`This draft was written in another tab as well. Both are kept: this tab goes on as ‘${title}’.`)
    },
    onFull: () =>
      say(
        'This browser keeps no more. Save the draft as a file, so that it is not lost when the page is closed.',
        {
          words: 'Save as a file',
          go: () => outside.save(),
        },
      ),
  })
  const head = headPart(root, { draft: desk.draft, onChange: desk.change, onMend: mend })
  const hands = rowHands({ desk, say, focus: (index, caret) => rows.focus(index, caret) })
  const rows = rowsView(root, rowEvents())
  const chart = chartPart(root, {
    onChoose: (to) => choose(to, 'chart'),
    onEnter: (to) => {
      choose(to, 'chart')
      void look().then(() => stitch.focusChoices())
    },
  })
  const stitch = stitchPart(root, {
    onGo: ([index, step]) => choose({ index, step }, chosenBy),
    onPut: mend,
    onLeave: () => (chosenBy === 'chart' ? chart.focus() : focusRow()),
  })
  const cloth = clothPart(root)
  const changes = changePart(root, {
    draft: desk.draft,
    onAsk: async (pattern, written) => (await askOfFile({ ask: 'change', pattern, written }))?.change ?? null,
    onTake: (pattern) => takeRows(desk, pattern),
  })
  const outside = outsideOf({ root, desk, shelf, say })

  /** Shows an answer, the row that is being written first. */
  function show(): void {
    if (!answer) return
    const draft = desk.draft()
    const found = answer
    // Said again only when it changes: it is read out.
    if (stand.textContent !== found.summary.headline) stand.textContent = found.summary.headline
    stand.dataset.sound = found.summary.rows === 0 ? 'none' : String(found.summary.sound)
    find(root, '[data-do="first"]').hidden = found.summary.first === null
    head.show(found, mends)
    const list = rows.showing(draft, found, mends)
    const first = list.splice(here?.index ?? 0, 1)
    paint([...first, ...list, ...chart.showing(found.chart), light, () => showRest(found)])
  }
  function showRest({ summary, pattern }: Answer): void {
    const select = find<HTMLSelectElement>(root, '[data-repeats]')
    select.disabled = summary.isFixed
    select.value = String(summary.repeats)
    cloth.show(pattern)
    changes.show(summary.sound ? pattern : null)
  }
  function light(): void {
    rows.light(here?.index ?? null, here?.step ?? null)
    chart.light(here)
  }
  function choose(to: Here, by: 'chart' | 'row'): void {
    ;[here, chosenBy] = [to, by]
    light()
    void look()
  }
  async function look(): Promise<void> {
    if (!here) return stitch.show(null)
    const asked = here
    const told = await reckoner.ask({ ask: 'stitch', ...asked })
    if (told && asked === here) stitch.show(told.view)
  }
  async function afterRest(): Promise<void> {
    if (answer && answer.problems.length > 0) {
      const told = await reckoner.ask({ ask: 'mends' })
      if (told) {
        mends = told.mends
        show()
      }
    }
    await look()
  }
  function mend(change: DraftChange): void {
    desk.change(changed(desk.draft(), change))
    if (change.kind === 'text' && change.place.part === 'row' && chosenBy === 'row')
      rows.focus(
        change.place.row - 1 + desk.draft().setUp.length,
        change.edit.start + change.edit.text.length,
      )
  }
  function focusRow(): void {
    const span = here && rows.spanOf(here.index, here.step)
    if (here) rows.focus(here.index, span?.[0] ?? 0)
  }
  /** The swatch card where the draft is proved, else the draft as it stands. */
  async function printCard(): Promise<void> {
    const draft = desk.draft()
    const told = await askOfFile({ ask: 'card', draft })
    const edges = draft.edges.before.trim() !== '' || draft.edges.after.trim() !== ''
    showCards(root, told?.card ?? null, draft.worked === 'round', edges)
    document.documentElement.dataset.printing = told?.card ? 'cards' : 'draft'
    print()
  }
  function setTools(): void {
    find(root, '[data-do="undo"]').setAttribute('aria-disabled', String(!desk.canUndo()))
    find(root, '[data-do="redo"]').setAttribute('aria-disabled', String(!desk.canRedo()))
  }

  function rowEvents(): RowEvents {
    return {
      onText: (index, text) => desk.change(withRow(desk.draft(), index, text), `row ${index}`),
      onCaret(index, caret) {
        const step = rows.stepAt(index, caret)
        if (step !== null && (here?.index !== index || here.step !== step)) choose({ index, step }, 'row')
      },
      onMend: mend,
      ...hands,
    }
  }

  root.addEventListener('click', ({ target }) => {
    const name = target instanceof Element ? target.closest<HTMLElement>('[data-do]')?.dataset.do : undefined
    if (name === 'undo') desk.undo()
    else if (name === 'redo') desk.redo()
    else if (name === 'first' && answer?.summary.first != null)
      rows.focus(answer.summary.first - 1 + desk.draft().setUp.length, 0)
    else if (name === 'add-row') hands.addBelow(textsOf(desk.draft()).length - 1)
    else if (name === 'add-set-up') {
      desk.change({ ...desk.draft(), setUp: [...desk.draft().setUp, ''] })
      rows.focus(desk.draft().setUp.length - 1, 0)
    } else if (name === 'print') void printCard()
    else if (name) outside.act(name)
  })
  root.addEventListener('keydown', (event) => {
    const key = event.key.toLowerCase()
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !['z', 'y'].includes(key)) return
    event.preventDefault()
    if (key === 'y' || event.shiftKey) desk.redo()
    else desk.undo()
  })
  // The browser's own menu can take back as well.
  root.addEventListener('beforeinput', (event) => {
    if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return
    event.preventDefault()
    if (event.inputType === 'historyUndo') desk.undo()
    else desk.redo()
  })
  find<HTMLSelectElement>(root, '[data-repeats]').addEventListener('change', ({ target }) => {
    repeats = Number((target as HTMLSelectElement).value)
    reckoner.check(desk.draft(), repeats)
  })
  addEventListener('keydown', (event) => {
    if (event.key !== 'p' || !(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey) return
    event.preventDefault()
    void printCard()
  })
  root.hidden = false
  outside.begin()
}

/** The browser's storage, or one that keeps nothing where there is none. */
function localStorageOrNone(): Storage {
  try {
    return localStorage
  } catch {
    const none = { length: 0, key: () => null, getItem: () => null, removeItem: () => {}, clear: () => {} }
    return {
      ...none,
      setItem: () => {
        throw new Error('nothing is kept')
      },
    }
  }
}

for (const root of document.querySelectorAll<HTMLElement>('[data-draft]')) start(root)
