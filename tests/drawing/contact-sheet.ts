/**
 * Draws every stitch of the catalogue at the needles, frame by frame, on one page to look at.
 * By hand: node tests/drawing/contact-sheet.ts OUT.html [STITCH …] [--side=WS] [--hand=left]
 */
import { writeFileSync } from 'node:fs'
import { atNeedles, frameDrawing } from '../../engine/drawing/at-needles/index.ts'
import { escapeText, toSvg } from '../../engine/drawing/index.ts'
import { catalogue } from '../../engine/stitches/index.ts'
import { swatchOf } from './at-needles-support.ts'

const [out, ...rest] = process.argv.slice(2)
if (out === undefined) throw new Error('where to? node tests/drawing/contact-sheet.ts OUT.html')
const option = (name: string): string | undefined =>
  rest.find((one) => one.startsWith(`--${name}=`))?.split('=')[1]
const wanted = rest.filter((one) => !one.startsWith('--'))
const side = option('side') === 'WS' ? 'WS' : 'RS'
const hand = option('hand') === 'left' ? 'left' : 'right'

const looks = `
body { margin: 12px; background: #eff4f6; color: #0f2230; font: 14px/1.3 sans-serif; }
h2 { margin: 18px 0 4px; }
figure { display: inline-block; width: 398px; margin: 0 6px 6px 0; vertical-align: top; background: #fff; }
figure.via { opacity: .75; background: #f6f6f6; }
figcaption { min-height: 3.9em; padding: 4px 6px; }
svg { display: block; width: 398px; height: auto; }
.yarn-edge { stroke: #2f5162; } .yarn-body { stroke: #cfe1e8; } .yarn-body.below { stroke: #dde9ee; }
.yarn-edge.below { stroke: #5f7986; }
.is-next .yarn-body { stroke: #f3cf7a; } .is-new .yarn-body, .working-yarn .yarn-body { stroke: #e79cc2; }
.needle-body { fill: #ead9ba; } .needle-line { stroke: #77592c; } .needle-gleam { stroke: #fff; }
.next-ring, .next-badge, .label-spot, .label-line, .label-box { stroke: #a1135c; } .marker { stroke: #8f4300; }
`

function sheetOf(id: string): string {
  const swatch = swatchOf(id, side)
  const frames = atNeedles({ ...swatch, hand })
  if (frames === null) throw new Error(`${id} has no frames`)
  const figures = frames.frames.map((frame, i) => {
    const svg = toSvg(frameDrawing(frames, frame), { idPrefix: `s${id.replaceAll(/\W/g, '-')}-${i}` })
    const words = `${i} ${frame.words || 'before'}`
    return `<figure${frame.stop ? '' : ' class="via"'}>${svg}<figcaption>${escapeText(words)}</figcaption></figure>`
  })
  return `<h2>${escapeText(id)}</h2>${figures.join('')}`
}

const ids = wanted.length > 0 ? wanted : catalogue.map(({ id }) => id)
writeFileSync(
  out,
  `<!doctype html><meta charset="utf-8"><title>Stitches at the needles</title><style>${looks}</style>${ids.map(sheetOf).join('\n')}`,
)
