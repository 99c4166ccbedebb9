import type { Item } from '../../engine/pattern/index.ts'
import { stitch } from '../../engine/stitches/index.ts'

interface Sum {
  readonly adds: Map<string, number>
  readonly takes: Map<string, number>
  change: number
}

function addUp(items: readonly Item[], times: number, sum: Sum): void {
  for (const item of items) {
    if (item.kind === 'group') addUp(item.items, times * item.times, sum)
    if (item.kind === 'bindOff' && item.count !== 'all') note(sum, 'bind off', -item.count * times)
    if (item.kind !== 'stitch') continue
    const { us, takes, makes } = stitch(item.stitch)
    for (let i = 0; i < item.times * times && i < 2000; i++) note(sum, us, makes - takes)
  }
}

function note(sum: Sum, words: string, change: number): void {
  if (change === 0) return
  sum.change += change
  const list = change > 0 ? sum.adds : sum.takes
  list.set(words, (list.get(words) ?? 0) + Math.abs(change))
}

const total = (list: ReadonlyMap<string, number>): number => [...list.values()].reduce((a, b) => a + b, 0)
const listed = (list: ReadonlyMap<string, number>): string => [...list.keys()].join(', ')
const signed = (n: number): string => (n > 0 ? `+${n}` : `−${-n}`)

function sentence({ adds, takes, change }: Sum, where: string): string | null {
  const parts = [
    ...(adds.size > 0 ? [`adds ${total(adds)} (${listed(adds)})`] : []),
    ...(takes.size > 0 ? [`takes away ${total(takes)} (${listed(takes)})`] : []),
  ]
  if (parts.length === 0) return null
  return `${where} ${parts.join(', ')}: ${change === 0 ? 'even' : signed(change)}.`
}

const summed = (items: readonly Item[]): Sum => {
  const sum: Sum = { adds: new Map(), takes: new Map(), change: 0 }
  addUp(items, 1, sum)
  return sum
}

/** What a row adds and takes away, in its repeat and beside it: 'Each repeat adds 2 (yo), takes away 2 (ssk, k2tog): even.' */
export function tallyWords(items: readonly Item[]): string {
  const repeat = items.find((item) => item.kind === 'repeat')
  if (repeat?.kind !== 'repeat') return sentence(summed(items), 'It') ?? 'Adds nothing, takes nothing away.'
  const inside = sentence(summed(repeat.items), 'Each repeat')
  const beside = sentence(summed(items.filter((item) => item !== repeat)), 'Beside it the row')
  return [inside, beside].filter((one) => one !== null).join(' ') || 'Adds nothing, takes nothing away.'
}
