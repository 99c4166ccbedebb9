import type { Card, CardSheet } from '../../engine/lesson/index.ts'

/** Quarter sheets on one sheet of paper. */
const perSheet = 4

export interface Slot {
  /** Null where nothing is left to print: a card for notes. */
  readonly sheet: CardSheet | null
  /** From 0; only the first is shown on the screen. */
  readonly copy: number
}

/** Cards for whole sheets of paper: the card with its continuations, again as often as all of it fits, then note cards. */
export function sheetsOfPaper({ sheets }: Card): Slot[][] {
  const slots = Math.ceil(sheets.length / perSheet) * perSheet
  const copies = Math.floor(slots / sheets.length)
  const filled = Array.from({ length: copies }, (_, copy) =>
    sheets.map((sheet): Slot => ({ sheet, copy })),
  ).flat()
  const notes = Array.from({ length: slots - filled.length }, (): Slot => ({ sheet: null, copy: copies }))
  const all = [...filled, ...notes]
  return Array.from({ length: slots / perSheet }, (_, i) => all.slice(i * perSheet, (i + 1) * perSheet))
}
