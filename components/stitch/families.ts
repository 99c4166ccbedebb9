import { catalogue, type Family, type Stitch } from '../../engine/stitches/index.ts'

/** What a family is called over its stitches, and what they have in common. */
interface FamilyWords {
  readonly title: string
  readonly about: string
}

const families: Readonly<Record<Family, FamilyWords>> = {
  plain: {
    title: 'Plain stitches',
    about: 'One loop drawn through one: toward you it is a knit, away from you a purl.',
  },
  twisted: {
    title: 'Twisted stitches',
    about: 'Entered through the leg that lies behind, a loop is shut at its foot.',
  },
  'yarn over': {
    title: 'Yarn overs',
    about: 'Yarn laid over the needle, through no loop: a hole, and one stitch more.',
  },
  decrease: { title: 'Decreases', about: 'Two loops become one. What differs is which of them lies on top.' },
  'double decrease': {
    title: 'Double decreases',
    about: 'Three loops become one, or more by passing over. The order of the loops makes the lean.',
  },
  gathering: {
    title: 'Many gathered into one',
    about: 'From four loops to nine: the ends of shells and fans, and what closes a nupp.',
  },
  slip: {
    title: 'Slipped stitches',
    about: 'Moved over unworked. The loop is stretched past the row; only its yarn tells.',
  },
  increase: { title: 'Increases', about: 'A loop from a strand, from a loop below, or several out of one.' },
  crossing: { title: 'Crossings', about: 'Loops change places before they are worked; the count stays.' },
  passing: {
    title: 'Passed over a group',
    about: 'One loop lifted over several others, round which it lies like a belt.',
  },
  'bind off': {
    title: 'Binding off',
    about: 'Each loop passed over the next, so that nothing can run down.',
  },
  'cast on': { title: 'Casting on', about: 'A loop made of the yarn alone.' },
  bead: { title: 'With a bead', about: 'The bead is slid on the loop before it is worked.' },
  holding: {
    title: 'Held and joined',
    about: 'Loops that wait on a holder, and loops worked together with those that waited.',
  },
}

export interface FamilyGroup extends FamilyWords {
  readonly family: Family
  readonly stitches: readonly Stitch[]
}

/** The catalogue by families, each family where its first stitch stands. */
export function byFamily(): FamilyGroup[] {
  return [...Map.groupBy(catalogue, ({ family }) => family)].map(([family, stitches]) => ({
    family,
    stitches,
    ...families[family],
  }))
}

export const familyTitle = (family: Family): string => families[family].title

/** The anchor of a family on the page of all stitches. */
export const familyId = (family: Family): string => family.replaceAll(' ', '-')
