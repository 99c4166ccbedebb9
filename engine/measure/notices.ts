/** What a knitter should hear before she trusts the figures. */
export const notices = {
  stocking:
    'This gauge is of stocking stitch. Lace opens further and differs from pattern to pattern, so every size here is a guess: knit a swatch of the lace before you cast on.',
  countsVary:
    'The count of this pattern changes from row to row. For its gauge count whole repeats, and take the stitches of a repeat as they were cast on.',
  growthGuessed:
    'One of the two sizes is worked out from the other by what blocking often does. Only your own swatch, measured before and after, tells.',
  oneWidth: 'This pattern has one width: it always begins on the same number of stitches.',
  lengthDecides:
    'This piece grows as it gets longer, so width and length cannot both be chosen. Here the length decides.',
  cannotGrow:
    'The rows of this pattern cannot be worked so many times, or it would be more work than this page does.',
  tooThick:
    'A yarn of that length and weight is too thick for stitches that narrow. Look at the ball band and at the gauge once more.',
  waysDisagree:
    'The yarn worked out from the size of the stitches and the yarn from your swatch are far apart. Trust the swatch, but look at what you typed.',
} as const

export type Notice = keyof typeof notices
