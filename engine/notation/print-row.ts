import type { Item, Until } from '../pattern/index.ts'
import { neighbourYarnOver, type Stitch, stitch } from '../stitches/index.ts'

/** Whose words: the US or the UK trade's. */
export type Terms = 'us' | 'uk'

export interface PrintOptions {
  readonly terms?: Terms
  /** 'full' spells every stitch out, for reading aloud. Default 'short'. */
  readonly words?: 'short' | 'full'
}

interface Printing {
  readonly terms: Terms
  readonly full: boolean
}

type Face = 'knit' | 'purl' | null

const timesWords = (n: number): string => (n === 1 ? '' : n === 2 ? ' twice' : ` ${n} times`)

/** How a stitch of the plain family is written with its number: k3, p1, k2 tbl. */
const counted = /^(k|p)( tbl)?$/

function slipWords(s: Stitch, times: number, full: boolean): string | null {
  const kinds: Record<string, [string, string]> = {
    sl: ['', ''],
    'sl wyif': [' wyif', ' with yarn in front'],
    'sl wyib': [' wyib', ' with yarn in back'],
    'sl kwise': [' kwise', ' knitwise'],
  }
  const kind = kinds[s.id]
  return kind ? (full ? `slip ${times}${kind[1]}` : `sl${times}${kind[0]}`) : null
}

function yarnOverWords(s: Stitch, times: number, before: Face, after: Face, p: Printing): string | null {
  const double = s.id === 'yo2' || s.id === 'yo2 long'
  if (s.id !== 'yo' && !double) return null
  const one = p.full
    ? 'yarn over'
    : p.terms === 'uk'
      ? neighbourYarnOver(before ?? 'knit', after ?? 'knit')
      : 'yo'
  return `${one}${double ? ' twice' : ''}${timesWords(times)}`
}

function stitchWords(id: string, times: number, before: Face, after: Face, p: Printing): string {
  const s = stitch(id)
  const short = p.terms === 'uk' ? s.uk : s.us
  const special = slipWords(s, times, p.full) ?? yarnOverWords(s, times, before, after, p)
  if (special !== null) return special
  const plain = counted.exec(id)
  if (plain && p.full)
    return `${plain[1] === 'k' ? 'knit' : 'purl'} ${times}${plain[2] ? ' through the back loop' : ''}`
  if (plain) return `${plain[1]}${times}${plain[2] ?? ''}`
  if (id === 'co') return `cast on ${times} ${times === 1 ? 'st' : 'sts'}`
  if (id === 'hold') return `place ${times} ${times === 1 ? 'st' : 'sts'} on holder`
  const written = p.full ? s.name : ownWords(s, short)
  if (/^\(.*\) in 1$/.test(id)) {
    const group = p.full ? s.name : `${short.replace(/ in 1.*$/, '')} in next st`
    return times === 1 ? group : p.full ? `${group}${timesWords(times)}` : `[${group}]${timesWords(times)}`
  }
  const several = written.includes(',')
  return times === 1 ? written : `${several ? `[${written}]` : written}${timesWords(times)}`
}

/** Joined stitches are written with what they are joined to, not with their catalogue name. */
const ownWords = (s: Stitch, short: string): string =>
  s.id.endsWith(' join') ? `${s.id.replace(/ join$/, '')} with 1 held st` : (passWords[s.id] ?? short)

/** Stitches that have no word of their own but their hands' moves. */
const passWords: Readonly<Record<string, string>> = {
  'sl1 k2 psso': 'sl1, k2, psso',
  'sl1 k3 psso': 'sl1, k3, psso',
  'yo k2 pyo': 'yo, k2, pyo',
  'sl1 ssp psso': 'sl1, ssp, psso',
}

function reach(until: Until, full: boolean): string {
  if (until.kind === 'end') return 'to end'
  if (until.kind === 'times') return `${until.times} times in all`
  return `to last ${until.stitches === 1 ? '' : `${until.stitches} `}${until.stitches === 1 ? (full ? 'stitch' : 'st') : full ? 'stitches' : 'sts'}`
}

function faceOf(item: Item | undefined): Face {
  if (!item) return null
  if (item.kind === 'group' || item.kind === 'repeat') return faceOf(item.items[0])
  return item.kind === 'stitch' || item.kind === 'across'
    ? (stitch(item.stitch).effect.made[0]?.face ?? null)
    : null
}

function itemWords(
  items: readonly Item[],
  i: number,
  around: Item | undefined,
  depth: number,
  p: Printing,
): string {
  const item = items[i] as Item
  switch (item.kind) {
    case 'stitch':
      return stitchWords(
        item.stitch,
        item.times,
        faceOf(items[i - 1] ?? around),
        faceOf(items[i + 1] ?? items[0]),
        p,
      )
    case 'group': {
      const [open, close] = depth % 2 === 0 ? ['[', ']'] : ['(', ')']
      const times = p.full && item.times > 2 ? ` ${item.times} times` : timesWords(item.times)
      return `${open}${listWords(item.items, items[i - 1], depth + 1, p)}${close}${times}`
    }
    case 'repeat': {
      const inner = listWords(item.items, items[i - 1], depth, p)
      return `*${inner}; ${p.full ? 'repeat' : 'rep'} from * ${reach(item.until, p.full)}`
    }
    case 'across': {
      const [verb, tbl] = [item.stitch.startsWith('k') ? 'knit' : 'purl', item.stitch.endsWith('tbl')]
      if (items.length === 1 && item.until.kind === 'end' && depth === 0 && !tbl) return verb
      return `${p.full ? verb : verb[0]}${tbl ? (p.full ? ' through the back loop' : ' tbl') : ''} ${reach(item.until, p.full)}`
    }
    case 'bindOff': {
      const verb = p.terms === 'uk' ? 'cast off' : 'bind off'
      const many = item.count === 'all' ? 'all sts' : `${item.count} ${item.count === 1 ? 'st' : 'sts'}`
      return `${verb} ${many}${item.stitch === 'bo p' ? ' purlwise' : ''}`
    }
    case 'marker':
      return p.full ? `${item.action} marker` : { place: 'pm', slip: 'sm', remove: 'rm' }[item.action]
    case 'yarn':
      return p.full || item.to === 'front' ? `yarn to ${item.to}` : 'yb'
    case 'turn':
      return item.wrap ? 'wrap and turn' : 'turn'
    case 'joinRound':
      return 'join in the round'
    case 'resume':
      return `return ${item.count} held ${item.count === 1 ? 'st' : 'sts'} to needle`
  }
}

const listWords = (items: readonly Item[], around: Item | undefined, depth: number, p: Printing): string =>
  items.map((_, i) => itemWords(items, i, around, depth, p)).join(', ')

/**
 * A row's items as trade writing. US short words read back to the same items; UK words choose the yarn over by its
 * neighbours; full words are for reading aloud.
 */
export function printRow(items: readonly Item[], options: PrintOptions = {}): string {
  return listWords(items, undefined, 0, { terms: options.terms ?? 'us', full: options.words === 'full' })
}
