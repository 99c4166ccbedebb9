/**
 * The one door for what comes from outside: pattern files, what the browser stored or was linked to, and forms.
 * Text in, data or problems out; nothing outside is believed before it went through a schema here.
 */

export { type Checked, checkPattern } from './check-pattern.ts'
export {
  type Asked,
  mostRepeatsAsked,
  readEvidence,
  readRepeats,
  type Told,
  type Unclear,
} from './evidence.ts'
export { type Habits, mostRepeats, type Place, parseHabits, parsePlace } from './place.ts'
export { problemText, told } from './problem-text.ts'
export { type PatternReading, readPattern } from './read-pattern.ts'
