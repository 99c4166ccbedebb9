/**
 * Exercises, made from the same worked loops and mistakes as the lessons: a kind and a number give the same exercise to
 * everyone. Plain data: what is shown, what is asked, and for every answer a reply with its reason.
 */
export { firstNumber, readSpot, type Spot, spotText } from './address.ts'
export * from './exercise.ts'
export { judge, readCount, rightAnswers, rightWords } from './judge.ts'
export { itemsInOrder, workedInOrder } from './judge-order.ts'
export { nextNumber, numberText, readNumber } from './luck.ts'
export { exerciseOf, isExercise, kindWords } from './make.ts'
export { pictureOf } from './pictures.ts'
export { closeUpWords } from './read-the-fabric.ts'
export { type Table, tableOf } from './table.ts'
