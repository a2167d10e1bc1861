import { z } from 'zod'
import { derivation } from './derivation.ts'
import { labourAnswer } from './labour.ts'
import { key, line, list, pence, record } from './schema.ts'
import { caution, tool, pipePiece, takeOffKind } from './take-off.ts'
import { unit } from './item.ts'
import { roundingRule, taxRounding } from './pricing.ts'

export const taxTotal = record({
  rateKey: key,
  rateName: line,
  basisPoints: z.int(),
  netPence: pence,
  taxPence: pence,
  /** Under reverse charge: the tax that the customer pays to the tax office. It is in no total. */
  toAccountFor: record({ basisPoints: z.int(), pence }).optional(),
})
export type TaxTotal = z.infer<typeof taxTotal>

export const totals = record({
  netPence: pence,
  taxes: list(taxTotal),
  grossPence: pence,
  depositPence: pence,
  /** By document, halves up, when absent. */
  rounding: taxRounding.optional(),
  rule: roundingRule.optional(),
  /** All tax that the customer accounts for by reverse charge; absent when there is none. */
  reverseChargePence: pence.optional(),
})
export type Totals = z.infer<typeof totals>

/** What a part was before a person changed it: its name and how many were needed. */
const partWas = { name: line.optional(), quantity: z.number().optional() }

/** One priced line. Its `why` is for the firm alone: it shows cost and mark-up, and no customer document prints it. */
export const quoteLine = record({
  lineId: key,
  section: z.enum(['emitter', 'parts', 'labour', 'travel', 'other']),
  name: line,
  quantity: z.number(),
  unit: z.union([unit, z.enum(['min', 'km', 'sum'])]),
  netPence: pence,
  rateKey: key,
  /** The line's own tax, where tax is rounded by line. */
  taxPence: pence.optional(),
  shared: z.boolean(),
  swapIds: list(key),
  generic: z.boolean(),
  /** Bought at a price that began longer ago than the firm's limit, and that in words; for the firm alone. */
  stale: z.literal(true).optional(),
  staleSays: z.string().optional(),
  /** The line of the parts list that it is, by which it is filled and overridden; `filled` says what the catalogue lacked. */
  part: record({
    lineKey: line,
    itemKind: takeOffKind,
    itemId: key.optional(),
    filled: z.string().optional(),
  }).optional(),
  /** What it was before a person changed it. */
  was: record({ ...partWas, netPence: pence.optional() }).optional(),
  why: derivation,
})
export type QuoteLine = z.infer<typeof quoteLine>

export const quoteOption = record({
  optionId: key,
  name: line,
  netPence: pence,
  rateKey: key,
  /** Tax that would be charged if it were chosen. */
  taxPence: pence.optional(),
  chosen: z.boolean(),
})

export const gap = record({
  gapKey: line,
  says: z.string(),
  waived: z.string().optional(),
  /** What is missing and how much of it, for whoever fills the gap. */
  itemKind: takeOffKind.optional(),
  quantity: z.number().optional(),
  unit: unit.optional(),
})
export type Gap = z.infer<typeof gap>

/** One length of pipe: the code it is bought by, or the van, and what is cut from it. */
export const bar = record({
  stockId: line,
  cuts: list(record({ id: line, lengthMm: z.number() })),
  offcutMm: z.number(),
})
export type Bar = z.infer<typeof bar>

/** What one line of the job is bought as: from whom, in which packs, and what is left over. Never for the customer. */
export const purchase = record({
  lineId: key,
  itemId: key,
  name: line,
  supplierId: key,
  supplierName: line,
  unit,
  need: z.number(),
  packs: list(record({ code: line, holds: z.number(), count: z.int(), packPence: pence })),
  leftover: z.number(),
  costPence: pence,
  pieces: list(pipePiece).optional(),
  /** How the pieces are cut from what is bought. */
  bars: list(bar).optional(),
  /** A thing that no catalogue has, named and priced by hand. */
  oneOff: z.literal(true).optional(),
  why: derivation,
})
export type Purchase = z.infer<typeof purchase>

/** What each swap does to its room's warmth. */
export const warmth = record({
  swapId: key,
  roomName: line,
  needW: z.number(),
  givesW: z.number(),
  rough: z.boolean(),
  enough: z.boolean(),
  says: z.string(),
  why: derivation,
})

export const quote = record({
  lines: list(quoteLine),
  options: list(quoteOption),
  labour: labourAnswer,
  totals,
  gaps: list(gap),
  cautions: list(caution),
  tools: list(tool),
  warmth: list(warmth),
  internal: record({
    costPence: pence,
    marginPence: pence,
    labourCostPence: pence,
    purchases: list(purchase),
  }),
  why: derivation,
})
export type Quote = z.infer<typeof quote>

export const pickListLine = record({
  itemId: key,
  name: line,
  code: line,
  packs: z.int(),
  packHolds: z.number(),
  unit,
  need: z.number(),
  leftover: z.number(),
  generic: z.boolean(),
  massKg: z.number().optional(),
})

/** What one supplier alone would cost, or why that can't be done. */
export const oneSupplier = record({
  supplierId: key,
  name: line,
  goodsPence: pence.optional(),
  carriagePence: pence.optional(),
  totalPence: pence.optional(),
  cannot: z.string().optional(),
})

/** An order as a split over suppliers makes it: goods, carriage, and what is missing to come free of it. */
const order = {
  goodsPence: pence.optional(),
  carriagePence: pence.optional(),
  shortOfFreePence: pence.optional(),
}

/** What goes into the van, supplier by supplier. */
export const pickList = record({
  suppliers: list(record({ supplierId: key, name: line, lines: list(pickListLine), ...order })),
  /** What the van has already, so that nobody buys it. */
  fromVan: list(record({ itemId: key, name: line, quantity: z.number().gt(0), unit })).optional(),
  /** How the orders came about, where they were split with carriage and minimum orders in mind. */
  split: record({
    goodsPence: pence,
    carriagePence: pence,
    totalPence: pence,
    /** False when the time limit came first. */
    proved: z.boolean(),
    says: z.string(),
    oneSupplier: list(oneSupplier),
  }).optional(),
  fromBox: list(record({ name: line, quantity: z.number(), swapId: key })),
  tools: list(tool),
  pipeCuts: list(record({ name: line, bars: list(bar) })),
  missing: list(z.string()),
  lifts: list(record({ swapId: key, name: line, massKg: z.number(), says: z.string() })),
  why: derivation,
})
export type PickList = z.infer<typeof pickList>
