import type { APIRoute } from 'astro'
import { type ClassEntry, classes } from '../../classes.ts'

export const getStaticPaths = () => classes.map((entry) => ({ params: { slug: entry.slug }, props: entry }))

export const GET: APIRoute<ClassEntry> = ({ props }) =>
  new Response(props.text, { headers: { 'Content-Type': 'text/yaml; charset=utf-8' } })
