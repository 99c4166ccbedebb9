import type { Item, Until } from '../pattern/index.ts'
import { type StitchId, stitch } from '../stitches/index.ts'
import { type ShownRow, takesOf, type Word } from './shown.ts'

const span = { start: 0, end: 0 }

/** A row as a knitter would write it, in working order. */
export function itemsOf(row: ShownRow): Item[] {
  const { side, right, repeat, left } = row
  if (side === 'RS') return folded(right, repeat, left)
  return folded(left.toReversed(), repeat.toReversed(), right.toReversed())
}

function folded(before: Word, repeat: Word, after: Word): Item[] {
  if (repeat.length === 0) return runsOf([...before, ...after])
  const root = rootOf(repeat)
  const [only] = root
  const plain = root.length === 1 && only !== undefined && stitch(only).family === 'plain' ? only : null
  if (plain !== null) return acrossOf(before, plain, after)
  return [
    ...runsOf(before),
    { kind: 'repeat', items: runsOf(root), until: reach(after), span },
    ...runsOf(after),
  ]
}

/** Plain all the way between two ends; what is alike beside it is taken in. */
function acrossOf(before: Word, plain: StitchId, after: Word): Item[] {
  const unlike = (word: Word): number => word.findLastIndex((id) => id !== plain) + 1
  const first = before.slice(0, unlike(before))
  const last = after.slice(after.length - unlike(after.toReversed()))
  return [...runsOf(first), { kind: 'across', stitch: plain, until: reach(last), span }, ...runsOf(last)]
}

function reach(after: Word): Exclude<Until, { kind: 'times' }> {
  const stitches = takesOf(after)
  return stitches === 0 ? { kind: 'end' } : { kind: 'last', stitches }
}

/** The shortest word that the word is made of. */
function rootOf(word: Word): Word {
  const period = word.findIndex(
    (_, i) => i > 0 && word.length % i === 0 && word.every((id, at) => id === word[at % i]),
  )
  return period < 0 ? word : word.slice(0, period)
}

/** k, k, k as k3; yo, ssk, yo, ssk as [yo, ssk] twice. */
export function runsOf(word: Word): Item[] {
  const runs: (Item & { kind: 'stitch' })[] = []
  for (const id of word) {
    const last = runs.at(-1)
    // A yarn over worked twice on end is another stitch, the double yarn over.
    if (last?.stitch === id && stitch(id).family !== 'yarn over')
      runs.splice(-1, 1, { ...last, times: last.times + 1 })
    else runs.push({ kind: 'stitch', stitch: id, times: 1, span })
  }
  return grouped(runs)
}

type Run = Item & { kind: 'stitch' }

const alike = (a: Run | undefined, b: Run | undefined): boolean =>
  a?.stitch === b?.stitch && a?.times === b?.times

/** How often the `length` runs from `at` on come one after another. */
function timesAt(runs: readonly Run[], at: number, length: number): number {
  let end = at + length
  while (end < runs.length && alike(runs[end], runs[end - length])) end++
  return Math.floor((end - at) / length)
}

function grouped(runs: readonly Run[]): Item[] {
  const out: Item[] = []
  for (let at = 0; at < runs.length; ) {
    const length = [2, 3].find((size) => timesAt(runs, at, size) > 1)
    if (length === undefined) {
      out.push(runs[at++] as Run)
      continue
    }
    const times = timesAt(runs, at, length)
    out.push({ kind: 'group', items: runs.slice(at, at + length), times, span })
    at += length * times
  }
  return out
}
