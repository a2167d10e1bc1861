import { figure } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { SupplierPrice } from '../../domain/price.ts'
import type { Purchase } from '../../domain/quote.ts'
import { coverWithBreaks } from '../../engine/buying/supplier-split-packs.ts'
import type { LineBought } from '../../engine/buying/supplier-split-packs.ts'
import type { OfferedLine } from '../../engine/buying/supplier-split-offers.ts'
import { splitCase, splitWith } from '../../engine/buying/supplier-split.ts'
import { takeFromVan } from '../../engine/buying/van-stock.ts'
import type { VanStock } from '../../engine/buying/van-stock.ts'
import { jobFacts } from '../../engine/takeoff/job-facts.ts'
import { cheapestPurchase } from '../../engine/takeoff/purchase.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import { takeOff } from '../../engine/takeoff/take-off.ts'
import type { UseCase } from '../desk.ts'
import { prepare } from '../quoting/work-up.ts'
import { solverWithin } from './solver.ts'

/**
 * What the job's parts list needs, split over the suppliers. The items are those of the quote; what changes is from whom each
 * is bought. What the catalogue can't supply stands as a gap.
 */
export const buyPlan: UseCase<'buy.plan'> = async ({ job, vanStock = [] }, desk) => {
  const prepared = await prepare(job, desk)
  if (!prepared.ok) return prepared
  const { placed, figures, shelf, catalogue } = prepared.value
  const { takeOff: list, purchases } = takeOff(jobFacts(job, placed, figures), shelf, figures)
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const lines = linesFrom(purchases, vanStock, { shelf, kerfMm })
  const gaps = list.lines.flatMap((line, index) =>
    line.gap === undefined
      ? []
      : [gapLine(`gap-${index + 1}`, line.itemId ?? line.itemKind, { ...line, gap: line.gap })],
  )
  const ready = splitCase([...lines, ...gaps], catalogue.suppliers)
  return splitWith(ready, solverWithin())
}

type Buying = { readonly shelf: Shelf; readonly kerfMm: number }

function linesFrom(
  purchases: readonly Purchase[],
  vanStock: VanStock,
  buying: Buying,
): readonly OfferedLine[] {
  const loose = takeFromVan(
    purchases.filter(({ pieces }) => pieces === undefined),
    vanStock,
  )
  // A piece of pipe is cut from one length, so a total of metres in the van says nothing of what can be cut from it.
  const cut = purchases
    .filter(({ pieces }) => pieces !== undefined)
    .map((purchase) => ({ ...purchase, fromVan: 0, toBuy: purchase.need }))
  return [...loose, ...cut].map((line) => {
    const { lineId, itemId, unit, need, fromVan, toBuy } = line
    const from = toBuy > 0 ? offersFor(line, toBuy, buying) : []
    return { lineId, itemId, unit, need, fromVan, toBuy, from }
  })
}

/** What a line comes to from each supplier with a price for it. One whose packs or lengths can't meet it drops out. */
function offersFor(purchase: Purchase, toBuy: number, { shelf, kerfMm }: Buying): OfferedLine['from'] {
  const bySupplier = Map.groupBy(shelf.prices.get(purchase.itemId) ?? [], ({ supplierId }) => supplierId)
  return [...bySupplier].flatMap(([supplierId, prices]) => {
    const bought =
      purchase.pieces === undefined
        ? coverWithBreaks(toBuy, prices.map(packOf))
        : cutFrom(purchase, prices, { shelf, kerfMm })
    return bought.ok ? [{ ...bought.value, supplierId }] : []
  })
}

function packOf({ code, packHolds, packPence, breaks }: SupplierPrice) {
  return { code, holds: packHolds, pence: packPence, ...(breaks === undefined ? {} : { breaks }) }
}

/** Pipe is bought by the lengths that the cut list needs, from this supplier alone. */
function cutFrom(
  { lineId, itemId, name, unit, need, pieces }: Purchase,
  prices: readonly SupplierPrice[],
  { shelf, kerfMm }: Buying,
): Outcome<LineBought> {
  const wanted = { lineId, itemId, name, unit, need, kerfMm, ...(pieces === undefined ? {} : { pieces }) }
  const bought = cheapestPurchase(wanted, { ...shelf, prices: new Map([[itemId, prices]]) })
  if (!bought.ok) return bought
  const { packs, costPence, leftover, why } = bought.value
  return accept({ packs, pence: costPence, leftover, why })
}

type Gap = Pick<OfferedLine, 'unit'> & { readonly quantity: number; readonly gap: string }

function gapLine(lineId: string, itemId: string, { unit, quantity, gap }: Gap): OfferedLine {
  return { lineId, itemId, unit, need: quantity, fromVan: 0, toBuy: quantity, from: [], gap }
}
