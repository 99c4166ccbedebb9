import type { Span } from '../base/index.ts'
import { edgesOf, type Item, leftByBindOff, type Pattern, type Row, takesAndMakes } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import type { MarkerUse, Step } from './worked.ts'

/** One stitch to be worked, or the things done between stitches. */
export type Laid =
  | {
      readonly do: 'stitch'
      readonly stitch: string
      readonly span: Span
      readonly repeat: number | null
      readonly position: number | null
      readonly part: Step['part']
    }
  | { readonly do: 'marker'; readonly action: MarkerUse['action'] }
  | { readonly do: 'resume'; readonly count: number }
  | { readonly do: 'turn' }

interface Sheet {
  readonly out: Laid[]
  /** Loops on the left needle that are not spoken for yet. */
  left: number
  repeat: number | null
  repeatsSoFar: number
  position: number
  part: Step['part']
  readonly most: number
}

function put(sheet: Sheet, id: string, times: number, span: Span): void {
  const takes = stitch(id).takes
  for (let i = 0; i < times; i++) {
    if (sheet.out.length >= sheet.most) return
    sheet.left -= takes
    sheet.position++
    const position = sheet.repeat === null ? null : sheet.position
    sheet.out.push({ do: 'stitch', stitch: id, span, repeat: sheet.repeat, position, part: sheet.part })
  }
}

/** How often an open-ended stretch of `takes` stitches is worked before it must stop. */
function roomFor(sheet: Sheet, until: { kind: string; stitches?: number }, takes: number): number {
  return takes === 0 ? 0 : Math.max(0, Math.floor((sheet.left - (until.stitches ?? 0)) / takes))
}

function putRepeat(sheet: Sheet, item: Item & { kind: 'repeat' }): void {
  const inner = takesAndMakes(item.items)?.takes ?? 0
  const times = item.until.kind === 'times' ? item.until.times : roomFor(sheet, item.until, inner)
  for (let i = 0; i < times && sheet.out.length < sheet.most; i++) {
    sheet.repeat = ++sheet.repeatsSoFar
    sheet.position = 0
    for (const one of item.items) putItem(sheet, one)
  }
  sheet.repeat = null
}

function putItem(sheet: Sheet, item: Item): void {
  switch (item.kind) {
    case 'stitch':
      return put(sheet, item.stitch, item.times, item.span)
    case 'across':
      return put(sheet, item.stitch, roomFor(sheet, item.until, 1), item.span)
    case 'group':
      for (let i = 0; i < item.times && sheet.out.length < sheet.most; i++)
        for (const one of item.items) putItem(sheet, one)
      return
    case 'repeat':
      return putRepeat(sheet, item)
    case 'bindOff':
      put(sheet, item.stitch, item.count === 'all' ? sheet.left : item.count, item.span)
      return item.leavesOne ? put(sheet, leftByBindOff(item), 1, item.span) : undefined
    case 'marker':
      sheet.out.push({ do: 'marker', action: item.action })
      return
    case 'resume':
      sheet.left += item.count
      sheet.out.push({ do: 'resume', count: item.count })
      return
    case 'turn':
      sheet.out.push({ do: 'turn' })
      return
    case 'yarn':
    case 'joinRound':
  }
}

/**
 * Lays a row out into single stitches over `loops` loops, edge stitches included, at most `most` of them.
 */
export function layOut(row: Row, pattern: Pattern, loops: number, most: number): Laid[] {
  const { first, last, swapped } = edgesOf(row, pattern)
  const edgeTakes = takesAndMakes([...first, ...last])?.takes ?? 0
  const sheet: Sheet = {
    out: [],
    left: loops - edgeTakes,
    repeat: null,
    repeatsSoFar: 0,
    position: 0,
    part: swapped ? 'after' : 'before',
    most,
  }
  const inside = sheet.left
  for (const item of first) putItem(sheet, item)
  sheet.part = 'row'
  sheet.left = inside
  for (const item of row.items) putItem(sheet, item)
  if (row.items.some((item) => item.kind === 'turn')) return sheet.out
  sheet.part = swapped ? 'before' : 'after'
  for (const item of last) putItem(sheet, item)
  return sheet.out
}
