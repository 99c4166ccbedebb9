// What XML 1.0 does not allow at all, and the C1 controls, which it only discourages.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const forbidden = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/g
const unpaired = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g
const special = /[&<>"'\t\n\r]/g

const references: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  // An XML reader turns these into spaces inside attributes unless they are written as references.
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
}

/** Text made safe between tags and inside quoted attributes alike, in HTML and in XML. What neither allows is left out. */
export function escapeText(text: string): string {
  const allowed = text.replace(forbidden, '').replace(unpaired, '')
  return allowed.replace(special, (character) => references[character] ?? '')
}

/** A number with three decimals at most and no trailing zeros. Throws on NaN and infinities: they are a fault of ours. */
export function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing has the number ${value} in it.`)
  // `+ 0` turns -0 into 0.
  return String(Math.round(value * 1000) / 1000 + 0)
}

/** A data-… attribute's name: camel case becomes hyphens; whatever cannot stand in a name is left out. */
export function dataName(name: string): string {
  return name
    .replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
    .replace(/[^a-z0-9-]/g, '')
    .replace(/^-+/, '')
}

/** What may stand in an id that other attributes point to: letters, digits, hyphens, underscores. */
export const idText = (text: string): string => text.replace(/[^A-Za-z0-9_-]/g, '-')
