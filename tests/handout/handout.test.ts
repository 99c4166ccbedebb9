import { describe, expect, it } from 'vitest'
import { nodesOf } from '../../engine/drawing/index.ts'
import { handoutHtml, handoutOf, pageCode, prints } from '../../engine/lesson/index.ts'
import { work } from '../../engine/needles/index.ts'
import { stitchesUsed } from '../../engine/pattern/index.ts'
import { stitch } from '../../engine/stitches/index.ts'
import { openwork } from '../reference/command.ts'
import { classOf, library } from './support.ts'

const none = () => ({ blocked: null, asKnitted: null })
const one = (slug: string) => library.filter((source) => source.slug === slug)
const sheetOf = (slug: string, more: Parameters<typeof classOf>[1] = {}) => {
  const [sheet] = handoutOf(classOf([slug], more), one(slug)).sheets
  if (!sheet) throw new Error(`no sheet of ${slug}`)
  return sheet
}

describe('every pattern on paper', () => {
  it('is there', () => expect(library.length).toBeGreaterThan(25))

  describe.each(prints)('printed %s', (print) => {
    it('has the counts that the hands come to, stitch by stitch', () => {
      for (const { slug, pattern } of library) {
        for (const repeats of [1, 4]) {
          const sheet = sheetOf(slug, { print, patterns: [{ pattern: slug, repeats }] })
          const { worked } = work(pattern, 'fixed' in pattern.castOn ? 1 : repeats)
          const counted = worked?.rows.map(({ before, waiting, after, unworked, steps }) => ({
            before: before.length + waiting.length,
            after: steps.at(-1)?.total ?? after.length + unworked.length,
          }))
          expect(
            sheet.rows.map(({ before, after }) => ({ before, after })),
            `${slug}, ${repeats} repeats`,
          ).toEqual(counted)
          expect(sheet.castOn.stitches, slug).toBe(worked?.castOn)
        }
      }
    })

    it('has every row, with its name, in the printed text', () => {
      for (const { slug, pattern } of library) {
        const html = handoutHtml(handoutOf(classOf([slug], { print }), one(slug)), none)
        const rows = [...html.matchAll(/<(?:span class="name"|h4)>((?:Set-up r|R)(?:ow|ound) \d+)/g)]
        expect(new Set(rows.map(([, name]) => name)).size, slug).toBe(
          pattern.setUp.length + pattern.rows.length,
        )
      }
    })

    it('has a key with just the stitches that its rows use', () => {
      for (const { slug, pattern } of library) {
        const { before, after } = pattern.edges
        const items = [
          ...before,
          ...after,
          ...[...pattern.setUp, ...pattern.rows].flatMap((row) => row.items),
        ]
        const key = sheetOf(slug, { print })
          .key.map(({ id }) => id)
          .filter((id) => id !== 'none')
        expect(new Set(key), slug).toEqual(stitchesUsed(items))
        expect(key.length, slug).toBe(new Set(key).size)
      }
    })
  })

  it('says in the key what each stitch does to the count', () => {
    for (const { id, change } of library.flatMap(({ slug }) => sheetOf(slug).key)) {
      if (id === 'none') continue
      const { takes, makes } = stitch(id)
      expect(Number(change.replace('−', '-')), id).toBe(makes - takes)
    }
  })

  it('agrees with the command, which tells every step', () => {
    const run = openwork('steps', '--repeats', '3', '--json', 'content/patterns/little-fountain.yaml')
    const steps = JSON.parse(run.out) as { row: number; total: number }[]
    const ends = [1, 2, 3, 4].map((row) => steps.findLast((step) => step.row === row)?.total)
    expect(sheetOf('little-fountain').rows.map(({ after }) => after)).toEqual(ends)
  })
})

