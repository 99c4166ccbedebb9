import type { APIRoute } from 'astro'
import { svgFile } from '../../../../components/fabric/files.ts'
import { smallCloseUpOf } from '../../../../components/stitch/close-ups.ts'
import { slugOf } from '../../../../components/stitch/slug.ts'
import { catalogue, type Stitch } from '../../../../engine/stitches/index.ts'

interface Props {
  stitch: Stitch
}

export const getStaticPaths = () =>
  catalogue.map((stitch) => ({ params: { name: slugOf(stitch.id) }, props: { stitch } }))

export const GET: APIRoute<Props> = ({ props: { stitch } }) => svgFile(smallCloseUpOf(stitch.id))
