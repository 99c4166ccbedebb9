import { parsePlaceHash } from '../../engine/intake/index.ts'
import { wentElsewhere } from '../../engine/lesson/index.ts'
import { goTo, type Session } from './session.ts'
import { exists, type Spot } from './state.ts'
import { find } from './view.ts'

/** The spot that the address names; null where it names none that this pattern has. */
function linkedSpot({ lessonFor, spot }: Session, hash: string): Spot | null {
  const linked = parsePlaceHash(hash)
  if (!linked) return null
  const wanted = linked.repeats === null ? null : lessonFor(linked.repeats)
  const worked = (wanted ?? lessonFor(spot.repeats))?.worked
  if (!worked) return null
  const at = { row: linked.row, step: linked.step ?? 0 }
  const step = exists(worked, at) ? at.step : 0
  return exists(worked, { ...at, step }) ? { row: at.row, step, repeats: worked.repeats } : null
}

/**
 * Goes where the address leads and brings the stepper into view; false where it leads nowhere. The place is taken out of
 * the address again: a page that is loaded anew goes on where the reader is by then.
 */
export function followLink(session: Session): boolean {
  const spot = linkedSpot(session, location.hash)
  if (!spot) return false
  session.progress = wentElsewhere(session.progress)
  goTo(session, spot)
  history.replaceState(history.state, '', location.pathname + location.search)
  session.root.scrollIntoView()
  find<HTMLElement>(session.root, '[data-do="next"]').focus({ preventScroll: true })
  return true
}
