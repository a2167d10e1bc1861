import { z } from 'zod'
import { derivation } from '../domain/derivation.ts'
import { emitter } from '../domain/item.ts'
import { job, room, survey, valveChoice } from '../domain/job.ts'
import { distanceMm, key, list, pence, record, sizeMm, temperatureC } from '../domain/schema.ts'
import { centreChoice, existingEmitter, pipe, wall } from '../domain/wall.ts'
import { query } from './request.ts'

/** How many of the dearer and of the refused ones can be told one by one. */
const mostOneByOne = 10_000

/** What the customer asked for; absent: anything. */
const want = record({
  kind: z.enum(['panel', 'column', 'towelRail']).optional(),
  finish: emitter.unwrap().shape.finish.optional(),
  maxHeightMm: sizeMm.optional(),
  maxWidthMm: sizeMm.optional(),
})

const asked = {
  /** In place of the survey's flow temperature. */
  flowC: temperatureC.optional(),
  /** Flow less return; absent, as far apart as the survey has them. */
  spreadK: z.number().gt(0).lte(60).optional(),
  want: want.optional(),
  /** How many to price and show; 10 when absent. */
  most: z.int().gte(1).lte(100).optional(),
  /**
   * How many of the dearer and how many of the refused ones to tell one by one; 500 of each when absent. All are looked at and
   * counted however many are told.
   */
  mostTold: z.int().gte(0).lte(mostOneByOne).optional(),
  /** Only those that a search of the catalogue for these words finds, the nearest 1000 of them. */
  text: z.string().max(200).optional(),
  /** One emitter to tell about, with every reason against it, wherever it stands. */
  about: key.optional(),
}

const place = {
  pipes: list(pipe, 4).optional(),
  existing: existingEmitter.optional(),
  /** Absent: between two pipes, from the only one, or the middle of the wall. */
  centre: centreChoice.optional(),
  bottomMm: distanceMm.optional(),
  valves: valveChoice.optional(),
}

const about = ['heat', 'wall', 'obstacle', 'wanted', 'price', 'listing'] as const

/** Why an emitter is not offered: what it is about, and in words. */
const refusal = record({ about: z.enum(about), says: z.string() })
const reasons = list(refusal, 300)

const named = {
  itemId: key,
  name: z.string(),
  widthMm: sizeMm,
  heightMm: sizeMm,
  generic: z.boolean(),
  givesW: z.number(),
}

const ranked = record({
  ...named,
  rank: z.int(),
  kind: z.enum(['panel', 'column', 'towelRail']),
  /** What it gives beyond the need. */
  spareW: z.number(),
  /** Emitter, parts and labour of this swap done alone, before tax. */
  fittedPence: pence,
  emitterPence: pence,
  partsPence: pence,
  labourPence: pence,
  labourMin: z.number(),
  /** What the catalogue cannot supply, and so is not in the price. */
  gaps: list(z.string()),
  warnings: list(z.string()),
  /** Why it stands before the next one, where both cost the same. */
  tie: z.string().optional(),
  why: derivation,
})

export const emitterChoose = query('emitter.choose', {
  doc: 'Every emitter of the catalogue for one place on a wall: the cheapest fitted first, the nearest of the dearer and of those that do not suit with the reasons, and all of them counted.',
  input: z.union([
    record({ job, roomId: key, wallId: key, swapId: key.optional(), ...asked }),
    record({ room, wall, survey, ...place, ...asked }),
  ]),
  output: record({
    needW: z.number(),
    /** What the room's other emitters give. */
    othersW: z.number(),
    rough: z.boolean(),
    flowC: z.number(),
    returnC: z.number(),
    /** How many were looked at: ranked, dearer and refused together. */
    looked: z.int(),
    ranked: list(ranked, 100),
    /** Those that suit as well and cost more, with the least that they can cost, cheapest first: the first `mostTold` of them. */
    dearer: list(record({ ...named, leastPence: pence }), mostOneByOne),
    /** Fewest reasons first, then the most heat: the first `mostTold` of them. */
    refused: list(record({ ...named, reasons }), mostOneByOne),
    /** All that are dearer, all that are refused, and how many of those have at least one reason of each kind. */
    counted: record({
      dearer: z.int(),
      refused: z.int(),
      ...(Object.fromEntries(about.map((kind) => [kind, z.int()])) as Record<
        (typeof about)[number],
        z.ZodInt
      >),
    }),
    /** How the one stands that was asked about; its reasons are none unless it is refused. */
    asked: record({ ...named, stands: z.enum(['ranked', 'dearer', 'refused']), reasons }).optional(),
    /** False when there was too much to work up to be sure that none is cheaper. */
    certain: z.boolean(),
    notes: list(z.string()),
    why: derivation,
  }),
})
