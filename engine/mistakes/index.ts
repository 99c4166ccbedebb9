/**
 * Mistakes made on purpose: a worked row with a small change, worked by the same needle code; what follows from it, how it
 * is found from what a reader counts or sees, and how it is mended. No count, look or effect is declared.
 */
export { consequenceOf } from './consequence.ts'
export type * from './consequence-facts.ts'
export { answer, type DiagnoseOptions, type Diagnosis, diagnose } from './diagnose.ts'
export { type Evidence, type MeantCounts, meantCounts } from './evidence.ts'
export type { Habit, RowOutcome } from './follow.ts'
export { type LikelyMistake, likelyMistakesAt } from './likely.ts'
export { type Effect, effectWords } from './likely-words.ts'
export { type Look, looks, lookWords, type Sight } from './look.ts'
export type { Fitting } from './match.ts'
export type { Mend, MendWay } from './mend.ts'
export { mendsFor } from './mends.ts'
export { keyOf, type Mistake, type MistakeKind } from './mistake.ts'
export type { Model, Spot } from './model.ts'
export { editsOf, mistakesIn, modelOf, models } from './models.ts'
export { checkPage, everyRepeatWords, type PageCheck, pageWords, sameInEveryRepeat } from './page.ts'
export { type Pair, partsOfPair } from './pairs.ts'
export { type Plan, planOf, type RowPlan, sectionWords } from './plan.ts'
export { type Choice, type Question, type QuestionKind, replyOf } from './question.ts'
export { fabricText, sameFabric } from './same-fabric.ts'
export { headline, openingWords, pairWords, suspectWords } from './suspect-words.ts'
export type { Suspect } from './suspects.ts'
export { type LookAt, type TellApart, tellApart } from './tell-apart.ts'
export { type Casebook, casebookOf, prepare, preparing, sightsFor, type Trace, tracesIn } from './traces.ts'
export {
  type Clues,
  type Glimpse,
  type GlimpseLook,
  glimpses,
  lookOf,
  mostTold,
  type NearPlace,
  nearPlaces,
  type PossiblePlace,
  placesFor,
  rowBefore,
  withoutTwins,
} from './where.ts'
export {
  nearWords,
  noPlaceWords,
  type PlaceWords,
  placeHeadline,
  placeWordsAt,
  tellApartWords,
  writtenRun,
} from './where-words.ts'
export { rowName } from './words.ts'
export { type WrongPiece, type WrongRow, workWrong } from './work-wrong.ts'
