import { z } from 'zod'
import { addressLines, customer, firm, priceDetail } from './firm.ts'
import {
  count,
  day,
  distanceMm,
  heatW,
  key,
  line,
  litres,
  list,
  note,
  optionalLine,
  pricePence,
  record,
  temperatureC,
} from './schema.ts'
import { quickRoomEntry } from './quick-room.ts'
import { surveyedHeat } from './room-heat.ts'
import { centreChoice, existingEmitter, pipe, wall } from './wall.ts'
import { figureOverrides } from './figures.ts'
import { pricing } from './pricing.ts'
import { housePipes } from './house-pipes.ts'

export const roomUse = z.enum([
  'bathroom',
  'bedroom',
  'living',
  'kitchen',
  'hall',
  'dining',
  'study',
  'utility',
  'toilet',
  'other',
])
export type RoomUse = z.infer<typeof roomUse>

/** What the feet stand on, which decides how it is protected. */
export const floorCover = z.enum(['tile', 'carpet', 'timber', 'vinyl', 'bare'])

/** A photo taken in a room. Its picture lies in the data folder, under the job and this id. */
export const roomPhoto = record({ photoId: key, caption: optionalLine.optional() })
export type RoomPhoto = z.infer<typeof roomPhoto>

export const room = record({
  roomId: key,
  name: line,
  use: roomUse,
  roomC: temperatureC,
  storey: z.int().gte(-2).lte(30),
  floor: floorCover,
  heat: surveyedHeat,
  /** Heat that other emitters, which stay, give this room at the job's flow temperature. */
  otherEmittersW: heatW.or(z.literal(0)).optional(),
  /** The room holds the thermostat that runs the system, or its emitter is the system's bypass. */
  holdsThermostat: z.boolean().optional(),
  walls: list(wall, 12),
  /** There is no room to stand close to the wall and work. */
  tightAccess: z.boolean().optional(),
  /** The quick answers from which the heat was made; `byHand` once its elements were changed one by one, and these no longer count. */
  quick: record({ entry: quickRoomEntry, byHand: z.boolean().optional() }).optional(),
  photos: list(roomPhoto, 60).optional(),
  note: note.optional(),
})
export type Room = z.infer<typeof room>

export const valveChoice = record({
  kind: z.enum(['thermostaticAndLockshield', 'manualPair', 'keep']),
  finish: z.enum(['chrome', 'white', 'black', 'brass']),
})
export type ValveChoice = z.infer<typeof valveChoice>

/** One emitter for another on one wall. */
export const swap = record({
  swapId: key,
  roomId: key,
  wallId: key,
  existing: existingEmitter.optional(),
  pipes: list(pipe, 4),
  /** The catalogue's emitter that goes up. */
  emitterId: key,
  valves: valveChoice,
  centre: centreChoice,
  bottomMm: distanceMm,
  /** A heating element in a towel rail, wired by a qualified electrician. */
  elementW: z.number().gt(0).lte(3000).optional(),
  /** Things a person may set that change the output, each with its reason. */
  factors: list(record({ name: line, value: z.number().gt(0).lte(1.5) }), 10).optional(),
  note: note.optional(),
})
export type Swap = z.infer<typeof swap>

export const system = record({
  flowC: temperatureC,
  returnC: temperatureC,
  kind: z.enum(['sealed', 'openVented']),
  /** Water in the whole system; absent when not surveyed. */
  contentLitres: litres.gt(0).optional(),
  boilerKW: z.number().gt(0).lte(200).optional(),
  drain: z.enum(['wholeSystem', 'isolatedPart', 'freeze']),
  /** The share of the system's water that is let out, when only a part is isolated. */
  drainedShare: z.number().gt(0).lte(1).optional(),
  flush: z.boolean(),
})
export type System = z.infer<typeof system>

export const survey = record({
  surveyedOn: day,
  surveyedBy: line.optional(),
  outsideC: temperatureC,
  system,
  builtYear: z.int().gte(1000).lte(2100).optional(),
  /** Children, or people who would not pull back from a hot surface. */
  frailOrChildren: z.boolean().optional(),
  hotWork: z.boolean().optional(),
  /** People live in the house while the work goes on. */
  occupied: z.boolean().optional(),
  notes: note.optional(),
})
export type Survey = z.infer<typeof survey>

/** A piece of work offered beside the job at a fixed price; outside the total until chosen. */
export const jobOption = record({
  optionId: key,
  name: line,
  netPence: pricePence,
  taxKey: key.optional(),
  chosen: z.boolean(),
})
export type JobOption = z.infer<typeof jobOption>

/** A gap in the parts list that the user lets stand, with the reason. */
export const waiver = record({ gapKey: line, reason: line })

/**
 * A gap in the parts list filled by hand: with an item of the catalogue, or with a thing by its name and what one of the line's
 * unit (one piece, a metre, a litre) costs before tax. It counts as long as there is a gap.
 */
export const fill = z.union([
  record({ gapKey: line, itemId: key }),
  record({ gapKey: line, name: line, netCostPence: pricePence }),
])
export type Fill = z.infer<typeof fill>

/**
 * A line changed by hand, with a written reason: how many, which item, or what it is sold for before tax. A part is named by the key
 * of its line in the parts list; any other line, whose price alone can be changed, by its id in the quote.
 */
export const override = record({
  lineKey: line,
  quantity: z.number().gt(0).lte(100_000).optional(),
  itemId: key.optional(),
  netPence: pricePence.optional(),
  reason: line,
})
export type Override = z.infer<typeof override>

/** How far a job has come. A job that does not say so is being surveyed. */
export const jobStage = z.enum(['surveying', 'quoted', 'accepted', 'done', 'lost'])
export type JobStage = z.infer<typeof jobStage>

export const jobFileFormat = 'tailpiece.job'

/** One surveyed job: the open form in which jobs are read, written and passed on. */
export const job = record({
  format: z.literal(jobFileFormat),
  version: z.literal(1),
  jobId: key,
  title: line,
  createdOn: day,
  /** The day the quote is dated; today when absent. */
  quotedOn: day.optional(),
  reference: line.optional(),
  stage: jobStage.optional(),
  /** Put away: not in the list of jobs unless it is asked for. */
  archived: z.boolean().optional(),
  firm: firm.optional(),
  customer,
  site: record({
    addressLines,
    travelKm: z.number().gte(0).lte(2000).optional(),
    upperFloors: count.optional(),
  }),
  survey,
  /** The pipes, where they were surveyed for the balancing. */
  house: housePipes.optional(),
  rooms: list(room, 200),
  swaps: list(swap, 200),
  options: list(jobOption, 50).optional(),
  waivers: list(waiver, 200).optional(),
  fills: list(fill, 200).optional(),
  overrides: list(override, 200).optional(),
  pricing: pricing.optional(),
  /** How this job's quote shows its price; the firm's way when absent. */
  priceDetail: priceDetail.optional(),
  /** The firm's own figures in place of the defaults, for this job. */
  figures: figureOverrides.optional(),
}).meta({ id: 'Job', title: 'Tailpiece job file' })
export type Job = z.infer<typeof job>
