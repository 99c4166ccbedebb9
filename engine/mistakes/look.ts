/** What a reader can see in the work: a closed list, each found from the loops, never declared for a kind of mistake. */
export const lookWords = {
  'free loop': 'A loop hangs free in the fabric, and the stitches under it may run down like a ladder.',
  'loose bar': 'A long loose strand lies between two stitches where a hole should be.',
  'long loop': 'One large loose loop stands where two stitches should be.',
  belt: 'A strand lies round two stitches like a belt.',
  'tall loop': 'A stitch of the row below stands tall on the needle: it was never worked.',
  'made stitch': 'A small tight stitch is raised from the strand between two others, and there is no hole.',
  'no hole': 'Two stitches stand close together where a hole should be.',
  'stray hole': 'There is a hole where none belongs.',
  'hole too small': 'A hole that should be large is small.',
  'hole too large': 'A hole that should be small is large.',
  'hole and decrease changed sides': 'The decrease lies on the other side of its hole.',
  'hole beside its place': 'A hole sits one stitch away from where it belongs.',
  'hole shut': 'A hole is small, and its strands cross.',
  'leg behind': 'A yarn over sits on the needle with its leading leg behind.',
  'no decrease': 'The stitches lie flat where two or more should be worked together.',
  'decrease too many': 'Two stitches are worked together and there is no hole to go with them.',
  'decrease too narrow': 'A decrease gathers one stitch too few.',
  'decrease too wide': 'A decrease gathers one stitch too many: a tight little knot.',
  'leans the other way': 'A decrease leans the other way from its fellows.',
  'middle not in front':
    'The middle stitch of a decrease does not lie as in its fellows: the upright line wavers.',
  'crossed decrease': 'The stitches of a decrease are twisted: their legs cross.',
  'decrease beside its place': 'A decrease sits one stitch away from where it belongs.',
  'other face': 'One stitch shows a bump where it should be smooth, or is smooth where a bump should be.',
  ridge: 'A whole row shows its other face: a ridge, or a smooth stripe in one.',
  'slid sideways': 'From one place on, everything in the row sits to the side of where it belongs.',
  'another row': 'The row, or the rest of it, looks like another row of the pattern.',
  squat: 'The motif is squat, or its lace shows on the wrong face: a plain row is missing.',
  'wrong face out': 'All the work shows its wrong face where the right one should be.',
  'motif cut off': 'The last motif of the row is cut off, or stitches stay beyond it.',
  'marker beside its place':
    'All stitches are as they should be; only a marker hangs one stitch away from its place.',
} as const

export type Look = keyof typeof lookWords

/** Every look, the most striking first. */
export const looks = Object.keys(lookWords) as Look[]

/** A look with where it is seen. */
export interface Sight {
  readonly look: Look
  /** How many rows after the mistake's own. */
  readonly later: number
  /** Index into the plan's sections; null where it is the whole row. */
  readonly section: number | null
}
