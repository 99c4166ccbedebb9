import type { APIRoute } from 'astro'
import { type FabricFile, fabricFiles, svgFile } from '../../../../components/fabric/files.ts'
import { type ProvedEntry, provedEntries } from '../../../library.ts'

interface Props {
  entry: ProvedEntry
  picture: FabricFile
}

export const getStaticPaths = () =>
  provedEntries.flatMap((entry) =>
    (Object.keys(fabricFiles) as FabricFile[]).map((picture) => ({
      params: { slug: entry.slug, picture },
      props: { entry, picture },
    })),
  )

export const GET: APIRoute<Props> = ({ props: { entry, picture } }) => svgFile(fabricFiles[picture](entry))
