import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  type Drawing,
  type GroupNode,
  needlesDrawing,
  nodesOf,
  stepMoves,
  toSvg,
} from '../../engine/drawing/index.ts'
import { checkPattern } from '../../engine/intake/index.ts'
import { needlesAfter, type WorkedPattern, work } from '../../engine/needles/index.ts'

function workedFrom(name: string, text: string, repeats: number): WorkedPattern {
  const { pattern, sound, issues } = checkPattern({ name, text })
  const { worked } = pattern ? work(pattern, repeats) : { worked: null }
  if (!sound || !worked) throw new Error(`${name}: ${JSON.stringify(issues)}`)
  return worked
}

const fileNamed = (slug: string, repeats: number): WorkedPattern =>
  workedFrom(
    slug,
    readFileSync(new URL(`../../content/patterns/${slug}.yaml`, import.meta.url), 'utf8'),
    repeats,
  )

/** Rows of our own, worked on so many stitches; they need not come back to the count. */
const rowsOn = (castOn: number, ...rows: string[]): WorkedPattern =>
  workedFrom(
    'rows',
    ['title: Rows', `castOn: ${castOn}`, 'growing: true', 'rows:', ...rows.map((row) => `  - ${row}`)].join(
      '\n',
    ),
    1,
  )

const groups = (drawing: Drawing): GroupNode[] =>
  [...nodesOf(drawing.nodes)].filter((node) => node.kind === 'group')
const texts = (drawing: Drawing): string[] =>
  [...nodesOf(drawing.nodes)].flatMap((node) => (node.kind === 'text' ? [node.text] : []))

/** Loops drawn on a needle, from its tip on. */
function drawnOn(drawing: Drawing, needle: 'left' | 'right'): GroupNode[] {
  const found = groups(drawing).filter((group) => group.data?.needle === needle)
  return found.sort((a, b) => (needle === 'left' ? (b.x ?? 0) - (a.x ?? 0) : (a.x ?? 0) - (b.x ?? 0)))
}

const idOf = (group: GroupNode): number => Number(/^loop-(\d+)$/.exec(group.key ?? '')?.[1])

function moreOn(drawing: Drawing, needle: 'left' | 'right'): number {
  const more = [...nodesOf(drawing.nodes)].find((node) => node.key === `more-${needle}`)
  return more?.kind === 'text' ? Number(/^\+ (\d+)$/.exec(more.text)?.[1]) : 0
}

const marked = (drawing: Drawing, needle: 'left' | 'right', mark: string): number[] =>
  drawnOn(drawing, needle)
    .filter((group) => group.className?.split(' ').includes(mark))
    .map(idOf)

const patterns: [string, number][] = [
  ['reed-bed', 2],
  ['horseshoe', 3],
  ['fan', 2],
  ['portholes', 2],
  ['shetland-bead', 2],
  ['jib-shawl', 1],
  ['slipway-edging', 1],
  ['harbour-swell', 2],
  ['miniature-leaf', 2],
  ['little-fountain', 3],
  ['old-shale', 1],
]

