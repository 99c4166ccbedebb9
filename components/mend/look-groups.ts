import type { Look } from '../../engine/mistakes/index.ts'

/** The looks by what a reader would look at first. */
const groups: Readonly<Record<string, readonly Look[]>> = {
  'A hole': [
    'no hole',
    'stray hole',
    'hole too small',
    'hole too large',
    'hole shut',
    'hole beside its place',
    'leg behind',
  ],
  'A decrease': [
    'leans the other way',
    'hole and decrease changed sides',
    'decrease beside its place',
    'no decrease',
    'decrease too many',
    'decrease too narrow',
    'decrease too wide',
    'middle not in front',
    'crossed decrease',
  ],
  'A loop or a strand': [
    'free loop',
    'loose bar',
    'long loop',
    'belt',
    'tall loop',
    'made stitch',
    'other face',
  ],
  'The whole row': ['slid sideways', 'another row', 'ridge', 'squat', 'wrong face out', 'motif cut off'],
  'A marker': ['marker beside its place'],
}

/** Those of the looks that there are, under their groups; what belongs to none comes last. */
export function groupedLooks(
  looks: readonly Look[],
): { readonly name: string; readonly looks: readonly Look[] }[] {
  const known = new Set(Object.values(groups).flat())
  return [...Object.entries(groups), ['Something else', looks.filter((look) => !known.has(look))] as const]
    .map(([name, all]) => ({ name, looks: all.filter((look) => looks.includes(look)) }))
    .filter((group) => group.looks.length > 0)
}
