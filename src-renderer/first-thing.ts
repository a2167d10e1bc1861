import { z } from 'zod'

// Without this zod tries to compile its checks, which the window's content policy forbids.
z.config({ jitless: true })
