import { z } from 'zod'
import { derivation } from '../../domain/derivation.ts'
import { job } from '../../domain/job.ts'
import { key, line, list, record, temperatureC } from '../../domain/schema.ts'
import { query } from '../request.ts'

const finite = z.number()
const whole = z.int().gte(0)

const asked = {
  /** Flow less return; absent, as far apart as the survey has them. */
  spreadK: z.number().gte(0.01).lte(50).optional(),
  /** The highest flow to look at; 75 when absent. */
  maxFlowC: temperatureC.optional(),
}

const roomState = record({
  roomId: key,
  roomIndex: whole,
  name: line,
  loadW: finite,
  /** `rough` and `notSurveyed` back no flow temperature. */
  state: z.enum(['warm', 'short', 'noEmitters', 'needsNoHeat', 'rough', 'notSurveyed']),
  flowC: finite.optional(),
  returnC: finite.optional(),
  outputAtMaxW: finite.optional(),
  says: z.string(),
})

const reach = {
  reachable: z.boolean(),
  /** Of the worst room that is judged. */
  flowC: finite.optional(),
  worstRoom: line.optional(),
  roomsShort: whole,
  shortW: finite,
}

const house = record({
  ...reach,
  backed: z.boolean(),
  /** The house's own; only where every room backs it. */
  houseFlowC: finite.optional(),
  houseReturnC: finite.optional(),
  rooms: list(roomState),
  says: z.string(),
})

export const jobFlow = query('job.flow', {
  doc: "The flow temperature that each room of a job needs, worst first, before and after its swaps, and each swap's effect.",
  input: z.union([record({ job, ...asked }), record({ jobId: key, ...asked })]),
  output: record({
    spreadK: finite,
    maxFlowC: finite,
    before: house,
    after: house,
    lowersK: finite.optional(),
    swaps: list(
      record({
        rank: z.int().gte(1),
        swapId: key,
        roomId: key,
        name: z.string(),
        roomName: line,
        roomBeforeC: finite.optional(),
        roomAfterC: finite.optional(),
        after: record(reach),
        lowersK: finite.optional(),
        says: z.string(),
        tie: record({ with: list(z.string()), says: z.string() }).optional(),
      }),
    ),
    notJudged: list(record({ swapId: key, roomId: key, name: z.string(), says: z.string() })),
    /** What the whole house needs, as `house.heat` adds it up. */
    heat: record({
      watts: finite,
      sourceW: finite,
      roughW: finite,
      rough: z.boolean(),
      warnings: list(z.string()),
    }),
    /** What stood in for figures that nobody surveyed. */
    assumed: list(z.string()),
    says: z.string(),
    why: derivation,
  }),
})
