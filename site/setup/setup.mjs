// `npm run setup`: installs what is missing. `npm start` and `npm test` do it by themselves.
import { orExplain, setUp } from './packages.mjs'

await orExplain(setUp)
