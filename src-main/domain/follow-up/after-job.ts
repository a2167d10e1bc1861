import { z } from 'zod'
import { derivation } from '../derivation.ts'
import { unit } from '../item.ts'
import { taxCategory } from '../pricing.ts'
import { taxTotal } from '../quote.ts'
import { count, day, key, line, list, note, optionalLine, pence, pricePence, record } from '../schema.ts'

const quantity = z.number().gte(0).lte(1_000_000)
const bar = z.number().gte(0).lte(20)

/** What one kind of task took on this job: minutes of all people together, for so many of it. */
export const actualTask = record({
  taskId: key,
  name: line,
  count: z.number().gt(0).lte(10_000),
  minutes: z.number().gte(0).lte(100_000),
  /** How many times the plain minutes this job was reckoned to take: walls, floors, people, the house. Written at its closing. */
  slowerRatio: z.number().gt(0).lte(1000).optional(),
})
export type ActualTask = z.infer<typeof actualTask>

/** What became of one thing that was bought or taken along. What is left over may go back to the van. */
export const actualPart = record({
  itemId: key.optional(),
  name: line,
  unit,
  planned: quantity,
  used: quantity,
  backToVan: quantity.optional(),
  says: optionalLine.optional(),
})
export type ActualPart = z.infer<typeof actualPart>

/** Something that the customer asked for, or agreed to, after the quote was accepted. */
export const variation = record({
  variationId: key,
  onDay: day,
  what: line,
  /** How the customer agreed, in a word and in their words. */
  agreed: z.enum(['inWriting', 'spoken']),
  said: note,
  /** Before tax; less than nothing where work falls away. */
  netPence: z.int().gte(-1_000_000_00).lte(1_000_000_00),
  rateKey: taxCategory,
})
export type Variation = z.infer<typeof variation>

/** What was done and measured before the system was handed over. */
export const commissioning = record({
  onDay: day,
  by: line,
  flush: record({ how: z.enum(['none', 'water', 'power', 'cleaner']), says: note.optional() }),
  dose: record({
    product: optionalLine,
    litres: z.number().gte(0).lte(1000),
    testedGood: z.boolean().optional(),
  }),
  /** Pressures in bar: what the system was tested at and for how long, and what the gauge said at the end. */
  pressureTest: record({
    testBar: bar,
    minutes: z.number().gte(0).lte(10_000),
    endBar: bar,
    coldFillBar: bar.optional(),
  }),
  /** One line an emitter: temperatures in degrees Celsius, the lockshield's turns from shut. */
  balancing: list(
    record({
      swapId: key,
      roomName: line,
      flowC: z.number().gte(0).lte(110).optional(),
      returnC: z.number().gte(0).lte(110).optional(),
      turnsOpen: z.number().gte(0).lte(20).optional(),
    }),
    200,
  ),
  leaksLookedFor: z.boolean(),
  fillingLoopOff: z.boolean(),
  notes: note.optional(),
})
export type Commissioning = z.infer<typeof commissioning>

/** A promise that the customer is given: on the emitter, the valves, the work. */
export const guarantee = record({ what: line, until: day, says: optionalLine.optional() })
export type Guarantee = z.infer<typeof guarantee>

/** What really happened on the job of an accepted quote. */
export const afterJob = record({
  tasks: list(actualTask, 500),
  parts: list(actualPart, 2000),
  variations: list(variation, 200),
  commissioning: commissioning.optional(),
  guarantees: list(guarantee, 50).optional(),
  paidPence: pricePence.optional(),
  doneOn: day.optional(),
  notes: note.optional(),
})
export type AfterJob = z.infer<typeof afterJob>

/** The final account: the accepted quote, what was agreed since, and what is still to pay. */
export const finalAccount = record({
  quoteNetPence: pence,
  quoteGrossPence: pence,
  variations: list(
    record({
      variationId: key,
      what: line,
      onDay: day,
      netPence: pence,
      rateKey: taxCategory,
    }),
  ),
  variationsNetPence: pence,
  netPence: pence,
  taxes: list(taxTotal),
  grossPence: pence,
  paidPence: pence,
  toPayPence: pence,
  /** Quoted against real, for the firm alone: minutes of all people together, and what parts were left over. */
  internal: record({
    quotedMin: z.number(),
    realMin: z.number(),
    parts: list(record({ name: line, unit, planned: z.number(), used: z.number(), over: z.number() })),
  }),
  why: derivation,
})
export type FinalAccount = z.infer<typeof finalAccount>

/** What a firm's own jobs taught about a task. */
export const learnedTask = record({
  taskId: key,
  name: line,
  jobs: count,
  priorMin: z.number(),
  expectedMin: z.number(),
  fromMin: z.number(),
  toMin: z.number(),
  why: derivation,
})
export type LearnedTask = z.infer<typeof learnedTask>