describe.each(patterns)('%s over %i repeats', (slug, repeats) => {
  const worked = fileNamed(slug, repeats)
  const moments = worked.rows.flatMap((row, rowIndex) =>
    row.steps.map((step, index) => ({
      row,
      step,
      rowIndex,
      done: index + 1,
      drawing: needlesDrawing({ worked, rowIndex, done: index + 1 }),
    })),
  )

  it('shows as many loops on each needle as the step counts, drawn or numbered', () => {
    expect(moments.length).toBeGreaterThan(20)
    for (const { step, drawing } of moments) {
      for (const needle of ['left', 'right'] as const) {
        expect(
          drawnOn(drawing, needle).length + moreOn(drawing, needle),
          `${step.row}/${step.step} ${needle}`,
        ).toBe(step[needle])
        expect(texts(drawing)).toContain(`${step[needle]} on the ${needle}`)
      }
    }
  })

  it('says the same numbers in words', () => {
    for (const { step, drawing } of moments) {
      const said = (needle: string): number =>
        Number(new RegExp(`${needle} needle: (\\d+) loops?[,.]`).exec(drawing.description)?.[1])
      expect([said('Left'), said('Right')]).toEqual([step.left, step.right])
      for (const needle of ['left', 'right'] as const) {
        const more = moreOn(drawing, needle)
        if (more > 0)
          expect(drawing.description).toContain(`${step[needle]} loops, ${more} of them counted only.`)
      }
    }
  })

  it('draws the loops next to the tips, in their order', () => {
    for (const { rowIndex, done, drawing } of moments) {
      const { left, right } = needlesAfter(worked, rowIndex, done)
      const [onLeft, onRight] = [drawnOn(drawing, 'left').map(idOf), drawnOn(drawing, 'right').map(idOf)]
      expect(onLeft).toEqual(left.slice(0, onLeft.length))
      expect(onRight).toEqual(right.toReversed().slice(0, onRight.length))
    }
  })

  it('marks what was made, and numbers what is taken next', () => {
    for (const { row, step, done, drawing } of moments) {
      const shown = (ids: readonly number[], needle: 'left' | 'right'): number[] => {
        const drawn = drawnOn(drawing, needle).map(idOf)
        return drawn.filter((id) => ids.includes(id))
      }
      expect(marked(drawing, 'right', 'is-new')).toEqual(shown(step.made, 'right'))
      const taken = row.steps[done]?.taken ?? []
      expect(marked(drawing, 'left', 'is-next')).toEqual(shown(taken, 'left'))
      const numbers = drawnOn(drawing, 'left').flatMap((group) =>
        group.children.flatMap((node) => (node.kind === 'text' ? [node.text] : [])),
      )
      expect(numbers).toEqual(shown(taken, 'left').map((id) => String(taken.indexOf(id) + 1)))
    }
  })

  it('stays within its frame, with type that a phone can show', () => {
    for (const { drawing } of moments) {
      for (const group of [...drawnOn(drawing, 'left'), ...drawnOn(drawing, 'right')]) {
        expect(group.x).toBeGreaterThan(20)
        expect(group.x).toBeLessThan(drawing.width - 20)
      }
      // 358 pixels are left of 390.
      for (const node of nodesOf(drawing.nodes))
        if (node.kind === 'text') expect((node.size * 358) / drawing.width).toBeGreaterThan(11)
    }
  })

  it('moves forward as it moves back, mirrored', () => {
    for (const [i, { drawing }] of moments.entries()) {
      const next = moments[i + 1]?.drawing
      if (!next) continue
      const [on, back] = [stepMoves(drawing, next), stepMoves(next, drawing)]
      const sorted = <T extends { key: string }>(list: readonly T[]): T[] =>
        list.toSorted((a, b) => (a.key < b.key ? -1 : 1))
      expect(on.stays.toSorted()).toEqual(back.stays.toSorted())
      expect(sorted(on.moves)).toEqual(
        sorted(back.moves.map(({ key, from, to }) => ({ key, from: to, to: from }))),
      )
      expect(sorted(on.enters)).toEqual(sorted(back.leaves.map(({ key, from }) => ({ key, to: from }))))
      expect(sorted(on.leaves)).toEqual(sorted(back.enters.map(({ key, to }) => ({ key, from: to }))))
      const all = [...on.stays, ...[...on.moves, ...on.enters, ...on.leaves].map(({ key }) => key)]
      expect(new Set(all).size).toBe(all.length)
    }
  })
})

describe('a loop', () => {
  const loop = (
    worked: WorkedPattern,
    rowIndex: number,
    done: number,
    needle: 'left' | 'right',
    place = 0,
  ): GroupNode => {
    const found = drawnOn(needlesDrawing({ worked, rowIndex, done }), needle)[place]
    if (!found) throw new Error('no such loop')
    return found
  }
  /** Its yarn, without the marks beside it. */
  const yarn = (group: GroupNode): string =>
    JSON.stringify(group.children.filter((node) => node.className?.startsWith('yarn-')))
  const oldLoops = (group: GroupNode): number =>
    group.children.filter((node) => node.className === 'yarn-body below').length

  it('looks purled from the wrong side when it was knitted on the right side, and the other way round', () => {
    const worked = rowsOn(9, 'k4, p1, k4', 'p4, k1, p4')
    const [knitted, purled] = [yarn(loop(worked, 0, 4, 'right')), yarn(loop(worked, 0, 5, 'right'))]
    expect(knitted).not.toBe(purled)
    // On the wrong side the row's last loop is worked first: after one step the second of the row lies at the left tip.
    expect(yarn(loop(worked, 1, 4, 'right'))).toBe(purled)
    expect(yarn(loop(worked, 1, 5, 'right'))).toBe(knitted)
  })

  it('shows every loop that it was drawn through, and a yarn over none', () => {
    const worked = rowsOn(12, 'k1, yo, k2tog, k3tog, yo twice, k6')
    const made = [1, 2, 3, 4, 5].map((done) => oldLoops(loop(worked, 0, done, 'right')))
    expect(made).toEqual([1, 0, 2, 3, 0])
  })

  it('shows in front the old loop that lies in front, from either side', () => {
    /** Where the old loop that is drawn last stands: its feet to the left, in the middle or to the right. */
    const front = (group: GroupNode): number => {
      const last = group.children.filter((node) => node.className === 'yarn-body below').at(-1)
      const [from, to] = last?.kind === 'path' ? [last.d[0], last.d.at(-1)] : []
      return from?.[0] === 'M' && to?.[0] === 'C' ? Math.sign(Math.round(from[1] + to[5])) : Number.NaN
    }
    const worked = rowsOn(11, 'k1, k2tog, k1, ssk, k1, s2kp, k1', 'p7')
    const made = (done: number): number => front(loop(worked, 0, done, 'right'))
    expect([made(2), made(4), made(6)]).toEqual([-1, 1, 0])
    // From behind, the hindmost lies in front: of k2tog the right-side right one, which is then at the left.
    expect([front(loop(worked, 1, 0, 'left', 5)), front(loop(worked, 1, 0, 'left', 3))]).toEqual([-1, 1])
  })

  it('shows twisted legs, and only where they are twisted', () => {
    const worked = rowsOn(3, 'k1, k1 tbl, k1')
    const [open, twisted, after] = [1, 2, 3].map((done) => yarn(loop(worked, 0, done, 'right')))
    expect(twisted).not.toBe(open)
    expect(twisted?.match(/below/g)?.length).toBe((after?.match(/below/g)?.length ?? 0) * 2)
  })

  it('has its other leg in front when it sits turned, until it is worked', () => {
    const worked = rowsOn(3, 'k1, sl1 kwise, k1', 'p3')
    const legInFront = (group: GroupNode): number => {
      const legs = group.children.filter((node) => node.kind === 'path' && node.className === 'yarn-body')
      const heads = legs.flatMap((node) =>
        node.kind === 'path' && node.d[0]?.[0] === 'M' && node.d[0][2] < -15 ? [node.d.at(-1)] : [],
      )
      const end = heads[0]
      return end?.[0] === 'C' ? Math.sign(end[5]) : 0
    }
    expect(legInFront(loop(worked, 0, 1, 'right'))).toBe(1)
    expect(legInFront(loop(worked, 0, 2, 'right'))).toBe(-1)
    expect(legInFront(loop(worked, 1, 1, 'left'))).toBe(-1)
    expect(legInFront(loop(worked, 1, 2, 'right'))).toBe(1)
  })
})

