import { z } from 'zod'
import { count, day, key, line, list, optionalLine, pricePence, record } from './schema.ts'

export const supplier = record({
  supplierId: key,
  name: line,
  note: optionalLine.optional(),
  carriagePence: pricePence,
  carriageFreeFromPence: pricePence.optional(),
  minimumOrderPence: pricePence.optional(),
})
export type Supplier = z.infer<typeof supplier>

/** What a supplier asks for one pack of an item, from a day on, before tax. */
export const supplierPrice = record({
  itemId: key,
  supplierId: key,
  code: line,
  /** How much one pack holds, in the item's unit (12 for a 12 m roll). */
  packHolds: z.number().gt(0).lte(100_000),
  packPence: pricePence,
  breaks: list(record({ fromPacks: count.gte(2), packPence: pricePence }), 20).optional(),
  validFrom: day,
  validTo: day.optional(),
  /** The day of the supplier's last list that still had it, when that is later than the day it began. */
  confirmedOn: day.optional(),
})
export type SupplierPrice = z.infer<typeof supplierPrice>

/** The day from which a price's age counts: when it began, or when the supplier last confirmed it, whichever is later. */
export function trustedFrom({
  validFrom,
  confirmedOn = validFrom,
}: Pick<SupplierPrice, 'validFrom' | 'confirmedOn'>): string {
  return confirmedOn > validFrom ? confirmedOn : validFrom
}
