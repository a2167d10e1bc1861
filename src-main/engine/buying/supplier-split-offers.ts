import { accept, refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Unit } from '../../domain/item.ts'
import { coverWithBreaks } from './supplier-split-packs.ts'
import type { LineBought, OfferedPack } from './supplier-split-packs.ts'
import type { Terms } from './supplier-split-cost.ts'
import { takeFromVan } from './van-stock.ts'
import type { VanStock } from './van-stock.ts'

export type SplitLine = {
  readonly lineId: string
  readonly itemId: string
  readonly need: number
  readonly unit: Unit
}
export type Offer = {
  readonly lineId: string
  readonly supplierId: string
  readonly packs: readonly OfferedPack[]
}
export type SplitInput = {
  readonly lines: readonly SplitLine[]
  readonly offers: readonly Offer[]
  readonly suppliers: readonly Terms[]
  readonly vanStock?: VanStock | undefined
}
/** A line with what it comes to from each supplier who has it. */
export type OfferedLine = SplitLine & {
  readonly fromVan: number
  readonly toBuy: number
  readonly from: readonly (LineBought & { readonly supplierId: string })[]
  /** Why nobody's offer could be used, where that is so. */
  readonly gap?: string | undefined
}

/**
 * What each line comes to from each supplier who offers it, in whole packs, after what the van gives.
 * Refuses an id given twice, an offer for a line or from a supplier that is not there, and packs that `coverWithBreaks` refuses.
 *
 * @param input lines with a need in the item's unit; offers with packs in the same unit and whole pence; suppliers; van stock
 * @source practice, no published source
 * @example offeredLines({ lines: [{ lineId: 'a', itemId: 'clip', need: 7, unit: 'each' }], offers: [{ lineId: 'a', supplierId: 's', packs: [{ code: 'C', holds: 5, pence: 100 }] }], suppliers: [{ supplierId: 's', name: 'S', carriagePence: 0 }], vanStock: [{ itemId: 'clip', quantity: 2 }] }).value.map((line) => line.from[0].pence) // => [100]
 */
export function offeredLines(input: SplitInput): Outcome<readonly OfferedLine[]> {
  const fault = inputFault(input)
  if (fault !== null) return fault
  const offers = Map.groupBy(
    input.offers.map((offer, place) => ({ ...offer, place })),
    ({ lineId }) => lineId,
  )
  const lines: OfferedLine[] = []
  for (const line of takeFromVan(input.lines, input.vanStock ?? [])) {
    const from = []
    for (const { supplierId, packs, place } of line.toBuy > 0 ? (offers.get(line.lineId) ?? []) : []) {
      const bought = coverWithBreaks(line.toBuy, packs)
      if (!bought.ok) return under(`offers[${place}]`, bought)
      from.push({ ...bought.value, supplierId })
    }
    lines.push({ ...line, from })
  }
  return accept(lines)
}

function inputFault({ lines, offers, suppliers }: SplitInput): Outcome<never> | null {
  const line = repeated(lines.map(({ lineId }) => lineId))
  if (line !== null) return twice('line', line, `lines[${line.place}].lineId`)
  const supplier = repeated(suppliers.map(({ supplierId }) => supplierId))
  if (supplier !== null) return twice('supplier', supplier, `suppliers[${supplier.place}].supplierId`)
  const offer = repeated(offers.map(({ lineId, supplierId }) => `${lineId} from ${supplierId}`))
  if (offer !== null) {
    const message = `There are two offers for ${offer.name}; put all packs of one supplier for one line into one offer.`
    return refuse('invalid', message, `offers[${offer.place}]`)
  }
  const known = { lines: new Set(lines.map((one) => one.lineId)), suppliers: new Set<string>() }
  for (const { supplierId } of suppliers) known.suppliers.add(supplierId)
  for (const [place, { lineId, supplierId }] of offers.entries()) {
    if (!known.lines.has(lineId))
      return refuse('invalid', `There is no line called ${lineId} here.`, `offers[${place}].lineId`)
    if (!known.suppliers.has(supplierId)) {
      const message = `There is no supplier called ${supplierId} here.`
      return refuse('invalid', message, `offers[${place}].supplierId`)
    }
  }
  return null
}

type Repeated = { readonly name: string; readonly place: number }

function repeated(names: readonly string[]): Repeated | null {
  const seen = new Set<string>()
  for (const [place, name] of names.entries()) {
    if (seen.has(name)) return { name, place }
    seen.add(name)
  }
  return null
}

function twice(what: string, { name }: Repeated, path: string): Outcome<never> {
  return refuse('invalid', `The ${what} ${name} is there twice; give each ${what} its own id.`, path)
}
