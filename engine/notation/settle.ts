import type { Item, StitchItem } from '../pattern/index.ts'
import { takesAndMakes } from '../pattern/index.ts'
import { stitch } from '../stitches/index.ts'
import { type Raw, type RawSlip, type Reader, report } from './reader.ts'

export interface SettleOptions {
  readonly doubleYarnOver: 'two' | 'one'
  readonly bindOffLeaves: 'extra' | 'first'
}

/**
 * Decides what only the neighbours tell: a slip and its pass over become one stitch, a yarn-forward word becomes a yarn
 * over or a yarn carried, an open repeat goes as far as the stitches after it leave.
 */
export function settle(raw: readonly Raw[], r: Reader, options: SettleOptions): Item[] {
  const items = settleList(raw, r, options, false)
  items.forEach((item, i) => {
    if (item.kind === 'turn' && i < items.length - 1) report(r, 'turn-not-last', item.span)
  })
  return options.bindOffLeaves === 'extra' ? leaveOneAfterBindOffs(items) : items
}

function settleList(raw: readonly Raw[], r: Reader, options: SettleOptions, repeated: boolean): Item[] {
  const joined = joinPasses(raw, r)
  const withYarn = settleYarn(joined, r, repeated)
  const items: Item[] = []
  for (const one of withYarn) items.push(...settleOne(one, r, options))
  return items.map((item, i) => closeOpenRepeat(item, items.slice(i + 1)))
}

function settleOne(raw: Raw, r: Reader, options: SettleOptions): Item[] {
  switch (raw.kind) {
    case 'slip':
      return [slipItem(raw)]
    case 'pass':
      report(r, 'pass-over-nothing', raw.span)
      return []
    case 'yarnForward':
      return [{ kind: 'yarn', to: 'front', span: raw.span }]
    case 'stitch':
      return [raw.stitch === 'yo2' && options.doubleYarnOver === 'one' ? { ...raw, stitch: 'yo2 long' } : raw]
    case 'group': {
      const items = settleList(raw.items, r, options, raw.times > 1)
      return simplified({ ...raw, items })
    }
    case 'repeat': {
      const items = settleList(raw.items, r, options, true)
      // An open repeat keeps its mark until its neighbours are settled too.
      return [{ ...raw, items } as Item]
    }
    default:
      return [raw]
  }
}

const slipItem = (slip: RawSlip): StitchItem => ({
  kind: 'stitch',
  stitch:
    slip.as === 'knitwise'
      ? 'sl kwise'
      : slip.yarn === 'front'
        ? 'sl wyif'
        : slip.yarn === 'back'
          ? 'sl wyib'
          : 'sl',
  times: slip.count,
  span: slip.span,
})

/** [k2tog] 3 times is k2tog 3 times; a group worked once is its stitches. */
function simplified(group: Item & { kind: 'group' }): Item[] {
  if (group.times === 1) return [...group.items]
  const only = group.items[0]
  const merges =
    group.items.length === 1 && only?.kind === 'stitch' && stitch(only.stitch).family !== 'yarn over'
  return merges ? [{ ...only, times: only.times * group.times, span: group.span }] : [group]
}

/** A repeat that does not say how far it goes leaves what the stitches after it take. */
function closeOpenRepeat(item: Item, after: readonly Item[]): Item {
  if (item.kind !== 'repeat' || (item.until as { kind: string }).kind !== 'open') return item
  const rest = takesAndMakes(after)
  const until =
    rest && rest.takes > 0 ? { kind: 'last' as const, stitches: rest.takes } : { kind: 'end' as const }
  return { ...item, until }
}

/** What a slip, the stitch after it and the pass over make together. */
const passes: Readonly<Record<string, string>> = {
  '1 k1': 'skp',
  '1 k2tog1': 'sk2p',
  '1 k3tog1': 'sk3p',
  '1 k2': 'sl1 k2 psso',
  '1 k3': 'sl1 k3 psso',
  '1 p1': 'spp',
  '1 p2tog1': 'sp2p',
  '1 ssp1': 'sl1 ssp psso',
  '2 k1': 's2kp',
  '2 k3tog1': 's2k3p',
}

