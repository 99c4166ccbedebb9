import { describe, expect, it } from 'vitest'
import { deskWith } from '../../components/draft/desk.ts'
import { cut, difference, joined, pasted, splice } from '../../components/draft/edit-rows.ts'
import { again, back, historyOf, record } from '../../components/draft/history.ts'
import { nextTitle, type Shelf, shelfOn } from '../../components/draft/shelf.ts'
import { takeRows } from '../../components/draft/take-rows.ts'
import { type Draft, emptyDraft, parseKeptDraft, readDraft, readPaste } from '../../engine/intake/index.ts'

/** A browser's storage; `room` is how many characters it keeps. */
function storage(room = Number.POSITIVE_INFINITY) {
  const map = new Map<string, string>()
  return {
    get length() {
      return map.size
    },
    key: (i: number) => [...map.keys()][i] ?? null,
    getItem: (key: string) => map.get(key) ?? null,
    removeItem: (key: string) => void map.delete(key),
    setItem(key: string, value: string) {
      if (value.length > room) throw new Error('full')
      map.set(key, value)
    },
  }
}

let stamps = 0
const shelf = (store = storage()): Shelf =>
  shelfOn(
    store,
    () => 1_000,
    () => `stamp ${++stamps}`,
  )
const rows = (...texts: string[]): Draft => ({ ...emptyDraft, title: 'Ebb', rows: texts })

/** A tab with a draft on its desk, and what it told. */
function tab(kept: Shelf, ids: string[]) {
  const told: string[] = []
  const desk = deskWith(
    kept,
    () => ids.shift() ?? 'no more ids',
    () => 0,
    {
      onDraft: () => {},
      onKept: () => told.push('kept'),
      onSecond: (title) => told.push(`second: ${title}`),
      onFull: () => told.push('full'),
    },
  )
  return { desk, told }
}

describe('what was typed', () => {
  it('can be taken back and made again, a word at a time', () => {
    let history = historyOf('')
    history = record(history, 'k', 'row 0', 100)
    history = record(history, 'k1', 'row 0', 300)
    history = record(history, 'k1, yo', 'row 0', 5_000)
    history = record(history, 'k1, ssk', null, 5_100)
    expect(back(history).now).toBe('k1, yo')
    expect(back(back(history)).now).toBe('k1')
    expect(back(back(back(history))).now).toBe('')
    expect(again(back(back(history))).now).toBe('k1, yo')
    const start = back(back(back(back(history))))
    expect(start.now).toBe('')
    expect(again(again(again(again(start)))).now).toBe('k1, ssk')
  })

  it('is on the shelf after a change, with its name', () => {
    const kept = shelf()
    const { desk, told } = tab(kept, ['first', 'a'])
    desk.lay(emptyDraft)
    desk.change(rows('knit'))
    desk.keepNow()
    expect(told).toEqual(['kept'])
    expect(kept.list()).toEqual([{ id: 'a', title: 'Ebb', saved: 1_000 }])
    expect(kept.read('a')?.draft).toEqual(rows('knit'))
  })

  it('is told where the browser keeps no more', () => {
    const { desk, told } = tab(shelf(storage(100)), ['first', 'a'])
    desk.lay(emptyDraft)
    desk.change(rows('knit'))
    desk.keepNow()
    expect(told).toEqual(['full'])
    expect(desk.draft()).toEqual(rows('knit'))
  })
})

it('rows that were made from the draft take the place of its own in one step', () => {
  const { desk } = tab(shelf(), ['first', 'a'])
  const before = {
    ...rows('k1, *yo, ssk; rep from * to end', 'purl'),
    about: { ...emptyDraft.about, yarn: 'wool' },
  }
  desk.lay(before)
  const { pattern } = readDraft({ ...emptyDraft, worked: 'round', rows: ['*ssk, YO; rep from *', 'knit'] })
  takeRows(desk, pattern)
  expect(desk.draft()).toMatchObject({
    title: 'Ebb',
    worked: 'round',
    rows: ['*ssk, yo; rep from * to end', 'knit'],
    castOn: { kind: 'multiple', multiple: '2', plus: '0' },
    about: { yarn: 'wool' },
  })
  desk.undo()
  expect(desk.draft()).toEqual(before)
})

