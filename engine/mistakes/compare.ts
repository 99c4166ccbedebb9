import type { Look } from './look.ts'
import { sameToken, type Token } from './tokens.ts'

/** Runs of holes side by side, by their length: a double yarn over is one large hole. */
function holeRuns(tokens: readonly Token[]): number[] {
  const runs: number[] = []
  for (const [i, token] of tokens.entries()) {
    if (token.what !== 'hole') continue
    if (tokens[i - 1]?.what === 'hole') runs[runs.length - 1] = (runs.at(-1) ?? 0) + 1
    else runs.push(1)
  }
  return runs
}

const total = (of: readonly number[]): number => of.reduce((sum, n) => sum + n, 0)

function holeLooks(right: readonly Token[], wrong: readonly Token[]): Look[] {
  const [meant, found] = [holeRuns(right), holeRuns(wrong)]
  const more = total(found) - total(meant)
  if (more < 0) return [found.length === meant.length ? 'hole too small' : 'no hole']
  if (more > 0) return [found.length === meant.length ? 'hole too large' : 'stray hole']
  return []
}

const widths = (tokens: readonly Token[]): number[] =>
  tokens.filter((token) => token.what === 'decrease').map((token) => token.wide)

function decreaseLooks(right: readonly Token[], wrong: readonly Token[]): Look[] {
  const [meant, found] = [widths(right), widths(wrong)]
  if (found.length < meant.length) return ['no decrease']
  if (found.length > meant.length) return ['decrease too many']
  const more = total(found) - total(meant)
  return more < 0 ? ['decrease too narrow'] : more > 0 ? ['decrease too wide'] : []
}

const places = (tokens: readonly Token[], what: Token['what']): string =>
  tokens.flatMap((token, i) => (token.what === what ? [i] : [])).join()

const order = (tokens: readonly Token[]): string =>
  tokens.flatMap(({ what }) => (what === 'hole' || what === 'decrease' ? [what] : [])).join()

/** As many holes and decreases as there should be, and not where they should be. */
function placeLooks(right: readonly Token[], wrong: readonly Token[]): Look[] {
  if (order(right) !== order(wrong)) return ['hole and decrease changed sides']
  const holes = places(right, 'hole') !== places(wrong, 'hole')
  const decreases = places(right, 'decrease') !== places(wrong, 'decrease')
  if (holes && !decreases) return ['hole beside its place']
  return decreases ? ['decrease beside its place'] : []
}

/** Stitch by stitch, where both have the same places. */
function stitchLooks(right: readonly Token[], wrong: readonly Token[]): Look[] {
  const found = new Set<Look>()
  let faces = 0
  for (const [i, a] of right.entries()) {
    const b = wrong[i]
    if (!b || sameToken(a, b)) continue
    if (a.what === 'decrease' && b.what === 'decrease') {
      if (b.twisted && !a.twisted && !b.shuts) found.add('crossed decrease')
      if (a.front !== b.front)
        found.add(
          a.front === 'middle' || b.front === 'middle' ? 'middle not in front' : 'leans the other way',
        )
    }
    if (b.shuts && !a.shuts) found.add('hole shut')
    if (b.what === 'hole' && b.turned !== a.turned) found.add('leg behind')
    if (b.what === 'made' && a.what !== 'made') found.add('made stitch')
    if (a.face !== b.face && a.what !== 'hole' && b.what !== 'hole') faces++
  }
  if (faces > 0) found.add(faces > 2 && faces >= right.length / 2 ? 'ridge' : 'other face')
  return [...found]
}

/** What the eye sees of a difference between the stitches of one section as they should be and as they are. */
export function compare(right: readonly Token[], wrong: readonly Token[]): Look[] {
  const found: Look[] = []
  if (wrong.some((token) => token.what === 'slipped') && !right.some((token) => token.what === 'slipped'))
    found.push('tall loop')
  if (wrong.filter((one) => one.what === 'made').length > right.filter((one) => one.what === 'made').length)
    found.push('made stitch')
  const amounts = [...holeLooks(right, wrong), ...decreaseLooks(right, wrong)]
  found.push(...amounts)
  if (amounts.length === 0 && right.length === wrong.length) found.push(...placeLooks(right, wrong))
  if (found.length === 0 && right.length === wrong.length) found.push(...stitchLooks(right, wrong))
  return [...new Set(found)]
}