function joinPasses(raw: readonly Raw[], r: Reader): Raw[] {
  const out: Raw[] = []
  for (const one of raw) {
    const joined = one.kind === 'pass' ? joinPass(out.at(-2), out.at(-1), one, r) : null
    if (!joined) {
      out.push(one)
      continue
    }
    out.splice(-2)
    out.push(joined)
  }
  return out
}

function joinPass(
  before: Raw | undefined,
  worked: Raw | undefined,
  pass: Raw & { kind: 'pass' },
  r: Reader,
): Raw | null {
  if (worked?.kind !== 'stitch' || !before) return null
  const span = { start: before.span.start, end: pass.span.end }
  if (pass.what === 'yarn over') {
    const fits =
      before.kind === 'stitch' &&
      before.stitch === 'yo' &&
      before.times === 1 &&
      worked.stitch === 'k' &&
      worked.times === 2
    return fits ? { kind: 'stitch', stitch: 'yo k2 pyo', times: 1, span } : null
  }
  if (before.kind !== 'slip') return null
  const id = passes[`${before.count} ${worked.stitch}${worked.times}`]
  if (id === undefined) return null
  if (before.as === 'purlwise' && worked.stitch.startsWith('k')) {
    report(r, 'slip-purlwise-twists', before.span, { stitch: id }, 'warning')
  }
  return { kind: 'stitch', stitch: id, times: 1, span }
}

/** 'knit' or 'purl' by the loop that the hands make first; null where they make none. */
function faceOf(raw: Raw | undefined): 'knit' | 'purl' | 'slip' | null {
  if (!raw) return null
  if (raw.kind === 'slip') return 'slip'
  if (raw.kind === 'group' || raw.kind === 'repeat') return faceOf(raw.items[0])
  if (raw.kind !== 'stitch' && raw.kind !== 'across') return null
  return stitch(raw.stitch).effect.made[0]?.face ?? null
}

function settleYarn(raw: readonly Raw[], r: Reader, repeated: boolean): Raw[] {
  const out: Raw[] = []
  for (const [i, one] of raw.entries()) {
    const next = raw[i + 1] ?? (repeated ? raw[0] : undefined)
    const last = out.at(-1)
    if (one.kind === 'yarnForward') out.push(readAsYarn(one, last, next, r))
    else if (one.kind === 'slip' && last?.kind === 'yarn' && one.yarn === null)
      out.splice(-1, 1, { ...one, yarn: last.to })
    else out.push(one)
  }
  return out
}

/** British yarn forward: before a slip, or after one worked with the yarn behind, it only carries the yarn. */
function readAsYarn(
  one: Raw & { kind: 'yarnForward' },
  last: Raw | undefined,
  next: Raw | undefined,
  r: Reader,
): Raw {
  const carried: Raw = { kind: 'yarn', to: 'front', span: one.span }
  const over: Raw = { kind: 'stitch', stitch: 'yo', times: 1, span: one.span }
  const after = faceOf(next)
  if (after === 'slip') return carried
  const bySlip =
    next?.kind === 'stitch' && next.stitch.startsWith('s') && stitch(next.stitch).motions[0]?.do === 'slip'
  if (after === 'knit' && !bySlip) return over
  if (after === 'purl' && last?.kind === 'slip') return carried
  const asOver = bySlip || one.word !== 'yf'
  report(
    r,
    'yarn-forward-ambiguous',
    one.span,
    { word: one.word, read: asOver ? 'a yarn over' : 'the yarn carried forward, no loop' },
    'warning',
  )
  return asOver ? over : carried
}

/** Where stitches follow a bind-off, the loop left on the right needle comes on top of them. */
function leaveOneAfterBindOffs(items: readonly Item[], followed = false): Item[] {
  return items.map((item, i) => {
    const more = followed || i < items.length - 1
    if (item.kind === 'bindOff') return { ...item, leavesOne: more && item.count !== 'all' }
    if (item.kind === 'group' || item.kind === 'repeat')
      return { ...item, items: leaveOneAfterBindOffs(item.items, more) }
    return item
  })
}
