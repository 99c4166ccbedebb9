/**
 * The one door for what comes from outside: pattern files, and what the browser stored or was linked to.
 * Text in, data or problems out; nothing outside is believed before it went through a schema here.
 */
export { readPattern, type PatternReading } from './read-pattern.ts'
export { checkPattern, type Checked } from './check-pattern.ts'
export { problemText, told } from './problem-text.ts'
