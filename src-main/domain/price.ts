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
})
export type SupplierPrice = z.infer<typeof supplierPrice>
