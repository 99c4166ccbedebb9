import { catalogue } from '../stitches/index.ts'

/** Other ways in which the trade writes a stitch of the catalogue in one word. British words for a yarn over stand apart. */
const otherWords: Readonly<Record<string, string>> = {
  skpo: 'skp',
  s1kp: 'skp',
  sl1kp: 'skp',
  skpsso: 'skp',
  sk2po: 'sk2p',
  sk2togp: 'sk2p',
  sk2togpo: 'sk2p',
  cdd: 's2kp',
  s2kp2: 's2kp',
  s2kpo: 's2kp',
  s2k1p: 's2kp',
  sl2kp: 's2kp',
  s2kpsso: 's2kp',
  sk3po: 'sk3p',
  m1k: 'm1',
  'kf&b': 'kfb',
  k1fb: 'kfb',
  'k1f&b': 'kfb',
  'pf&b': 'pfb',
  p1fb: 'pfb',
  nupp: 'nupp5',
}

/** One-word stitches: what is written → catalogue id. */
export const stitchWords: ReadonlyMap<string, string> = new Map([
  ...catalogue
    .map((s): [string, string] => [s.us.toLowerCase(), s.id])
    .filter(([us, id]) => !us.includes(' ') && us === id.toLowerCase()),
  ...Object.entries(otherWords).filter(([, id]) => catalogue.some((s) => s.id === id)),
])

/** British yarn-forward words. Those that say which way the yarn goes round are always a yarn over. */
export const yarnOverWords: ReadonlySet<string> = new Set(['yrn', 'yon', 'yfrn', 'yfon', 'yrh'])
export const yarnForwardWords: ReadonlySet<string> = new Set(['yf', 'yfwd', 'yfd', 'yft'])
export const yarnBackWords: ReadonlySet<string> = new Set(['yb', 'ybk', 'ybd'])

/** Every word that can open something in a row: what a misspelt word may have been meant to be. */
export const knownWords: readonly string[] = [
  ...stitchWords.keys(),
  ...yarnOverWords,
  ...yarnForwardWords,
  ...yarnBackWords,
  'k1',
  'k2',
  'k3',
  'p1',
  'p2',
  'p3',
  'knit',
  'purl',
  'k2tog',
  'k3tog',
  'p2tog',
  'p3tog',
  'sl1',
  'slip',
  'psso',
  'p2sso',
  'tbl',
  'pm',
  'sm',
  'rm',
  'turn',
  'join',
  'bo',
  'co',
  'bind',
  'cast',
  'rep',
  'repeat',
  'twice',
  'times',
  'nupp',
]
