import { z } from 'zod'
import { derivation } from './derivation.ts'
import { key, line, list, note, record } from './schema.ts'

const minutes = z.number().gte(0).lte(100_000)

export const labourTask = record({
  name: line,
  count: z.number().gte(0).lte(10_000),
  optimisticMin: minutes,
  likelyMin: minutes,
  pessimisticMin: minutes,
  /** Where its minutes are from: delivered, or learnt from the firm's own jobs. */
  source: z.string().max(400).optional(),
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

/** What makes a task longer, by name: `times` multiplies it, `adds` puts a task beside it, `whole` multiplies the whole job. */
export const modifier = record({
  name: line,
  how: z.enum(['times', 'adds', 'whole']),
  factor: z.number(),
  reason: note,
})
export type Modifier = z.infer<typeof modifier>

/** One task of a job. `howMany` before what makes it longer, `count` after it; minutes are of all people together. */
export const jobTask = record({
  taskId: key,
  name: line,
  howMany: z.number(),
  count: z.number(),
  expectedMin: z.number(),
  sdMin: z.number(),
  modifiers: list(modifier),
  why: derivation,
})
export type JobTask = z.infer<typeof jobTask>

/** One thing to lift, what the guideline expects of one person and of two, and how many it takes. */
export const lift = record({
  swapId: key,
  how: z.enum(['carryIn', 'hang', 'carryOut']),
  name: line,
  massKg: z.number(),
  oneKg: z.number(),
  twoKg: z.number(),
  people: z.int(),
  /** Heavier than two people should lift by the guideline. */
  needsAid: z.boolean(),
  why: derivation,
})
export type Lift = z.infer<typeof lift>

export const crew = record({
  people: z.int(),
  lifts: list(lift),
  /** What nobody weighed, so that nothing is known of its lift. */
  notWeighed: list(note),
  /** Time on the clock that two share, and that one works alone. */
  togetherMin: z.number(),
  aloneMin: z.number(),
  /** A sentence when a lift is more than two people should do by the guideline. */
  aid: note.optional(),
  why: derivation,
})
export type Crew = z.infer<typeof crew>

export const days = record({
  /** Time on site by the clock, without travel: even odds, and what four jobs in five stay under. */
  p50SiteMin: z.number(),
  p80SiteMin: z.number(),
  dayMin: z.number(),
  p50Days: z.int(),
  p80Days: z.int(),
  /** Travel of the days after the first, at `p80Days`; it is not in the job's minutes. */
  furtherTravelMin: z.number(),
  why: derivation,
})
export type Days = z.infer<typeof days>

export const jobLabour = record({
  tasks: record({
    rooms: list(record({ roomId: key, name: line, expectedMin: z.number(), tasks: list(jobTask) })),
    shared: list(jobTask),
  }),
  modifiers: list(modifier),
  crew,
  /** Minutes of all people together: what is charged. */
  expectedMin: z.number(),
  sdMin: z.number(),
  /** From start to finish by the clock, with the travel of one day. */
  p50Min: z.number(),
  p80Min: z.number(),
  days,
  why: derivation,
})
export type JobLabour = z.infer<typeof jobLabour>

/** What was thought of a task before it was ever timed: three points, or mean and standard deviation. */
export const taskPrior = z.union([
  record({ optimisticMin: minutes, likelyMin: minutes, pessimisticMin: minutes }),
  record({ meanMin: minutes, sdMin: minutes }),
])
export type TaskPrior = z.infer<typeof taskPrior>

/** What one job took for so many of the task. */
export const taskActual = record({ minutes, count: z.number().gt(0).lte(10_000) })
export type TaskActual = z.infer<typeof taskActual>

export const learned = record({
  expectedMin: z.number(),
  /** How far one task of this kind lies from the next. */
  sdMin: z.number(),
  /** How sure the expected minutes are. */
  sdOfMeanMin: z.number(),
  /** The expected minutes lie in this range with odds of four in five. */
  fromMin: z.number(),
  toMin: z.number(),
  jobs: z.int(),
  count: z.number(),
  priorWeightCount: z.number(),
  why: derivation,
})
export type Learned = z.infer<typeof learned>
