import type { APIRoute } from 'astro'
import { type ProvedEntry, provedEntries } from '../../../library.ts'

export const getStaticPaths = () =>
  provedEntries.map((entry) => ({ params: { slug: entry.slug }, props: entry }))

/** The pattern's own file: the reader's browser proves it again, with the same engine. */
export const GET: APIRoute<ProvedEntry> = ({ props }) =>
  new Response(props.text, { headers: { 'Content-Type': 'text/yaml; charset=utf-8' } })
