import { z } from 'zod'
import { derivation } from './derivation.ts'
import { line, list, record } from './schema.ts'

const minutes = z.number().gte(0).lte(100_000)

export const labourTask = record({
  name: line,
  count: z.number().gte(0).lte(10_000),
  optimisticMin: minutes,
  likelyMin: minutes,
  pessimisticMin: minutes,
})
export type LabourTask = z.infer<typeof labourTask>

/** A factor on the whole job (access, parking, an occupied house), three-point like a task. */
export const sharedFactor = record({
  optimistic: z.number().gt(0).lte(10),
  likely: z.number().gt(0).lte(10),
  pessimistic: z.number().gt(0).lte(10),
})

export const labourAnswer = record({
  expectedMin: z.number(),
  sdMin: z.number(),
  p50Min: z.number(),
  p80Min: z.number(),
  tasks: list(
    record({ name: line, count: z.number(), expectedMin: z.number(), sdMin: z.number(), why: derivation }),
  ),
  why: derivation,
})
export type LabourAnswer = z.infer<typeof labourAnswer>
