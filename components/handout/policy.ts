import { z } from 'zod'

// The pages refuse code that is made from text. Said before any schema is made: each asks once, when it is.
z.config({ jitless: true })
