import { z } from 'zod'
import { derivation } from '../domain/derivation.ts'
import { roundingRule, taxCategory, taxRounding } from '../domain/pricing.ts'
import { taxTotal } from '../domain/quote.ts'
import { day, list, pence, record } from '../domain/schema.ts'
import { query } from './request.ts'

const linePence = z.int().gte(-1_000_000_00).lte(1_000_000_00)

export const moneyTotals = query('money.totals', {
  doc: 'Net, tax by category with the rates of a day, gross, and what the customer pays by reverse charge.',
  input: record({
    lines: list(record({ netPence: linePence, category: taxCategory }), 500),
    on: day,
    rounding: taxRounding,
    rule: roundingRule,
  }),
  output: record({
    netPence: pence,
    taxes: list(taxTotal),
    grossPence: pence,
    reverseChargePence: pence,
    wording: list(z.string()),
    why: derivation,
  }),
})
