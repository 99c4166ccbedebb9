/**
 * Rows often begin with * or [, which YAML takes for an alias or a list. Knitters should not have to know: in a row's
 * place these are swapped for private characters of the same length before YAML sees them, and back afterwards, so that
 * every offset stays true. Aliases are thereby never read, which also keeps entity bombs out.
 */
const swaps: readonly [string, string][] = [
  ['*', '\ue000'],
  ['[', '\ue001'],
]

const rowStart =
  /^(\s*-\s+(?:(?:rows?|rounds?|rnds?)?\s*\d[\d\s,&to and-]{0,40}(?:\((?:RS|WS)\))?\s*:\s+)?|\s+["']?(?:rows?|rounds?|rnds?)?\s*\d[\d\s,&to and-]{0,40}["']?\s*:\s+|\s*(?:before|after)\s*:\s+)([*[])/gim

export function shield(text: string): string {
  return text.replace(
    rowStart,
    (_whole, lead: string, mark: string) => lead + (swaps.find(([plain]) => plain === mark)?.[1] ?? mark),
  )
}

export const unshield = (value: string): string => value.replaceAll('\ue000', '*').replaceAll('\ue001', '[')
