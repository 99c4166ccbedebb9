import { z } from 'zod'

// The pages refuse code that is made from text, and each schema asks once, when it is made, whether it may: so this comes
// before the schemas do, and they come in a part of their own.
z.config({ jitless: true })
void import('./make-class.ts')
