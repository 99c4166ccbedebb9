import { entries } from './catalogue.ts'
import { deriveAll, type Twins } from './derive.ts'
import { perform } from './perform.ts'
import type { Effect, Mount, Stitch, StitchId } from './stitch.ts'

const derived = deriveAll(entries)

// Maps, so that a stitch called 'constructor' is simply unknown.
const byId = new Map(
  derived.map(({ stitch, twins }) => [stitch.id, { stitch: frozen(stitch), twins: frozen(twins) }]),
)

/** Every stitch, in the catalogue's order. */
export const catalogue: readonly Stitch[] = Object.freeze([...byId.values()].map(({ stitch }) => stitch))

/** The stitch of that id; null where the catalogue has none. */
export const findStitch = (id: StitchId): Stitch | null => byId.get(id)?.stitch ?? null

/** The stitch of an id that is known to be in the catalogue. Throws otherwise: a programming error. */
export function stitch(id: StitchId): Stitch {
  return known(id).stitch
}

/**
 * The wrong-side and mirror twins with how like they are, for a page that must say so. Throws on an unknown
 * id.
 */
export function twinsOf(id: StitchId): Twins {
  return known(id).twins
}

function known(id: StitchId): { readonly stitch: Stitch; readonly twins: Twins } {
  const found = byId.get(id)
  if (found === undefined) throw new Error(`no stitch of the catalogue is called '${id}'`)
  return found
}

const effects = new Map<string, Effect>()

/**
 * What a stitch does to loops that sit so (`mounts[i]` for loop i + 1; as usual where silent). Remembered by
 * mounts.
 */
export function effectOf(id: StitchId, mounts: readonly Mount[] = []): Effect {
  const { effect, motions } = stitch(id)
  if (!mounts.includes('turned')) return effect
  const key = `${id}\n${mounts
    .slice(0, effect.takes)
    .map((mount) => (mount === 'usual' ? 'u' : 't'))
    .join('')}`
  const remembered = effects.get(key)
  if (remembered !== undefined) return remembered
  const found = frozen(perform(motions, mounts.slice(0, effect.takes)))
  effects.set(key, found)
  return found
}

/**
 * The stitch whose right-side look a stitch has when worked on that side: a wrong-side purl looks like a
 * knit.
 */
export function rightSideLook(id: StitchId, side: 'RS' | 'WS'): StitchId {
  if (side === 'RS') return id
  // Seeing a stitch from behind twice is seeing it from in front, so the twin serves in both directions.
  return stitch(id).wrongSideTwin ?? id
}

function frozen<T extends object>(value: T): T {
  for (const inner of Object.values(value)) if (typeof inner === 'object' && inner !== null) frozen(inner)
  return Object.freeze(value)
}
