/**
 * What a teacher says at the table, found from the worked loops: each step with its count, balance, call-outs and what to
 * look at; the rows as edge, repeat and end; the swatch card. Words and numbers only; pictures come from drawing.
 */
export { balanceAt, type Balance } from './balance.ts'
export { type CallOut, type CallOutKind, callOutsAt } from './call-outs.ts'
export { type Card, type CardRow, type CardSheet, swatchCard } from './card.ts'
export { castOnNumbers, castOnWords, countText, type CastOnNumber } from './cast-on.ts'
export { type LessonStep, lessonOf, type Lesson, lessonStep, rowLabelOf, statusOf } from './lesson.ts'
export { lookCheckAt } from './look-check.ts'
export { type RowBoxes, rowBoxes } from './row-boxes.ts'
