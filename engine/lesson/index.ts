/**
 * What a teacher says at the table, found from the worked loops: each step with its count, balance, call-outs and what to
 * look at; the rows as edge, repeat and end; the swatch card. Words and numbers only; pictures come from drawing.
 */
export { type Balance, balanceAt } from './balance.ts'
export type { CallOut, CallOutKind } from './call-out.ts'
export { type CallOutTable, callOutsIn, callOutTable, tabledWidths } from './call-out-table.ts'
export { type Card, type CardRow, type CardSheet, swatchCard } from './card.ts'
export { type CastOnNumber, castOnNumbers, castOnWords, countText } from './cast-on.ts'
export { countBehaviour, kindWords } from './facts.ts'
export { type Handout, type HandoutSheet, type HandoutSource, handoutOf } from './handout.ts'
export {
  type ClassPart,
  type ClassPattern,
  type ClassPlan,
  emptyClass,
  minutesOf,
  type Paper,
  type Print,
  papers,
  prints,
  type Section,
  sections,
} from './handout-class.ts'
export { pageCode } from './handout-code.ts'
export { handoutHtml } from './handout-html.ts'
export type { HandoutStitch } from './handout-key.ts'
export type { HandoutPictures } from './handout-leaf.ts'
export type { HandoutRow } from './handout-rows.ts'
export {
  type Lesson,
  type LessonStep,
  lessonFrom,
  lessonOf,
  lessonStep,
  rowLabelOf,
  statusOf,
} from './lesson.ts'
export { landmarkAt, lookCheckAt } from './look-check.ts'
export {
  type Lifeline,
  lifelineWords,
  mostDone,
  nothingDone,
  type Progress,
  rippedToLifeline,
  rowAfterIn,
  rowsSinceWords,
  ticked,
  tickedSinceLifeline,
  timeWords,
  wentBackOver,
  wentElsewhere,
  wentPast,
  withLifeline,
  withoutLifeline,
} from './progress.ts'
export { type RowBoxes, rowBoxes } from './row-boxes.ts'
