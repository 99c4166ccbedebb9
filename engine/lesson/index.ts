/**
 * What a teacher says at the table, found from the worked loops: each step with its count, balance, call-outs and what to
 * look at; the rows as edge, repeat and end; the swatch card. Words and numbers only; pictures come from drawing.
 */
export { type Balance, balanceAt } from './balance.ts'
export { type CallOut, type CallOutKind, callOutsAt } from './call-outs.ts'
export { type Card, type CardRow, type CardSheet, swatchCard } from './card.ts'
export { type CastOnNumber, castOnNumbers, castOnWords, countText } from './cast-on.ts'
export { countBehaviour, kindWords } from './facts.ts'
export { type Lesson, type LessonStep, lessonOf, lessonStep, rowLabelOf, statusOf } from './lesson.ts'
export { landmarkAt, lookCheckAt } from './look-check.ts'
export { type RowBoxes, rowBoxes } from './row-boxes.ts'
