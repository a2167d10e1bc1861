import { supplierPrice } from '../../domain/price.ts'
import type { SupplierPrice } from '../../domain/price.ts'
import { readRow } from '../read-row.ts'
import { fieldsFit, isLike, isListOf, isText, isWhole, isWithin } from './fields-fit.ts'

/** A price as its columns have it, before anything of it is known to be so. */
export type PriceFound = { readonly [field in keyof SupplierPrice]: unknown }

const isKey = isLike(/^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/)
const isLine = isText(1, 200)
const isPacks = isWithin({ above: 0, to: 100_000 })
const isPence = isWhole(0, 1_000_000_00)
const areBreaks = isListOf(
  fieldsFit({ must: { fromPacks: isWhole(2, 100_000), packPence: isPence }, may: {} }),
  20,
)
/** Days that every month has; the schema knows the others. */
const isPlainDay = isLike(/^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|1\d|2[0-8])$/)

/**
 * A price as the schema has it. Most begin on a day that every month has: of those a check of each field says the same as the schema,
 * sooner. All others are read by the schema.
 */
export function readPrice(found: PriceFound, what: string): SupplierPrice {
  return isPlainPrice(found) ? (found as SupplierPrice) : readRow(supplierPrice, found, what)
}

/** Whether a price is as the schema has it, on days that every month has. */
export function isPlainPrice({
  itemId,
  supplierId,
  code,
  packHolds,
  packPence,
  breaks,
  validFrom,
  validTo,
  confirmedOn,
}: PriceFound): boolean {
  return (
    isKey(itemId) &&
    isKey(supplierId) &&
    isLine(code) &&
    isPacks(packHolds) &&
    isPence(packPence) &&
    (breaks === undefined || areBreaks(breaks)) &&
    isPlainDay(validFrom) &&
    (validTo === undefined || isPlainDay(validTo)) &&
    (confirmedOn === undefined || isPlainDay(confirmedOn))
  )
}
