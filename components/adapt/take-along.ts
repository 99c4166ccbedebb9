import { draftOf, draftToLink, longestLink } from '../../engine/intake/index.ts'
import type { Pattern } from '../../engine/pattern/index.ts'
import { download, fileName } from '../draft/files.ts'
import { browserPacking } from '../draft/packing.ts'
import { askOfFile } from '../draft/reckoner.ts'
import { siteRoot } from '../pattern-facts.ts'

/** Hands the pattern to the reader as a file; whether that could be done. */
export async function saveFile(pattern: Pattern): Promise<boolean> {
  const draft = draftOf(pattern)
  const told = await askOfFile({ ask: 'write', draft })
  if (told) download(fileName(draft), told.text)
  return told !== null
}

/** The drafting page with the pattern laid out in it; null where it is too long to stand in an address. */
export async function draftAddress(pattern: Pattern): Promise<string | null> {
  const payload = await draftToLink(draftOf(pattern), browserPacking)
  return payload.length > longestLink ? null : `${siteRoot()}draft/#draft=${payload}`
}
