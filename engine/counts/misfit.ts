import { at, type Issue, type LinearCount, modulo } from '../base/index.ts'
import { type Pattern, type Row, takesAndMakes } from '../pattern/index.ts'
import { type Misfit, ownRepeat } from './fit.ts'

/** Repeats to speak of: two show best what is left over in each; one for a fixed number, or another where two come out. */
function spokenRepeats(available: LinearCount, misfit: Misfit): number {
  if (available.perRepeat === 0) return 1
  if (misfit.kind !== 'rest') return 2
  const { rest } = misfit
  return at(rest, 1) < 0 && at(rest, 2) >= 0 ? 1 : ([2, 1, 3].find((n) => at(rest, n) !== 0) ?? 2)
}

/** A misfit as a problem: the numbers for two pattern repeats, so that the sentence can say what is left over. */
export function misfitIssue(row: Row, misfit: Misfit, ahead: LinearCount, pattern: Pattern): Issue {
  const n = spokenRepeats(ahead, misfit)
  const available = at(ahead, n)
  const fixed = 'fixed' in pattern.castOn ? 1 : 0
  const base = { severity: 'error', row: row.number, span: row.span } as const
  if (misfit.kind === 'empty')
    return { ...base, code: 'repeat-takes-nothing', span: misfit.item.span, values: {} }
  if (misfit.kind === 'short') {
    const values = { available, keep: misfit.keep, here: at(misfit.available, 1), fixed, repeats: n }
    return { ...base, code: 'row-too-short', values }
  }
  if (misfit.kind === 'rest') {
    const rest = at(misfit.rest, n)
    const values = {
      available,
      used: available - rest,
      rest: Math.abs(rest),
      repeats: n,
      fixed,
      perRepeat: misfit.rest.perRepeat,
    }
    return { ...base, code: rest > 0 ? 'row-leaves-stitches' : 'row-needs-stitches', values }
  }
  return {
    ...base,
    code: 'repeat-does-not-fit',
    values: unevenValues(row, misfit, n, available, fixed, pattern),
  }
}

function unevenValues(
  row: Row,
  misfit: Misfit & { kind: 'uneven' },
  n: number,
  available: number,
  fixed: number,
  pattern: Pattern,
): Record<string, number> {
  const width = misfit.repeatTakes
  const ends = available - at(misfit.available, n) + misfit.keep
  const room = available - ends
  const wanted = 'multiple' in pattern.castOn ? pattern.castOn.multiple : 0
  // A repeat that is meant to be as wide as the pattern's shows how many of its stitches are missing.
  const meant = wanted > 0 && Math.abs(wanted - width) <= wanted / 2 ? wanted : 0
  const rounds = meant > 0 && room >= n * width ? n : Math.floor(room / width)
  const used = ends + rounds * width
  const inner = takesAndMakes(ownRepeat(row)?.items ?? [])
  return {
    available,
    used,
    rest: available - used,
    repeats: rounds,
    width,
    ends,
    meant,
    over: modulo(room, width),
    fixed,
    makes: inner?.makes ?? 0,
  }
}
