import { z } from 'zod'
import { numberPattern } from './follow-up/quote-life.ts'
import { line, list, note, optionalLine, record } from './schema.ts'

/** A postal address, line by line as it is printed. */
export const addressLines = list(line, 8)

/** How much of the price a customer is shown: the total alone, a sum for each room, or every line. */
export const priceDetail = z.enum(['total', 'rooms', 'lines'])
export type PriceDetail = z.infer<typeof priceDetail>

/** Who the quote is from. */
export const firm = record({
  name: line,
  addressLines,
  phone: optionalLine.optional(),
  email: optionalLine.optional(),
  taxNumber: optionalLine.optional(),
  /** Registrations and memberships, as the firm wants them printed. */
  registrations: list(line, 10).optional(),
  logo: record({
    mediaType: z.enum(['image/png', 'image/jpeg', 'image/svg+xml']),
    base64: z.base64().max(3_000_000),
  }).optional(),
  terms: note.optional(),
  /** How its quotes are numbered; `Q-{year}-{nnnn}` when absent. */
  quoteNumbers: numberPattern.optional(),
  /** What prices are in. */
  currency: z.literal('GBP').optional(),
  /** Which unit of heat is read first; watts when absent. Sizes are always in millimetres. */
  heatFirst: z.enum(['W', 'BtuPerHour']).optional(),
  /** How its quotes show their price; every line when absent. */
  priceDetail: priceDetail.optional(),
})
export type Firm = z.infer<typeof firm>

export const customer = record({
  name: line,
  addressLines,
  phone: optionalLine.optional(),
  email: optionalLine.optional(),
})
export type Customer = z.infer<typeof customer>
