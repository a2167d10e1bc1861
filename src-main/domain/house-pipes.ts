import { z } from 'zod'
import { key, line, list, record } from './schema.ts'

/** What hangs at the end of a run: the new emitter of a swap, or what stays in a room. */
export const runEnd = z.union([record({ swapId: key }), record({ roomId: key })])
export type RunEnd = z.infer<typeof runEnd>

/** A run of pipe, flow and return together, that carries all that hangs on it. */
export const pipeLeg = record({
  legId: key,
  name: line,
  /** The run that feeds it; null where it comes from the boiler. */
  from: key.nullable(),
  /** Absent where it ends at a branch. */
  to: runEnd.optional(),
  /** Flow and return together; absent until it is measured. */
  lengthM: z.number().gt(0).lte(10_000).optional(),
  insideMm: z.number().gt(0).lte(500),
  /** The zetas of its fittings, added up. */
  zeta: z.number().gte(0).lte(1000).optional(),
})
export type PipeLeg = z.infer<typeof pipeLeg>

/** The pipes of a house and its lockshields, for the balancing. */
export const housePipes = record({
  legs: list(pipeLeg, 200),
  /** The table of the lockshield that each emitter gets, from closed to open, as its maker gives it. */
  lockshield: record({
    table: list(
      record({ turns: z.number().gte(0).lte(1000), kvM3PerH: z.number().gte(0).lte(10_000) }),
      50,
      1,
    ),
  }).optional(),
})
export type HousePipes = z.infer<typeof housePipes>
