import { z } from 'zod'
import { derivation } from './derivation.ts'
import { labourAnswer } from './labour.ts'
import { key, line, list, pence, record } from './schema.ts'
import { caution, tool, pipePiece } from './take-off.ts'
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

export const gap = record({ gapKey: line, says: z.string(), waived: z.string().optional() })
export type Gap = z.infer<typeof gap>

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

export const bar = record({
  stockId: key,
  cuts: list(record({ id: line, lengthMm: z.number() })),
  offcutMm: z.number(),
})

/** What goes into the van, supplier by supplier. */
export const pickList = record({
  suppliers: list(record({ supplierId: key, name: line, lines: list(pickListLine) })),
  fromBox: list(record({ name: line, quantity: z.number(), swapId: key })),
  tools: list(tool),
  pipeCuts: list(record({ name: line, bars: list(bar) })),
  missing: list(z.string()),
  lifts: list(record({ swapId: key, name: line, massKg: z.number(), says: z.string() })),
  why: derivation,
})
export type PickList = z.infer<typeof pickList>
