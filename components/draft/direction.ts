import type { Pattern, Side } from '../../engine/pattern/index.ts'

/** Whether a row runs from right to left, seen from the right side. */
export const startsRightIn = ({ worked }: Pick<Pattern, 'worked'>, side: Side): boolean =>
  worked === 'round' || side === 'RS'
