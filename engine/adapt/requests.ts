import { closestWord } from '../notation/index.ts'
import { catalogue, type StitchId, stitch } from '../stitches/index.ts'
import type { Lean } from './doubles.ts'
import { plainerIn } from './offers.ts'
import type { EdgeKind } from './sides.ts'

/** One adaptation asked for. Numbers left out are filled in by the adaptation. */
export type Request =
  | { readonly do: 'round' | 'mirror' }
  | { readonly do: 'flat'; readonly wrongSide: 'same look' | 'plainer' }
  | { readonly do: 'wider' | 'narrower'; readonly sizes: number }
  | { readonly do: 'plain stitch in' | 'plain stitch out' | 'half repeats'; readonly stitch: number | null }
  /** One awkward stitch, or null for all of them. */
  | { readonly do: 'plainer'; readonly stitch: StitchId | null }
  | { readonly do: 'doubles'; readonly lean: Lean }
  | { readonly do: 'edge'; readonly kind: EdgeKind; readonly stitches: number }
  | { readonly do: 'border'; readonly rows: number }

type Reading = (number: number | null) => Request

const place =
  (what: 'plain stitch in' | 'plain stitch out' | 'half repeats'): Reading =>
  (stitch) => ({ do: what, stitch })
const edge =
  (kind: EdgeKind, usual: number): Reading =>
  (stitches) => ({ do: 'edge', kind, stitches: stitches ?? usual })

/** The names that an adaptation is asked for by. A number may follow those that `takesNumber` lists. */
const names: Readonly<Record<string, Reading>> = {
  round: () => ({ do: 'round' }),
  flat: () => ({ do: 'flat', wrongSide: 'same look' }),
  'flat plainer': () => ({ do: 'flat', wrongSide: 'plainer' }),
  plainer: () => ({ do: 'plainer', stitch: null }),
  mirror: () => ({ do: 'mirror' }),
  wider: (sizes) => ({ do: 'wider', sizes: sizes ?? 1 }),
  narrower: (sizes) => ({ do: 'narrower', sizes: sizes ?? 1 }),
  'plain stitch in': place('plain stitch in'),
  'plain stitch out': place('plain stitch out'),
  'half repeats': place('half repeats'),
  'doubles left': () => ({ do: 'doubles', lean: 'left' }),
  'doubles upright': () => ({ do: 'doubles', lean: 'centre' }),
  'doubles right': () => ({ do: 'doubles', lean: 'right' }),
  'garter edge': edge('garter', 3),
  'stocking edge': edge('stocking', 2),
  'slipped edge': edge('slipped', 1),
  border: (rows) => ({ do: 'border', rows: rows ?? 4 }),
}

/** 'p2tog for ssp': one awkward stitch worked as its plainer one, by how both are written. */
export const swapName = (awkward: StitchId, plainer: StitchId): string =>
  `${stitch(plainer).us} for ${stitch(awkward).us}`.toLowerCase().replace(/[\s,-]+/g, ' ')

const swaps: ReadonlyMap<string, StitchId> = new Map(
  catalogue.flatMap(({ id }) => {
    const plain = plainerIn(id, 'WS')
    return plain === null ? [] : [[swapName(id, plain), id] as const]
  }),
)

const takesNumber = (name: string): boolean =>
  /^(wider|narrower|border|half repeats)$|^plain stitch|edge$/.test(name)

export const adaptationNames: readonly string[] = Object.keys(names)

export interface UnknownRequest {
  readonly unknown: string
  /** A name that it may have been meant for. */
  readonly suggestion: string | null
}

/**
 * Reads a list such as 'round, mirror, wider 2, p2tog for ssp'. A name that is not known comes back as such;
 * so does a number where the name takes none, or one beyond four figures.
 */
export function readRequests(list: string): readonly Request[] | UnknownRequest {
  const requests: Request[] = []
  for (const written of list.split(',').map((part) =>
    part
      .trim()
      .toLowerCase()
      .replace(/[\s-]+/g, ' '),
  )) {
    const request = readRequest(written)
    if (request === null)
      return { unknown: written.slice(0, 60), suggestion: closestWord(written, [...adaptationNames]) }
    requests.push(request)
  }
  return requests
}

function readRequest(written: string): Request | null {
  const awkward = swaps.get(written)
  if (awkward !== undefined) return { do: 'plainer', stitch: awkward }
  const found = /^([a-z ]+?)(?: (\d{1,4}))?$/.exec(written)
  const name = found?.[1] ?? ''
  const reading = Object.hasOwn(names, name) ? names[name] : undefined
  if (reading === undefined) return null
  if (found?.[2] === undefined) return reading(null)
  const number = Number(found[2])
  return takesNumber(name) && number > 0 ? reading(number) : null
}
