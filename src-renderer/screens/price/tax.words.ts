import type { Choice } from '../../parts/words.ts'
import type { TaxCategory } from '../../../src-main/domain/pricing.ts'

/** What the kinds of VAT, the parts of a quote and the ways of rounding are called. */
export const taxWords: Readonly<Record<TaxCategory, string>> = {
  standard: 'Standard rate',
  reduced: 'Reduced rate',
  zero: 'Zero rate',
  energySaving: 'Energy-saving materials',
  exempt: 'Exempt',
  reverseCharge: 'Reverse charge, standard rate',
  reverseChargeReduced: 'Reverse charge, reduced rate',
}

export const taxChoices: readonly Choice[] = Object.entries(taxWords).map(([value, label]) => ({
  value,
  label,
}))

export const sectionWords = {
  emitter: 'Radiators and towel rails',
  parts: 'Other parts',
  labour: 'Labour',
  travel: 'Travel',
  other: 'Allowance and options',
} as const

export const roundingChoices: readonly Choice[] = [
  { value: 'document', label: 'On the sum at each rate' },
  { value: 'line', label: 'Line by line' },
  { value: 'lineTenths', label: 'In tenths, then the sum' },
]

export const ruleChoices: readonly Choice[] = [
  { value: 'half-up', label: 'Half a penny up' },
  { value: 'half-down', label: 'Half a penny down' },
  { value: 'half-even', label: 'Half a penny to the even penny' },
  { value: 'up', label: 'Always up' },
  { value: 'down', label: 'Always down' },
]
