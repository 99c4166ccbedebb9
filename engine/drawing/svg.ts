import { curvesData } from './curves-data.ts'
import type { Drawing, Look, Node, Segment } from './display.ts'
import { dataName, escapeText, idText, numberText } from './escape.ts'

export interface SvgOptions {
  /** A file by itself: with the namespace, and a plain typeface for its text. */
  readonly standalone?: boolean
  /** Begins the ids of title and description; give each drawing on one page its own. */
  readonly idPrefix?: string
}

/** The drawing as SVG. The same drawing and options give the same bytes; any text is safe in it. */
export function toSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const prefix = idText(options.idPrefix ?? 'drawing')
  const ids: Ids = { prefix, used: 0 }
  const described = drawing.description !== ''
  const { width, height, unit } = drawing
  const size = unit === 'mm' ? 'mm' : ''
  const opening = [
    '<svg',
    options.standalone ? attribute('xmlns', 'http://www.w3.org/2000/svg') : '',
    attribute('width', numberText(width) + size),
    attribute('height', numberText(height) + size),
    attribute('viewBox', `0 0 ${numberText(width)} ${numberText(height)}`),
    attribute('role', 'img'),
    attribute('aria-labelledby', described ? `${prefix}-title ${prefix}-desc` : `${prefix}-title`),
    options.standalone ? attribute('font-family', 'sans-serif') : '',
    '>',
  ].join('')
  return [
    opening,
    element('title', attribute('id', `${prefix}-title`), escapeText(drawing.title)),
    ...(described
      ? [element('desc', attribute('id', `${prefix}-desc`), escapeText(drawing.description))]
      : []),
    ...drawing.nodes.map((node) => nodeText(node, ids)),
    '</svg>',
  ].join('\n')
}

/** Path data of segments, for a script that moves a path drawn before. */
export const pathData = (d: readonly Segment[]): string =>
  d.map(([letter, ...numbers]) => letter + numbers.map(numberText).join(' ')).join('')

const attribute = (name: string, value: string): string => ` ${name}="${escapeText(value)}"`

const number = (name: string, value: number | undefined): string =>
  value === undefined ? '' : ` ${name}="${numberText(value)}"`

const word = (name: string, value: string | undefined): string =>
  value === undefined ? '' : attribute(name, value)

const element = (name: string, attributes: string, content = ''): string =>
  content === '' ? `<${name}${attributes}/>` : `<${name}${attributes}>${content}</${name}>`

/** Ids for what is drawn more than once: the prefix and a running number. */
interface Ids {
  readonly prefix: string
  used: number
}

function nodeText(node: Node, ids: Ids): string {
  switch (node.kind) {
    case 'path':
      return element('path', word('d', pathData(node.d)) + looks(node))
    case 'line':
      return element(
        'line',
        number('x1', node.x1) +
          number('y1', node.y1) +
          number('x2', node.x2) +
          number('y2', node.y2) +
          looks(node),
      )
    case 'polyline':
      return element(
        'polyline',
        word('points', node.points.map((point) => point.map(numberText).join(',')).join(' ')) + looks(node),
      )
    case 'rect':
      return element(
        'rect',
        number('x', node.x) +
          number('y', node.y) +
          number('width', node.width) +
          number('height', node.height) +
          number('rx', node.corner) +
          looks(node),
      )
    case 'circle':
      return element(
        'circle',
        number('cx', node.x) + number('cy', node.y) + number('r', node.radius) + looks(node),
      )
    case 'text':
      return textElement(node)
    case 'curves':
      return curvesText(node, ids)
    case 'group':
      return element(
        'g',
        transform(node) + looks(node),
        node.children.map((child) => `\n${nodeText(child, ids)}`).join(''),
      )
  }
}

function textElement(node: Extract<Node, { kind: 'text' }>): string {
  const place = number('x', node.x) + number('y', node.y) + number('font-size', node.size)
  const set = word('text-anchor', node.anchor === 'start' ? undefined : node.anchor)
  const weight = word('font-weight', node.bold ? 'bold' : undefined)
  return element('text', place + set + weight + looks(node), escapeText(node.text))
}

/** One coat is a path; several are the bare path, painted by a group round it, and uses of it that inherit their paint. */
function curvesText(node: Extract<Node, { kind: 'curves' }>, ids: Ids): string {
  const d = word('d', curvesData(node.runs))
  const [first, ...others] = node.coats
  if (first === undefined || others.length === 0) return element('path', d + looks({ ...first, ...node }))
  ids.used += 1
  const id = `${ids.prefix}-${ids.used}`
  const path = element('path', attribute('id', id) + d)
  const uses = others.map((coat) => element('use', attribute('href', `#${id}`) + looks(coat)))
  const between = (node.between ?? []).map((child) => `\n${nodeText(child, ids)}`).join('')
  const all = element('g', looks(first), path) + between + uses.join('')
  const outer = looks(node)
  return outer === '' ? all : element('g', outer, all)
}

function transform({ x = 0, y = 0, rotate = 0, scale = 1 }: Extract<Node, { kind: 'group' }>): string {
  const parts = []
  if (x !== 0 || y !== 0) parts.push(`translate(${numberText(x)} ${numberText(y)})`)
  if (rotate !== 0) parts.push(`rotate(${numberText(rotate)})`)
  if (scale !== 1) parts.push(`scale(${numberText(scale)})`)
  return parts.length > 0 ? attribute('transform', parts.join(' ')) : ''
}

/** Classes, data and paint, always in this order. */
function looks(look: Look): string {
  return (
    word('class', look.className) +
    word('data-key', look.key) +
    dataAttributes(look.data ?? {}) +
    word('fill', look.fill) +
    number('fill-opacity', look.fillOpacity) +
    word('stroke', look.stroke) +
    number('stroke-width', look.strokeWidth) +
    word('stroke-linecap', look.cap) +
    word('stroke-linejoin', look.join) +
    word('stroke-dasharray', look.dash?.map(numberText).join(' ')) +
    number('opacity', look.opacity)
  )
}

/** Names that come out alike are written once, with the last value: an attribute must not stand twice. */
function dataAttributes(data: Readonly<Record<string, string>>): string {
  const named = new Map(Object.entries(data).map(([name, value]) => [dataName(name), value]))
  return [...named]
    .filter(([name]) => name !== '' && name !== 'key')
    .map(([name, value]) => attribute(`data-${name}`, value))
    .join('')
}
