/**
 * The one door for what comes from outside: pattern files, what the browser stored or was linked to, and forms.
 * Text in, data or problems out; nothing outside is believed before it went through a schema here.
 */

export {
  adaptHash,
  type LinkedMakeOvers,
  type MakeOver,
  parseAdaptHash,
  readMakeOver,
  type Together,
} from './adapt-link.ts'
export { type Checked, checkPattern } from './check-pattern.ts'
export {
  type ClassProblem,
  type ClassReading,
  classProblemText,
  type KnownPatterns,
  readClass,
} from './class-file.ts'
export { mostClassRepeats } from './class-file-schema.ts'
export { type KeptClass, parseClassLink, parseKeptClass, writeClass } from './class-file-write.ts'
export { type ClassForm, readClassForm } from './class-form.ts'
export {
  type Draft,
  type DraftCastOn,
  draftCastOn,
  draftOf,
  emptyDraft,
  isBlank,
  withRowsOf,
} from './draft.ts'
export { changed, type DraftChange, rowIndex, textAt, withText } from './draft-change.ts'
export {
  draftFromLink,
  draftToLink,
  type LinkReading,
  longestLink,
  mostLinkBytes,
  type Packing,
} from './draft-link.ts'
export { type DraftMend, mendsFor } from './draft-mends.ts'
export {
  type Asked,
  mostRepeatsAsked,
  readEvidence,
  readRepeats,
  readVersion,
  type Told,
  type Unclear,
} from './evidence.ts'
export {
  emptyMeasures,
  inUnitOf,
  type MeasureField,
  type MeasureTexts,
  type MeasureUnit,
  measureTexts,
  parseMeasures,
  readMeasures,
} from './measures.ts'
export { type KeptDraft, parseDraft, parseKeptDraft } from './parse-draft.ts'
export { type Habits, mostRepeats, type Place, parseHabits, parsePlace } from './place.ts'
export { type LinkedPlace, parsePlaceHash, placeHash } from './place-link.ts'
export { problemText, told } from './problem-text.ts'
export { parseProgress } from './progress.ts'
export { type Fresh, itemAt, putStitches, type WrittenAt } from './put-stitch.ts'
export {
  checkDraft,
  type DraftChecked,
  type DraftPlace,
  type DraftProblem,
  type DraftReading,
  readDraft,
  writtenRows,
} from './read-draft.ts'
export { type Pasted, readPaste } from './read-paste.ts'
export { type PatternReading, readPattern } from './read-pattern.ts'
export { offeredLooks, readLast, readWhere, type ToldWhere } from './where.ts'
export { writeDraft, writePattern } from './write-pattern.ts'
