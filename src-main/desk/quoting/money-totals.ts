import { refuse } from '../../domain/outcome.ts'
import type { TaxCategory } from '../../domain/pricing.ts'
import { moneyTotals as totalsOf } from '../../engine/money/money-totals.ts'
import { taxSettingOf } from '../../engine/money/tax-rates.ts'
import type { UseCase } from '../desk.ts'
import { deliveredSettings, figuresInForce } from '../figures-in-force.ts'

/** Totals of some lines at the rates of a day. Refused for a day on which a rate is not known. */
export const moneyTotals: UseCase<'money.totals'> = async (input, desk) => {
  for (const [at, { category }] of input.lines.entries()) {
    const from = knownFrom(category)
    if (from !== null && input.on < from) {
      const message = `The rate of ${category} is known from ${from} on, not on ${input.on}; give a day from then on.`
      return refuse('invalid', message, `lines[${at}].category`)
    }
  }
  const figures = await figuresInForce(desk, input.on)
  return figures.ok ? totalsOf(input, figures.value) : figures
}

/** The first day on which the rate of a category is known; null where it needs none. */
function knownFrom(category: TaxCategory): string | null {
  const id = taxSettingOf(category)
  const days = deliveredSettings
    .filter((setting) => setting.id === id)
    .flatMap((setting) => setting.values.map((value) => value.from))
  return days.toSorted()[0] ?? null
}
