import { z } from 'zod'
import { basisPoints, key, line, list, pricePence, record } from './schema.ts'
import { takeOffKind } from './take-off.ts'

/**
 * What tax a line bears. `reverseCharge` is the standard rate and `reverseChargeReduced` the reduced one, paid to the
 * tax office by the customer. `energySaving` has a dated rate of its own. None but `standard` is ever chosen for anybody.
 */
export const taxCategory = z.enum([
  'standard',
  'reduced',
  'zero',
  'energySaving',
  'exempt',
  'reverseCharge',
  'reverseChargeReduced',
])
export type TaxCategory = z.infer<typeof taxCategory>

/** What happens to the part of a penny that is left; the same for a charge and for its refund. */
export const roundingRule = z.enum(['half-up', 'half-down', 'half-even', 'up', 'down'])

/**
 * `line`: each line's tax is rounded, then added. `document`: each rate's lines are added, then taxed once. `lineTenths`: each
 * line's tax is rounded down to a tenth of a penny and added, and the sum at each rate is then rounded to a whole penny.
 */
export const taxRounding = z.enum(['document', 'line', 'lineTenths'])
export type TaxRounding = z.infer<typeof taxRounding>

const discountOf = z.enum(['all', 'parts', 'labour'])

/** Something taken off the price, as a line of its own. A share is of the lines before any discount. */
export const discount = z.discriminatedUnion('kind', [
  record({
    kind: z.literal('percent'),
    name: line,
    basisPoints: basisPoints.gt(0).lte(10_000),
    of: discountOf.optional(),
    /** Of the lines that stand for swaps of this room alone. */
    roomId: key.optional(),
  }),
  record({
    kind: z.literal('amount'),
    name: line,
    pence: pricePence.gt(0),
    of: discountOf.optional(),
    roomId: key.optional(),
  }),
])
export type Discount = z.infer<typeof discount>

/** How one kind of part is priced: by mark-up on its cost, or by margin as a share of its price; never by both. */
export const categoryPrice = record({
  of: z.enum([...takeOffKind.options, 'parts']),
  by: z.enum(['markUp', 'margin']),
  basisPoints,
})
export type CategoryPrice = z.infer<typeof categoryPrice>

/** How a job's price and tax are made up, where that differs from the firm's usual way. */
export const pricing = record({
  /** `reverseCharge`: whatever bears the standard or the reduced rate is taxed by reverse charge. */
  taxTreatment: z.enum(['usual', 'reverseCharge']),
  rounding: taxRounding,
  /** Halves up when absent. */
  rule: roundingRule.optional(),
  /** By the id of a line, by kind of part, or by section of the quote; the narrower goes before the wider. */
  lineCategories: z.record(key, taxCategory).readonly().optional(),
  /** Of one part, by the key of its line in the parts list, which stays the same when others come and go; before all others. */
  partCategories: z.record(line, taxCategory).readonly().optional(),
  discounts: list(discount, 20).optional(),
  markUps: list(categoryPrice, 30).optional(),
})
export type Pricing = z.infer<typeof pricing>

/** The words that a document with a reverse charge must hold: that it is one, and who pays. */
export const reverseChargeWording = 'Reverse charge: customer to pay the VAT to HMRC'
