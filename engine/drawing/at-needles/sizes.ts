/** Measures of the needle view in stitch widths, unless they say otherwise. Tuned by eye. */
export const sizes = {
  /** From the middle between the tips to the loop nearest each of them. */
  first: 0.85,
  /** Half the thickness of a needle. */
  needle: 0.17,
  yarn: 0.165,
  /** How much of its outline shows on each side of the yarn. */
  line: 0.035,
  /** How far each needle falls away from its tip, in parts of its length. */
  fall: { left: 0.1, right: 0.17 },
  /** Loops are drawn up to here on either side; the others are counted. */
  reach: 6.45,
  /** Half the width of a loop on a needle. */
  half: 0.27,
  /** Half the picture's width and its height above and below the needles. */
  picture: { side: 6.85, above: 2.35, below: 4.55 },
  /** Drawing units a stitch: on a phone about 0.6 of them is a pixel. */
  stitch: 44,
} as const
