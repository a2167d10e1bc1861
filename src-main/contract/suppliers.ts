import { z } from 'zod'
import { derivation } from '../domain/derivation.ts'
import { unit } from '../domain/item.ts'
import { job } from '../domain/job.ts'
import { supplier } from '../domain/price.ts'
import { oneSupplier } from '../domain/quote.ts'
import { count, key, line, list, pence, pricePence, record } from '../domain/schema.ts'
import { query } from './request.ts'

const quantity = z.number().gt(0).lte(1_000_000)
/**
 * What is in the van, in each item's unit. Pipe in metres: it counts as whole lengths of the shortest that the item is sold in, so 7 m
 * of pipe sold by 3 m are two lengths, and an odd piece counts for nothing.
 */
export const inVan = list(record({ itemId: key, quantity: z.number().gte(0).lte(1_000_000) }), 1000)

const offeredPack = record({
  code: line,
  /** How much one pack holds, in the line's unit. */
  holds: z.number().gt(0).lte(100_000),
  pence: pricePence,
  breaks: list(record({ fromPacks: count.gte(2), packPence: pricePence }), 20).optional(),
})

const packBought = record({ code: line, holds: z.number(), count: z.int(), packPence: pence })

export const supplierOrder = record({
  supplierId: key,
  name: line,
  lines: list(
    record({
      lineId: key,
      itemId: key,
      packs: list(packBought),
      leftover: z.number(),
      pence,
      /** All lines that these packs are for, where there are several. */
      lineIds: list(key).optional(),
    }),
  ),
  goodsPence: pence,
  carriagePence: pence,
  totalPence: pence,
  /** How much more in goods would bring this order free of carriage. */
  shortOfFreePence: pence.optional(),
})

export const supplierSplit = record({
  orders: list(supplierOrder),
  fromVan: list(record({ lineId: key, itemId: key, quantity: z.number() })),
  /** Lines that nobody can supply; they are in none of the sums. */
  gaps: list(record({ lineId: key, itemId: key, says: z.string() })),
  goodsPence: pence,
  carriagePence: pence,
  totalPence: pence,
  /** False when the time limit came first: then it is the best found, not proved to be the cheapest. */
  proved: z.boolean(),
  says: z.string(),
  oneSupplier: list(oneSupplier),
  why: derivation,
})
export type SupplierSplit = z.infer<typeof supplierSplit>

export const buySplit = query('buy.split', {
  doc: 'The cheapest split of lines over suppliers, with carriage, free carriage and minimum orders; van stock first.',
  input: record({
    lines: list(record({ lineId: key, itemId: key, need: quantity, unit }), 500),
    offers: list(record({ lineId: key, supplierId: key, packs: list(offeredPack, 20, 1) }), 5000),
    suppliers: list(supplier, 30),
    vanStock: inVan.optional(),
  }),
  output: supplierSplit,
})

export const buyPlan = query('buy.plan', {
  doc: "The cheapest split over suppliers of what a job's parts list needs; van stock first.",
  input: record({ job, vanStock: inVan.optional() }),
  output: supplierSplit,
})
