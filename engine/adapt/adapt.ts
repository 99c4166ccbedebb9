import type { Item, Pattern } from '../pattern/index.ts'
import { type Adaptation, type Adapted, hard, type Kept } from './adaptation.ts'
import { borders, closingRows } from './borders.ts'
import { plainStitchIn, plainStitchOut } from './columns.ts'
import { leanDoubles } from './doubles.ts'
import { narrower, wider } from './family.ts'
import { flat } from './flat.ts'
import { halfRepeats } from './half-repeats.ts'
import { swatchCounts } from './make.ts'
import { mirror } from './mirror.ts'
import { plainer } from './plainer.ts'
import type { Request } from './requests.ts'
import { round } from './round.ts'
import { edge } from './sides.ts'

/** One adaptation. `kept`: what an earlier `round` kept of the sides. */
export function adaptOnce(pattern: Pattern, request: Request, kept: Kept | null = null): Adaptation {
  const done = oneOf(pattern, request, kept)
  if (!done.ok || marksIn(done.pattern) >= marksIn(pattern)) return done
  const sentence =
    'Markers, and yarn carried between two stitches, that the rows named are left out: put them where they now belong.'
  return { ...done, changes: [...done.changes, hard(sentence)] }
}

const isMark = ({ kind }: Item): boolean => kind === 'marker' || kind === 'yarn'

const marksAmong = (items: readonly Item[]): number =>
  items.reduce(
    (sum, item) => sum + (isMark(item) ? 1 : 0) + ('items' in item ? marksAmong(item.items) : 0),
    0,
  )

const marksIn = ({ setUp, rows }: Pattern): number =>
  [...setUp, ...rows].reduce((sum, { items }) => sum + marksAmong(items), 0)

function oneOf(pattern: Pattern, request: Request, kept: Kept | null): Adaptation {
  switch (request.do) {
    case 'round':
      return round(pattern)
    case 'flat':
      return flat(pattern, { wrongSide: request.wrongSide, kept })
    case 'mirror':
      return mirror(pattern)
    case 'wider':
      return wider(pattern, request.sizes)
    case 'narrower':
      return narrower(pattern, request.sizes)
    case 'plain stitch in':
      return plainStitchIn(pattern, request.stitch ?? undefined)
    case 'plain stitch out':
      return plainStitchOut(pattern, request.stitch ?? undefined)
    case 'half repeats':
      return halfRepeats(pattern, request.stitch ?? undefined)
    case 'plainer':
      return plainer(pattern, request.stitch)
    case 'doubles':
      return leanDoubles(pattern, request.lean)
    case 'edge':
      return edge(pattern, request.kind, request.stitches)
    case 'border':
      return borders(pattern, request.rows)
  }
}

/** A pattern before anything was done to it. */
export const begun = (pattern: Pattern): Adapted => ({
  ok: true,
  pattern,
  changes: [],
  offers: [],
  counts: swatchCounts(pattern),
  closing: [],
  kept: null,
})

/** What was done so far and one thing more, which is given the pattern and what an earlier `round` kept of its sides. */
export function further(
  done: Adapted,
  more: (pattern: Pattern, kept: Kept | null) => Adaptation,
): Adaptation {
  const next = more(done.pattern, done.kept)
  if (!next.ok) return next
  const closing = closingRows(next.pattern, done.closing.length + next.closing.length)
  return { ...next, changes: [...done.changes, ...next.changes], closing }
}

/**
 * Adaptations one after the other: the last pattern, what all of them changed, and what the last of them offers.
 * Row numbers in the report are those of the pattern at that point. The first that cannot be done ends the list, and
 * its refusal is the answer.
 */
export function adapt(pattern: Pattern, requests: readonly Request[]): Adaptation {
  let done = begun(pattern)
  for (const request of requests) {
    const next = further(done, (now, kept) => adaptOnce(now, request, kept))
    if (!next.ok) return next
    done = next
  }
  return done
}
