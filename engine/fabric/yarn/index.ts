export type { YarnBead, YarnPart, YarnPiece, Yarn } from './yarn.ts'
export { yarnOf, type YarnOptions } from './yarn-of.ts'