describe('the picture', () => {
  const worked = fileNamed('reed-bed', 2)

  it('is the same bytes for the same view', () => {
    const svg = (hold: 'English' | 'Continental'): string =>
      toSvg(needlesDrawing({ worked, rowIndex: 0, done: 3, hold }))
    expect(svg('English')).toBe(svg('English'))
    expect(svg('English')).not.toBe(svg('Continental'))
  })

  it('draws a marker between the loops that it hangs between', () => {
    const markers = rowsOn(8, 'k2, pm, k6', 'p6, sm, p2')
    const ring = (rowIndex: number, done: number): GroupNode | undefined =>
      groups(needlesDrawing({ worked: markers, rowIndex, done })).find(
        (group) => group.className === 'marker',
      )
    expect(ring(0, 2)).toBeUndefined()
    const onRight = drawnOn(needlesDrawing({ worked: markers, rowIndex: 0, done: 4 }), 'right').map(
      ({ x }) => x ?? 0,
    )
    expect(ring(0, 4)?.x).toBeCloseTo(((onRight[1] ?? 0) + (onRight[2] ?? 0)) / 2)
    const onLeft = drawnOn(needlesDrawing({ worked: markers, rowIndex: 1, done: 4 }), 'left').map(
      ({ x }) => x ?? 0,
    )
    expect(ring(1, 4)?.x).toBeCloseTo(((onLeft[1] ?? 0) + (onLeft[2] ?? 0)) / 2)
  })

  it('draws a line where one repeat of the row ends and the next begins', () => {
    const lines = (done: number): number =>
      [...nodesOf(needlesDrawing({ worked, rowIndex: 0, done }).nodes)].filter(
        (node) => node.className === 'repeat-line',
      ).length
    // Six stitches on, the first repeat still has one to go, and the edge stitch lies at the right.
    expect(lines(6)).toBe(2)
    expect(
      [...nodesOf(needlesDrawing({ worked, rowIndex: 1, done: 6 }).nodes)].some(
        (node) => node.className === 'repeat-line',
      ),
    ).toBe(false)
  })

  it('says when a row is done, and nothing is ringed then', () => {
    const last = needlesDrawing({ worked, rowIndex: 0, done: 13 })
    expect(texts(last)).toContain('Row done: turn')
    expect(last.description).toContain('The row is done.')
    expect(marked(last, 'left', 'is-next')).toEqual([])
    expect(texts(needlesDrawing({ worked: fileNamed('harbour-swell', 1), rowIndex: 0, done: 6 }))).toContain(
      'Round done',
    )
  })

  it('is empty and says so where there is no such row', () => {
    expect(needlesDrawing({ worked, rowIndex: 9, done: 1 })).toMatchObject({
      nodes: [],
      description: 'There is no such row.',
    })
  })
})
