import { parseArgs } from 'node:util'
import { chartOf } from '../chart/index.ts'
import { chartDrawing, toSvg } from '../drawing/index.ts'
import { problemText } from '../intake/index.ts'
import { type WorkedPattern, work } from '../needles/index.ts'
import { printRow, type Terms } from '../notation/index.ts'
import { type Pattern, type Row, withEdges } from '../pattern/index.ts'
import { adaptedFor, requestsFrom } from './adapted.ts'
import { type CheckedFile, checkFile } from './files.ts'
import { checkEntry } from './report.ts'
import { stepEntries, stepText } from './steps.ts'

const usage = `openwork: lace patterns read, proved and worked

  openwork check [--json] FILE…               proves each file; tells every problem
  openwork steps --repeats N [--json] FILE    every stitch of every row, with the count after it
  openwork rows [--terms us|uk] [--adapt LIST] FILE
                                              the rows in words, as they are or adapted: round, flat, mirror, …
  openwork chart [--repeats N] FILE           the chart as SVG
  openwork handout CLASS --paper a4|letter --out FILE.pdf [--print LOOK]
                                              a class's paper, for a print shop; CLASS is a name or a file, and
                                              LOOK is usual, large, easier, left-handed or "for copying"

Exit code: 0 sound, 1 a problem in a file, 2 wrong usage.
`

/** Thrown for wrong usage only; caught in `main`. */
class UsageError extends Error {}

type Write = (text: string) => void
interface Streams {
  readonly out: Write
  readonly err: Write
}

/** Runs the command line. Gives the exit code; writes nothing but through `streams`. */
export async function main(argv: readonly string[], streams: Streams = processStreams): Promise<number> {
  const [command, ...rest] = argv
  try {
    if (command === 'check') return check(rest, streams)
    if (command === 'steps') return steps(rest, streams)
    if (command === 'rows') return rows(rest, streams)
    if (command === 'chart') return chart(rest, streams)
    if (command === 'handout') return await handoutOrUsage(rest, streams)
    if (command === '--help' || command === 'help') {
      streams.out(usage)
      return 0
    }
    throw new UsageError(command === undefined ? 'say what to do' : `there is no command \`${command}\``)
  } catch (error) {
    const wrong =
      error instanceof UsageError || (error as { code?: string }).code?.startsWith('ERR_PARSE_ARGS')
    if (!wrong) throw error
    streams.err(`openwork: ${(error as Error).message}\n\n${usage}`)
    return 2
  }
}

const processStreams: Streams = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
}

function check(argv: string[], { out }: Streams): number {
  const { values, positionals } = parseArgs({
    args: argv,
    options: { json: { type: 'boolean' } },
    allowPositionals: true,
  })
  if (positionals.length === 0) throw new UsageError('check wants at least one file')
  const files = positionals.map(checkFile)
  if (values.json) out(`${JSON.stringify(files.map(checkEntry), null, 2)}\n`)
  else for (const file of files) out(problemText(file) + summary(file))
  return files.every((file) => file.sound) ? 0 : 1
}

function summary(file: CheckedFile): string {
  const errors = file.issues.filter((issue) => issue.severity === 'error').length
  if (!file.sound) return `${file.source.name}: not sound, ${errors} ${errors === 1 ? 'error' : 'errors'}\n`
  const rule = file.pattern?.castOn
  if (!rule) return ''
  const words =
    'fixed' in rule
      ? `${rule.fixed} stitches`
      : `a multiple of ${rule.multiple} plus ${rule.plus}, for every number of repeats`
  const grows = file.pattern?.growing ? '; the piece changes its width, proved for its rows worked once' : ''
  return `${file.source.name}: sound on ${words}${grows}\n`
}

/** The one file that a command speaks of, worked; or null, with its problems told. */
function workedFile(
  positionals: string[],
  repeats: number,
  command: string,
  { err }: Streams,
): WorkedPattern | null {
  const file = soundFile(positionals, command, { err })
  if (!file?.pattern) return null
  const { worked, issues } = work(file.pattern, repeats)
  if (issues.length > 0) err(problemText({ source: file.source, issues }))
  return worked
}

function soundFile(
  positionals: string[],
  command: string,
  { err }: Pick<Streams, 'err'>,
): CheckedFile | null {
  const [path] = positionals
  if (path === undefined || positionals.length > 1) throw new UsageError(`${command} wants one file`)
  const file = checkFile(path)
  if (file.sound && file.pattern) return file
  err(problemText(file))
  return null
}

function repeatsFrom(written: string | undefined, otherwise: number | null): number {
  if (written === undefined && otherwise !== null) return otherwise
  if (written === undefined || !/^\d{1,9}$/.test(written) || Number(written) < 1) {
    throw new UsageError('--repeats wants a whole number from 1')
  }
  return Number(written)
}

function steps(argv: string[], streams: Streams): number {
  const options = { json: { type: 'boolean' }, repeats: { type: 'string' } } as const
  const { values, positionals } = parseArgs({ args: argv, options, allowPositionals: true })
  const worked = workedFile(positionals, repeatsFrom(values.repeats, null), 'steps', streams)
  if (!worked) return 1
  if (values.json) streams.out(`${JSON.stringify(stepEntries(worked))}\n`)
  else streams.out(stepText(worked))
  return 0
}

function termsFrom(written: string): Terms {
  if (written === 'us' || written === 'uk') return written
  throw new UsageError(`--terms wants us or uk, not \`${written}\``)
}

function rows(argv: string[], streams: Streams): number {
  const options = { terms: { type: 'string', default: 'us' }, adapt: { type: 'string' } } as const
  const { values, positionals } = parseArgs({ args: argv, options, allowPositionals: true })
  const terms = termsFrom(values.terms)
  const asked = values.adapt === undefined ? { requests: [] } : requestsFrom(values.adapt)
  if ('wrong' in asked) throw new UsageError(asked.wrong)
  const pattern = soundFile(positionals, 'rows', streams)?.pattern
  const adapted = pattern ? adaptedFor(pattern, asked.requests, streams.err) : null
  if (!adapted) return 1
  printRows(adapted.pattern, adapted.closing, terms, streams)
  return 0
}

function printRows(pattern: Pattern, closing: readonly Row[], terms: Terms, { out }: Streams): void {
  const label = pattern.worked === 'round' ? 'Round' : 'Row'
  const line = (name: string, row: Row): void =>
    out(`${name} (${row.side}): ${printRow(withEdges(row, pattern), { terms })}\n`)
  for (const row of pattern.setUp) line(`Set-up ${label.toLowerCase()}`, row)
  for (const row of pattern.rows) line(`${label} ${row.number}`, row)
  for (const row of closing) line(`Closing ${label.toLowerCase()}`, row)
}

function chart(argv: string[], streams: Streams): number {
  const { values, positionals } = parseArgs({
    args: argv,
    options: { repeats: { type: 'string' } },
    allowPositionals: true,
  })
  const worked = workedFile(positionals, repeatsFrom(values.repeats, 1), 'chart', streams)
  if (!worked) return 1
  streams.out(`${toSvg(chartDrawing(chartOf(worked)), { standalone: true })}\n`)
  return 0
}

/** Loaded when it is asked for: nothing else needs pictures and paper. */
async function handoutOrUsage(argv: string[], streams: Streams): Promise<number> {
  const { handout } = await import('./handout.ts')
  const done = await handout(argv, streams)
  if (typeof done === 'string') throw new UsageError(done)
  return done
}
