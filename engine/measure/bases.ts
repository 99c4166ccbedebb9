/** Something that a figure rests on, as it is told, with where it comes from and how sure that is. */
export interface Basis {
  readonly fact: string
  readonly source: string
}

/** Every fact that a measure uses. A number in a sentence here is the number in `constants.ts`. */
export const bases = {
  proof: {
    fact: 'The count holds for every number of repeats.',
    source: "Proved from this pattern's own rows.",
  },
  reading: {
    fact: 'A whole number read off a swatch may be half a stitch or half a row out; a part number a quarter.',
    source: 'Plain reasoning, no source.',
  },
  growth: {
    fact: 'Three pieces grew by 9 to 63 % in width and 11 to 63 % in length when they were blocked, and one shawl came out shorter. 10 to 30 % is taken here.',
    source: 'Sizes that four knitters published of single pieces; a habit to start from, not a rule.',
  },
  stocking: {
    fact: 'Lace does not work up like stocking stitch. A fifth either way is allowed for here.',
    source: 'No published figure; the fifth is our own allowance.',
  },
  rowShape: {
    fact: 'A plain stitch is about 1.31 times as wide as its row is high, 1.25 to 1.40.',
    source:
      'Loop constants of relaxed plain knitting: 5.5 and 4.2 in an examination paper in textile engineering of 2015; the band from Munden 1959, from memory.',
  },
  loopLength: {
    fact: 'The yarn in a plain stitch follows from its width and height: length² = k × width × height, k 23.1, or 19.0 to 23.5.',
    source:
      'Loop constants of relaxed plain knitting: 5.5 and 4.2 in an examination paper in textile engineering of 2015; the band from Munden 1959, from memory. Measured on machine-knitted ground, not on lace.',
  },
  loopWidth: {
    fact: 'The yarn in a plain stitch is about 4.2 times as long as the stitch is wide, 3.8 to 4.2.',
    source:
      'Loop constants of relaxed plain knitting: 4.2 in an examination paper in textile engineering of 2015; 3.8 from Munden 1959, from memory.',
  },
  yarnOver: {
    fact: 'A yarn over is counted as two thirds of a stitch (a loop without the arc between two stitches), half to a whole one.',
    source: 'From the flat model of a close plain loop; no published figure for lace.',
  },
  edges: {
    fact: 'A stitch of the cast-on is counted as two, a bound-off one as one more; 15 cm at each end to darn in.',
    source: 'Common practice, no source.',
  },
  floats: {
    fact: 'Behind a slipped stitch the yarn is as long as the stitch is wide.',
    source: 'Plain reasoning, no source.',
  },
  measuredYarn: {
    fact: 'Stitches in all, divided by the stitches that a measured length of yarn makes.',
    source: 'A published worked example: 25,200 stitches at 45 to the yard are 560 yards.',
  },
  weighed: {
    fact: 'The swatch weighed, and its stitches × rows compared with those of the piece. The scale may be half its last figure out.',
    source: 'Two published guides to swatching; the scale is plain reasoning.',
  },
  ballBand: {
    fact: 'Length and weight of a ball as its band states them.',
    source: 'What you typed.',
  },
  spare: {
    fact: 'A tenth more than the most is bought: for swatches, knots and joins, and because no second ball may be had.',
    source: 'Common practice, no source.',
  },
  pace: {
    fact: 'Lace goes faster and slower with the row: a quarter either way.',
    source: 'Our own allowance, no source.',
  },
  breaks: {
    fact: 'A break of 5 to 10 minutes after every 30 to 45 minutes.',
    source: 'Advice of a physiotherapy practice and of an acupuncture clinic to knitters.',
  },
  lifeline: {
    fact: 'A lifeline on a plain row just counted, about every ten rows or once a repeat.',
    source: 'Three published guides for lace knitters.',
  },
} as const satisfies Record<string, Basis>
