import type { StitchId } from '../../engine/stitches/index.ts'

/** A stitch's id as a part of an address: 'k tbl' is 'k-tbl', '(k1, yo, k1) in 1' is 'k1-yo-k1-in-1'. */
export const slugOf = (id: StitchId): string =>
  id
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
