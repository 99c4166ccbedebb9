/** What may be asked beside a name: a number in its own words. */
export interface Asks {
  readonly before: string
  readonly after: string
  /** The number that stands in the field at first; null where it may be left empty. */
  readonly usual: number | null
}

/** One thing that a teacher may do to a pattern, under the name that the address and the command know. */
export interface Choice {
  readonly name: string
  readonly words: string
  readonly asks?: Asks
}

export interface ChoiceGroup {
  readonly title: string
  readonly about: string
  readonly choices: readonly Choice[]
}

const number = (before: string, after: string, usual: number | null): Asks => ({ before, after, usual })

export const choiceGroups: readonly ChoiceGroup[] = [
  {
    title: 'Flat or in the round',
    about: 'A scarf into a cowl, a cowl into a scarf.',
    choices: [
      { name: 'round', words: 'Work it in the round' },
      { name: 'flat', words: 'Work it flat, with the same look' },
      { name: 'flat plainer', words: 'Work it flat, with plain wrong-side decreases' },
    ],
  },
  {
    title: 'Mirrored',
    about: 'What leans left leans right: for the other front of a cardigan.',
    choices: [{ name: 'mirror', words: 'Mirror it' }],
  },
  {
    title: 'Width of the repeat',
    about: 'For a number of stitches that does not come out.',
    choices: [
      { name: 'wider', words: 'Wider', asks: number('by', 'sizes', 1) },
      { name: 'narrower', words: 'Narrower', asks: number('by', 'sizes', 1) },
      { name: 'plain stitch in', words: 'A plain stitch more', asks: number('before stitch', '', null) },
      { name: 'plain stitch out', words: 'A plain stitch fewer', asks: number('stitch', '', null) },
    ],
  },
  {
    title: 'Decreases',
    about: 'How they lie on the right side, and how easily they are worked.',
    choices: [
      { name: 'doubles left', words: 'Doubles to the left' },
      { name: 'doubles upright', words: 'Doubles upright' },
      { name: 'doubles right', words: 'Doubles to the right' },
      { name: 'plainer', words: 'Plainer stitches for all awkward ones' },
    ],
  },
  {
    title: 'Sides',
    about: 'Only a flat piece has them.',
    choices: [
      { name: 'garter edge', words: 'Garter edge', asks: number('of', 'stitches', 3) },
      { name: 'stocking edge', words: 'Stocking edge', asks: number('of', 'stitches', 2) },
      { name: 'slipped edge', words: 'Slipped edge', asks: number('of', 'stitches', 1) },
      { name: 'half repeats', words: 'Half repeats', asks: number('through stitch', '', null) },
    ],
  },
  {
    title: 'Cast-on and bind-off edges',
    about: 'Lace by itself curls or flares there.',
    choices: [{ name: 'border', words: 'Garter border', asks: number('of', 'rows', 4) }],
  },
]

export const wordsFor = (name: string): string =>
  choiceGroups.flatMap(({ choices }) => choices).find((choice) => choice.name === name)?.words ?? name
