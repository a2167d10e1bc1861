import { z } from 'zod'
import { derivation } from '../domain/derivation.ts'
import { count, line, list, pence, pricePence, record, sizeMm } from '../domain/schema.ts'
import { bar } from '../domain/quote.ts'
import { query } from './request.ts'

const quantity = z.number().gt(0).lte(1_000_000)

export const packsCover = query('packs.cover', {
  doc: 'The cheapest packs that cover a need; then the least left over; then the fewest packs.',
  input: record({
    need: quantity,
    packs: list(record({ id: line, holds: quantity, pence: pricePence }), 50, 1),
  }),
  output: record({
    picks: list(record({ id: line, count: z.int() })),
    pence,
    leftover: z.number(),
    why: derivation,
  }),
})

export const pipeCut = query('pipe.cut', {
  doc: 'How to cut the pieces from stock lengths for the least money, the saw cut counted.',
  input: record({
    pieces: list(record({ id: line, lengthMm: sizeMm, count: count.gte(1).lte(1000) }), 200, 1),
    stock: list(record({ id: line, lengthMm: sizeMm, pence: pricePence }), 20, 1),
    kerfMm: z.number().gte(0).lte(50),
  }),
  output: record({
    bars: list(bar),
    pence,
    barsUsed: z.int(),
    proved: z.boolean(),
    leastPence: pence,
    says: z.string(),
    why: derivation,
  }),
})
