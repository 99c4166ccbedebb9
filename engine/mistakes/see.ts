import { stitch } from '../stitches/index.ts'
import { compare } from './compare.ts'
import type { Edit } from './edits.ts'
import { type Look, looks, type Sight } from './look.ts'
import type { Mistake } from './mistake.ts'
import type { Plan, RowPlan } from './plan.ts'
import { sameToken, type Token, tokensOf } from './tokens.ts'
import { type WrongPiece, type WrongRow, workWrong } from './work-wrong.ts'

const remembered = new WeakMap<RowPlan, Token[][]>()

/** The right row's stitches as the eye takes them in, found once. */
function rightTokens(plan: Plan, row: RowPlan): Token[][] {
  const known = remembered.get(row)
  if (known) return known
  const found = tokensOf(plan.worked, row.index, row.makes, row.leftward)
  remembered.set(row, found)
  return found
}

const sameStretch = (a: readonly Token[], b: readonly Token[]): boolean =>
  a.length === b.length && a.every((token, i) => sameToken(token, b[i] as Token))

/** What mistakes of a whole row look like, told from what they change. */
function wholeRow(edits: readonly Edit[]): Look | null {
  if (edits.some((edit) => edit.do === 'skip')) return 'squat'
  if (edits.some((edit) => edit.do === 'flip')) return 'wrong face out'
  return edits.some((edit) => edit.do === 'castOn') ? 'motif cut off' : null
}

/** Loops that fell, and strands that lie round others. */
function looseLooks(piece: WrongPiece, row: WrongRow): Look[] {
  const found: Look[] = row.belts.length > 0 ? ['belt'] : []
  for (const id of row.fallen) {
    const loop = piece.worked.loops[id]
    const over = loop !== undefined && stitch(loop.stitch).family === 'yarn over'
    const twin =
      over && piece.worked.loops.some((one) => one !== loop && one.row === loop.row && one.step === loop.step)
    found.push(twin ? 'long loop' : over ? 'loose bar' : 'free loop')
  }
  return found
}

const at = (look: Look, later: number, section: number | null): Sight => ({ look, later, section })

/** Markers aside, the same stitches: only where the lines are differs. */
const onlyMarkers = (right: readonly Token[][], wrong: readonly Token[][]): boolean =>
  sameStretch(right.flat(), wrong.flat())

const counted = (tokens: readonly Token[], what: Token['what']): number =>
  tokens.filter((one) => one.what === what).length

/** Many sections differ: the same things slid to the side, or other things. */
function manyLook(right: readonly Token[][], wrong: readonly Token[][]): Look {
  const [a, b] = [right.flat(), wrong.flat()]
  const near = (what: Token['what']) => Math.abs(counted(a, what) - counted(b, what)) <= 1
  const faces = a.length === b.length && a.every((token, i) => token.what === b[i]?.what)
  if (faces) return 'ridge'
  return near('hole') && near('decrease') ? 'slid sideways' : 'another row'
}

function rowSights(
  plan: Plan,
  piece: WrongPiece,
  row: WrongRow,
  later: number,
  mistake: Mistake,
  cause: Cause,
): Sight[] {
  const meant = plan.rows[row.row]
  if (!meant) return []
  const right = rightTokens(plan, meant)
  const wrong = tokensOf(piece.worked, row.index, row.counts, meant.leftward)
  const differ = right.flatMap((tokens, section) =>
    sameStretch(tokens, wrong[section] ?? []) ? [] : [section],
  )
  const loose = looseLooks(piece, row).map((look) => at(look, later, cause.section))
  if (differ.length === 0) return loose
  if (loose.length === 0 && onlyMarkers(right, wrong))
    return differ.map((section) => at('marker beside its place', later, section))
  const few = mistake.everywhere || differ.length <= 2
  if (cause.otherRow) return [...loose, at(faceOnly(right, wrong) ? 'ridge' : 'another row', later, null)]
  if (!few || cause.blind) return [...loose, at(manyLook(right, wrong), later, null)]
  return [
    ...loose,
    ...differ.flatMap((section) =>
      compare(right[section] ?? [], wrong[section] ?? []).map((look) => at(look, later, section)),
    ),
  ]
}

const faceOnly = (right: readonly Token[][], wrong: readonly Token[][]): boolean =>
  manyLook(right, wrong) === 'ridge'

interface Cause {
  readonly section: number | null
  readonly otherRow: boolean
  readonly blind: boolean
}

function causeOf(plan: Plan, mistake: Mistake, edits: readonly Edit[]): Cause {
  const step = mistake.step === null ? undefined : plan.rows[mistake.row]?.acts[mistake.step]
  const acts = edits.find((edit) => edit.do === 'acts')
  return {
    section: step?.section ?? null,
    otherRow: acts?.do === 'acts' && !acts.blind,
    blind: acts?.do === 'acts' && acts.blind,
  }
}

/** Whether the rows so far tell enough: later ones stand on what went wrong and would tell it again. */
const told = (found: readonly Sight[]): boolean => found.some(({ look }) => look !== 'leg behind')

/**
 * What there is to see of a mistake, found by laying the loops of the wrong rows beside those of the right ones: in the
 * mistake's own row and in the one after it, where that has anything to add. The most striking first.
 */
export function sightsOf(plan: Plan, mistake: Mistake, edits: readonly Edit[]): Sight[] {
  const whole = wholeRow(edits)
  if (whole) return [at(whole, 0, null)]
  const cause = causeOf(plan, mistake, edits)
  const touches = (row: number) => edits.some((edit) => 'row' in edit && edit.row === row)
  const both = touches(mistake.row + 1)
  let piece = workWrong(plan, edits, both ? 2 : 1)
  const found = sightsIn(plan, piece, 0, mistake, cause)
  if (both || !told(found)) {
    if (!both) piece = workWrong(plan, edits, 2)
    found.push(...sightsIn(plan, piece, 1, mistake, cause))
  }
  return unique(found).sort((a, b) => looks.indexOf(a.look) - looks.indexOf(b.look))
}

function sightsIn(plan: Plan, piece: WrongPiece, later: number, mistake: Mistake, cause: Cause): Sight[] {
  const row = piece.rows[later]
  // Rows of the next turn of the pattern stand on other rows than those of the first turn do.
  if (!row || (later > 0 && row.row <= (piece.rows[later - 1]?.row ?? -1))) return []
  return rowSights(plan, piece, row, later, mistake, cause)
}

const unique = (sights: readonly Sight[]): Sight[] =>
  sights.filter(
    (one, i) =>
      sights.findIndex(
        (other) => other.look === one.look && other.section === one.section && other.later === one.later,
      ) === i,
  )
