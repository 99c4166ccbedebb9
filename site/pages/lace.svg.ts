import type { APIRoute } from 'astro'
import { svgFile } from '../../components/fabric/files.ts'
import { laceOf, openingPattern } from '../../components/home/lace.ts'

export const GET: APIRoute = () => svgFile(laceOf(openingPattern()))