describe('two tabs with one draft', () => {
  it('write two drafts, and neither is lost', () => {
    const kept = shelf()
    const one = tab(kept, ['first', 'a'])
    one.desk.lay(rows('knit'))
    one.desk.keepNow()
    const two = tab(kept, ['first', 'b'])
    const open = kept.read('a')
    if (!open) throw new Error('the draft is not on the shelf')
    two.desk.lay(open.draft, { id: 'a', stamp: open.stamp })
    one.desk.change(rows('purl'))
    one.desk.keepNow()
    expect(two.desk.isElsewhere()).toBe(true)
    two.desk.change(rows('k2'))
    two.desk.keepNow()
    expect(two.told).toEqual(['kept', 'second: Ebb (2)'])
    expect(kept.read('a')?.draft).toEqual(rows('purl'))
    expect(kept.read('b')?.draft).toEqual({ ...rows('k2'), title: 'Ebb (2)' })
    // From now on each has its own.
    one.desk.change(rows('k3'))
    one.desk.keepNow()
    expect(kept.read('a')?.draft.rows).toEqual(['k3'])
  })

  it('a draft that cannot be read is not written over', () => {
    const store = storage()
    store.setItem('openwork:draft:a', '{"of": "another version"}')
    expect(shelf(store).keep('a', rows('knit'), null)).toEqual({ kept: false, why: 'elsewhere' })
    expect(store.getItem('openwork:draft:a')).toBe('{"of": "another version"}')
  })

  it.each([
    ['Ebb', 'Ebb (2)'],
    ['Ebb (2)', 'Ebb (3)'],
    ['', 'Without a name (2)'],
  ])('the second of ‘%s’ is called ‘%s’', (title, next) => expect(nextTitle(title)).toBe(next))
})

it.each([
  null,
  '',
  '{}',
  '[]',
  '{"saved":1,"stamp":"x","draft":{}}',
  `{"saved":"1","stamp":"x","draft":${JSON.stringify(emptyDraft)}}`,
])('%s is no draft that was kept', (stored) => expect(parseKeptDraft(stored)).toBe(null))

describe('rows under the hand', () => {
  it('are cut and joined without losing a word', () => {
    const two = cut(rows('k1, yo, k1'), 0, 4)
    expect(two.rows).toEqual(['k1, ', 'yo, k1'].map((row) => row.trimEnd()))
    expect(joined(two, 1)).toEqual({ draft: rows('k1, yo, k1'), caret: 3 })
    expect(joined(rows('knit'), 0)).toBe(null)
  })

  it('set-up rows stay apart from the others', () => {
    const draft = { ...rows('knit', 'purl'), setUp: ['k3'] }
    expect(splice(draft, 0, 1, ['k3', 'k4'])).toMatchObject({ setUp: ['k3', 'k4'], rows: ['knit', 'purl'] })
    expect(splice(draft, 2, 1, [])).toMatchObject({ setUp: ['k3'], rows: ['knit'] })
    expect(joined(draft, 1)).toBe(null)
  })

  it('are put where the caret stands', () => {
    expect(pasted(rows('k1, k9'), 0, { start: 4, end: 4 }, ['yo', 'purl', '']).rows).toEqual([
      'k1, yo',
      'purl',
      'k9',
    ])
  })

  it('keep their places when others come or go', () => {
    expect(difference(['a', 'b', 'c'], ['a', 'x', 'b', 'c'])).toEqual({ start: 1, taken: 0, put: 1 })
    expect(difference(['a', 'b', 'c'], ['a', 'c'])).toEqual({ start: 1, taken: 1, put: 0 })
    expect(difference(['a', 'a'], ['a', 'a', 'a'])).toEqual({ start: 2, taken: 0, put: 1 })
  })
})

describe('a text from a booklet', () => {
  it('gives rows by their headings, however lines are broken', () => {
    const read = readPaste(
      'Ebb\nMultiple of 6 sts plus 1.\nRow 1: k1, *yo, ssk,\n  k1, k2tog, yo, k1; rep from * to end\nRows 2 and 4: purl\nRow 3: knit\nRepeat rows 1 to 4.',
    )
    expect(read.rows).toEqual(['k1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end', 'purl', 'knit', 'purl'])
    expect(read.castOn?.castOn).toEqual({ multiple: 6, plus: 1 })
    expect(read.beside).toEqual(['Ebb', 'Repeat rows 1 to 4.'])
  })

  it('fills every second row where one stands for all of them', () => {
    const { rows: all } = readPaste('Row 1: k1\nRow 2 and all even rows: purl.\nRow 3: k3\nRow 5: k5')
    expect(all).toEqual(['k1', 'purl.', 'k3', 'purl.', 'k5', 'purl.'])
  })

  it('gives one row a line where there are no headings', () => {
    expect(readPaste('Cast on 23 sts\nknit\r\n\r\npurl\n')).toEqual({
      rows: ['knit', 'purl'],
      castOn: { castOn: { fixed: 23 }, words: 'Cast on 23 sts' },
      beside: [],
    })
  })

  it('keeps every line where the numbers do not make up a whole', () => {
    const text = 'Row 1: knit\nRow 5: purl\nRow 5: knit'
    expect(readPaste(text).rows).toEqual(text.split('\n'))
  })
})