describe('paper for a left-handed knitter', () => {
  const drawnAt = (print: 'usual' | 'left-handed', kind: string) => {
    const { chart } = sheetOf('reed-bed', { print })
    return [...nodesOf(chart?.nodes ?? [])].filter((node) => node.kind === kind)
  }

  it('mirrors chart, order and leans together, and leaves the words of the rows as they are', () => {
    const [usual, left] = [sheetOf('reed-bed'), sheetOf('reed-bed', { print: 'left-handed' })]
    const leans = (sheet: typeof usual) => Object.fromEntries(sheet.key.map(({ id, lean }) => [id, lean]))
    expect(leans(usual)).toMatchObject({ k2tog: 'leans right', ssk: 'leans left' })
    expect(leans(left)).toMatchObject({ k2tog: 'leans left', ssk: 'leans right' })
    expect(usual.rows.map(({ way }) => way)).toEqual(['leftwards', 'rightwards'])
    expect(left.rows.map(({ way }) => way)).toEqual(['rightwards', 'leftwards'])
    expect(left.rows.map(({ boxes }) => boxes)).toEqual(usual.rows.map(({ boxes }) => boxes))
  })

  it('has the row numbers on the other side, and readable', () => {
    const text = (print: 'usual' | 'left-handed') =>
      drawnAt(print, 'text').flatMap((node) => (node.kind === 'text' ? [`${node.text} ${node.anchor}`] : []))
    expect(text('usual')).toContain('1 start')
    expect(text('left-handed')).toContain('1 end')
  })

  it('has no word of left and right needles', () => {
    const html = handoutHtml(
      handoutOf(classOf(['reed-bed'], { print: 'left-handed' }), one('reed-bed')),
      none,
    )
    expect(html).toContain('from left to right, wrong-side rows from right to left')
    expect(html).not.toMatch(/(left|right) needle/)
  })
})

describe('large print', () => {
  it('says everything without the chart', () => {
    const { chart, key } = sheetOf('fan', { print: 'large' })
    const html = handoutHtml(handoutOf(classOf(['fan'], { print: 'large' }), one('fan')), none)
    expect(chart).toBeNull()
    expect(html).not.toMatch(/class="chart|<table/)
    for (const { name } of key.filter(({ id }) => id !== 'none')) expect(html).toContain(name)
  })
})

describe('the code of a page', () => {
  const fan = one('fan')[0]?.pattern
  if (!fan) throw new Error('the library has no fan')

  it('is the same whenever it is made, and short, without look-alikes', () => {
    for (const { pattern } of library) {
      expect(pageCode(pattern)).toBe(pageCode(structuredClone(pattern)))
      expect(pageCode(pattern)).toMatch(/^[3479ACEFHJKMNPRTWXY]{3}-[3479ACEFHJKMNPRTWXY]{3}$/)
    }
  })

  it('differs from pattern to pattern', () => {
    expect(new Set(library.map(({ pattern }) => pageCode(pattern))).size).toBe(library.length)
  })

  it('changes with the version, a row or the cast-on, and with nothing else', () => {
    const code = pageCode(fan)
    const [first, ...rest] = fan.rows
    expect(pageCode({ ...fan, about: { ...fan.about, version: '1.1' } })).not.toBe(code)
    expect(pageCode({ ...fan, rows: rest })).not.toBe(code)
    expect(pageCode({ ...fan, castOn: { multiple: 9, plus: 1 } })).not.toBe(code)
    expect(first && pageCode({ ...fan, rows: [{ ...first, text: 'as written' }, ...rest] })).toBe(code)
    expect(pageCode({ ...fan, about: { ...fan.about, notes: 'A new note' } })).toBe(code)
  })

  it('stands on the paper of every print, at the head and at the foot', () => {
    for (const print of prints) {
      const html = handoutHtml(handoutOf(classOf(['fan'], { print }), one('fan')), none)
      expect(html.split(pageCode(fan)).length - 1, print).toBeGreaterThanOrEqual(3)
    }
  })
})

describe('paper is safe', () => {
  it('whatever the teacher types', () => {
    const nasty = '<img src=x onerror=alert(1)>"\'&'
    const plan = classOf(['fan'], {
      ...{
        title: nasty,
        guild: nasty,
        date: nasty,
        place: nasty,
        yarn: nasty,
        homework: nasty,
        bring: [nasty],
      },
      parts: [{ minutes: 5, what: nasty, all: nasty, most: nasty, quick: nasty }],
    })
    for (const print of prints) {
      const html = handoutHtml(handoutOf({ ...plan, print }, one('fan')), none)
      expect(html).not.toContain('<img src=x')
      expect(html).toContain('&lt;img src=x onerror=alert(1)&gt;')
    }
  })
})

describe('cautions', () => {
  it('stand on every pattern, whatever else is chosen', () => {
    const html = handoutHtml(handoutOf(classOf(['fan', 'vine'], { sections: [] }), library), none)
    for (const word of ['hands', 'pins', 'scald', 'small children', 'hand therapist', 'Lifeline'])
      expect(html.split(word).length - 1, word).toBeGreaterThanOrEqual(2)
  })
})
