import { percent, printedName, tight } from '../in-words.ts'
import type { Quote } from '../../domain/quote.ts'

/** An option that the customer may still add. */
export type OpenOption = {
  readonly name: string
  readonly netPence: number
  readonly grossPence: number
}

type Rates = Readonly<Record<string, number>>

/** Options still open, with tax by their own rate rounded half up where the quote does not say it. */
export function optionsOf({ options, totals }: Quote, taxBasisPoints: Rates): readonly OpenOption[] {
  const usual = totals.taxes[0]?.rateKey
  return options
    .filter((option) => !option.chosen)
    .map(({ name, netPence, rateKey, taxPence }) => {
      const basisPoints =
        totals.taxes.find((tax) => tax.rateKey === rateKey)?.basisPoints ?? taxBasisPoints[rateKey]
      const bears = optionBears(rateKey, rateKey === usual ? undefined : basisPoints)
      if (taxPence === undefined && basisPoints === undefined)
        throw new Error(`There is no rate of tax called ${rateKey}`)
      const tax = taxPence ?? Math.floor((netPence * (basisPoints ?? 0) + 5000) / 10_000)
      return { name: printedName(name) + bears, netPence, grossPence: netPence + tax }
    })
}

/** What an option bears: a rate only where that is not the usual one of the quote's lines. */
function optionBears(rateKey: string, basisPoints: number | undefined): string {
  if (rateKey.startsWith('reverseCharge')) return ' (reverse charge)'
  if (rateKey === 'exempt') return ` (exempt${tight}from${tight}VAT)`
  return basisPoints === undefined ? '' : ` (VAT${tight}at${tight}${percent(basisPoints)})`
}
