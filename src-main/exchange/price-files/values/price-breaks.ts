import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { FileReading, ListRow } from '../../../domain/price-list.ts'
import { short } from './written-price.ts'

type Breaks = NonNullable<ListRow['breaks']>
type Column = FileReading['columns'][number]

/** Where a price break stands: its price's column, and its quantity's column or the quantity itself, stated by the heading. */
export type BreakPlace = { readonly price: number; readonly from: number; readonly stated: number | null }

/** How many breaks one row may have. */
export const mostBreaks = 20

const isStated = ({ fromPacks }: Column) => fromPacks !== undefined

/** Whether the columns of price breaks go together, or the sentence that says why not. */
export function checkBreakColumns(columns: readonly Column[]): Outcome<null> {
  const path = 'reading.columns'
  const wrong = columns.find((column) => isStated(column) && column.meaning !== 'breakPrice')
  if (wrong !== undefined)
    return refuse(
      'invalid',
      `Column ${wrong.at + 1} is said to be from ${wrong.fromPacks} packs, which only a price of a break can be.`,
      path,
    )
  const count = (meaning: Column['meaning']) =>
    columns.filter((column) => column.meaning === meaning && !isStated(column)).length
  if (count('breakPrice') !== count('breakFromPacks'))
    return refuse(
      'invalid',
      'Price breaks come in pairs: a column of quantities and a column of prices for each. ' +
        'Where a heading says the quantity, give it as the number of packs.',
      path,
    )
  const stated = columns.filter(isStated)
  const twice = stated.find(({ fromPacks }, at) =>
    stated.slice(0, at).some((other) => other.fromPacks === fromPacks),
  )
  if (twice !== undefined)
    return refuse(
      'invalid',
      `Two columns are said to be the price from ${twice.fromPacks} packs: choose one.`,
      path,
    )
  if (stated.length + count('breakPrice') > mostBreaks)
    return refuse('invalid', `A row has ${mostBreaks} price breaks at most: leave some columns out.`, path)
  return accept(null)
}

/** The first column of quantities goes with the first of prices, and so on; those whose headings state it stand alone. */
export function breakPlacesOf({ columns }: FileReading): readonly BreakPlace[] {
  const of = (meaning: Column['meaning']) =>
    columns
      .filter((column) => column.meaning === meaning && !isStated(column))
      .map(({ at }) => at)
      .toSorted((a, b) => a - b)
  const prices = of('breakPrice')
  const pairs = of('breakFromPacks').map((from, index) => ({
    from,
    price: prices[index] ?? from,
    stated: null,
  }))
  const alone = columns
    .filter(isStated)
    .map(({ at, fromPacks = 0 }) => ({ from: at, price: at, stated: fromPacks }))
    .toSorted((a, b) => a.stated - b.stated)
  return [...pairs, ...alone]
}

/** From how many packs a break is, or the sentence that says why that can't be told. */
export function readFromPacks(quantity: string): number | string {
  const fromPacks = Number(/^(\d{1,6})\s*\+?(?:\s*[-–]\s*\d*)?$/.exec(quantity)?.[1])
  return Number.isNaN(fromPacks)
    ? `A price break from "${short(quantity)}" packs is not a whole number of packs.`
    : fromPacks
}

/** £1,234.50 */
export function pounds(pence: number): string {
  const figures = { minimumFractionDigits: 2, maximumFractionDigits: 2 }
  return `£${(pence / 100).toLocaleString('en-GB', figures)}`
}

/**
 * Price breaks by their quantity, one for each. What a person should look at is noted: a quantity that is given twice, quantities
 * out of order, and more packs that cost more each.
 */
export function orderedBreaks(
  given: Breaks,
  { packPence, note }: { readonly packPence: number; readonly note: (says: string) => void },
): Breaks {
  const sorted = given.toSorted((a, b) => a.fromPacks - b.fromPacks)
  const kept = sorted.filter(({ fromPacks }, at) => sorted[at - 1]?.fromPacks !== fromPacks)
  for (const { fromPacks } of sorted.filter((one) => !kept.includes(one)))
    note(`The price from ${fromPacks} packs is given twice: the one further left counts.`)
  if (given.some((one, at) => at > 0 && (given[at - 1]?.fromPacks ?? 0) > one.fromPacks))
    note(
      `The price breaks are out of order (${given.map(({ fromPacks }) => fromPacks).join(', ')} packs): they are taken by quantity.`,
    )
  for (const [at, one] of kept.entries()) {
    const before = kept[at - 1]
    const beforePence = before?.packPence ?? packPence
    if (one.packPence <= beforePence) continue
    const than = before === undefined ? 'for one alone' : `from ${before.fromPacks} packs`
    note(
      `From ${one.fromPacks} packs a pack costs ${pounds(one.packPence)}, more than the ${pounds(beforePence)} ${than}.`,
    )
  }
  return kept
}
