/** Half widths and heights in stitch widths, heights in parts of the loop where it says so: tuned by eye. */
export interface LegForm {
  /** From the loop's middle to each leg, where its lower half ends. */
  readonly mid: number
  /** How far up that is, in parts of the height. */
  readonly midAt: number
  /** How high the head reaches over what is drawn through it. */
  readonly head: number
  /** How round it is: the reach of the curve's handle at its top. */
  readonly headWidth: number
}

/** In plain stocking stitch head and sinker are one arc. */
const plain: LegForm = { mid: 0.245, midAt: 0.52, head: 0.33, headWidth: 0.44 }

export const legForms = {
  plain,
  /** A yarn over stands wide open. */
  over: { ...plain, mid: 0.33, midAt: 0.5 },
  /** Gathered with others in a decrease. */
  gathered: { ...plain, mid: 0.21, midAt: 0.46, headWidth: 0.36 },
  /** Gathered again right after one increase made them. */
  slim: { ...plain, headWidth: 0.3 },
  /** The chain of a bind-off lies along the edge. */
  chain: { mid: 0.18, midAt: 0.5, head: 0.24, headWidth: 0.3 },
} as const satisfies Record<string, LegForm>

export const form = {
  foot: 0.145,
  chainFoot: 0.11,
  /** How far above the base the yarn dives from one face to the other; higher where the legs of several parents cross below. */
  dive: 0.05,
  gatheredDive: 0.15,
  /** How the heads of a decrease lie in each other: so much higher for each one in front, so much in all, and how far aside. */
  nest: { step: 0.07, most: 0.24, aside: 0.05 },
  /** Loops drawn through one parent: how near to each other they stand, in all, and how far apart each one's feet. */
  siblings: { pitch: 0.36, most: 1.5, foot: 0.1 },
  /** Gathered again, they rise side by side over the head of their parent: so wide in parts of their pitch, and so high. */
  slim: { wide: 0.25, high: 0.44 },
  /** How far a loop passed over several reaches past the outer ones. */
  belt: 0.34,
  /** A loop drawn through a loop under its row stands in that one's head, beside the loop that is there already. */
  below: 0.24,
} as const
