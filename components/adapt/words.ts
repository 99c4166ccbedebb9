import type { MakeOver } from '../../engine/intake/index.ts'

const sizes = (n: number): string => (n === 1 ? '' : `${n} sizes `)
const place = (what: string, at: number | null): string => (at === null ? '' : `, ${what} ${at}`)
const leans = { left: 'to the left', centre: 'upright', right: 'to the right' } as const
const where = { beside: 'to its left', above: 'above it', below: 'below it' } as const

/** A step as a few words behind a pattern's name: 'in the round', '2 sizes wider', 'with Vine to its left'. */
export function stepWords(step: MakeOver, titleOf: (slug: string) => string): string {
  if (step.kind === 'unknown') return step.written
  if (step.kind === 'together') return `with ${titleOf(step.slug)} ${where[step.where]}`
  const { request } = step
  switch (request.do) {
    case 'round':
      return 'in the round'
    case 'flat':
      return request.wrongSide === 'plainer' ? 'flat, with plain wrong-side decreases' : 'flat'
    case 'mirror':
      return 'mirrored'
    case 'wider':
    case 'narrower':
      return `${sizes(request.sizes)}${request.do}`
    case 'plain stitch in':
      return `with a plain stitch more in each repeat${place('before stitch', request.stitch)}`
    case 'plain stitch out':
      return `with a plain stitch fewer in each repeat${place('stitch', request.stitch)}`
    case 'half repeats':
      return `with half repeats at the sides${place('through stitch', request.stitch)}`
    case 'doubles':
      return `with doubles ${leans[request.lean]}`
    case 'plainer':
      return request.stitch === null ? 'with plainer stitches' : `with ${step.written}`
    case 'edge':
      return `with a ${request.kind} edge of ${counted(request.stitches, 'stitch', 'stitches')}`
    case 'border':
      return `with garter borders of ${counted(request.rows, 'row', 'rows')}`
  }
}

export const counted = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`

export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`
