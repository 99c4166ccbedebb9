import { limits } from '../base/index.ts'
import { type Draft, emptyDraft } from './draft.ts'
import { parseDraft } from './parse-draft.ts'

/** The first word of a link's payload. Another one was made by a version of the workbook that this one cannot read. */
export const linkVersion = '1'

/** Characters of a link's payload; longer ones are refused before anything is unpacked. */
export const longestLink = 60_000
/** Bytes that a payload may unpack to: a short one that swells is no draft. */
export const mostLinkBytes = limits.fileCharacters * 2

/** Squeezes and unsqueezes bytes; the browser's own streams do it there. Gives null where the bytes are more than `most`. */
export interface Packing {
  readonly pack: (bytes: Uint8Array) => Promise<Uint8Array>
  readonly unpack: (bytes: Uint8Array, most: number) => Promise<Uint8Array | null>
  readonly toBytes: (text: string) => Uint8Array
  readonly toText: (bytes: Uint8Array) => string
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** Bytes in the letters that an address may hold, after RFC 4648 section 5, without padding. */
export function toAddressText(bytes: Uint8Array): string {
  let out = ''
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b = 0, c = 0] = [bytes[i], bytes[i + 1], bytes[i + 2]]
    const all = (a << 16) | (b << 8) | c
    const wide = Math.min(4, Math.ceil(((bytes.length - i) * 8) / 6))
    for (let j = 0; j < wide; j++) out += letters[(all >> (18 - 6 * j)) & 63]
  }
  return out
}

/** The bytes of such a text; null where it holds anything else. */
export function fromAddressText(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null
  const bytes = new Uint8Array(Math.floor((text.length * 6) / 8))
  let [bits, held, at] = [0, 0, 0]
  for (const letter of text) {
    held = ((held << 6) | letters.indexOf(letter)) & 0xffff
    bits += 6
    if (bits < 8) continue
    bits -= 8
    bytes[at++] = (held >> bits) & 0xff
  }
  return bytes
}

/** Only what differs from an empty sheet travels. */
function briefly(draft: Draft): string {
  const usual = emptyDraft as unknown as Record<string, unknown>
  const differs = Object.entries(draft).filter(
    ([name, value]) => JSON.stringify(value) !== JSON.stringify(usual[name]),
  )
  return JSON.stringify(Object.fromEntries(differs))
}

/** A draft as the part of a link after its #, which browsers keep to themselves. */
export async function draftToLink(draft: Draft, packing: Packing): Promise<string> {
  const packed = await packing.pack(packing.toBytes(briefly(draft)))
  return `${linkVersion}.${toAddressText(packed)}`
}

export type LinkReading =
  | { readonly draft: Draft }
  | { readonly draft: null; readonly why: 'another version' | 'too long' | 'damaged' }

/** The draft in the part of a link after its #. */
export async function draftFromLink(payload: string, packing: Packing): Promise<LinkReading> {
  const no = (why: 'another version' | 'too long' | 'damaged'): LinkReading => ({ draft: null, why })
  if (payload.length > longestLink) return no('too long')
  const found = /^(\w{1,8})\.(.*)$/s.exec(payload)
  if (found && found[1] !== linkVersion) return no('another version')
  const bytes = fromAddressText(found?.[2] ?? '!')
  if (!bytes) return no('damaged')
  try {
    const unpacked = await packing.unpack(bytes, mostLinkBytes)
    if (!unpacked) return no('too long')
    const value: unknown = JSON.parse(packing.toText(unpacked))
    const isPart = typeof value === 'object' && value !== null && !Array.isArray(value)
    const draft = isPart ? parseDraft({ ...emptyDraft, ...value }) : null
    return draft ? { draft } : no('damaged')
  } catch {
    return no('damaged')
  }
}
