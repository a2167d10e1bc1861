import { accept, under } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { Bar, Purchase } from '../../../domain/quote.ts'
import type { PipePiece } from '../../../domain/take-off.ts'
import { cutPipe } from '../../buying/cut-pipe.ts'
import { takeFromVan } from '../../buying/van-stock.ts'
import type { VanStock } from '../../buying/van-stock.ts'
import { inMillionths, stepsInUnit } from '../../buying/whole-units.ts'
import type { Shelf } from '../shelf.ts'
import { purchaseOf } from '../resolve.ts'

/** What the van gives towards one line; of pipe, in whole lengths, and how they are cut. */
export type FromVan = Pick<Purchase, 'lineId' | 'itemId' | 'name' | 'unit'> & {
  readonly quantity: number
  readonly bars?: readonly Bar[]
}
/** What the van gives, and what is still to be bought; a line that the van has whole is not among the purchases. */
export type AfterVanBuying = { readonly fromVan: readonly FromVan[]; readonly purchases: readonly Purchase[] }
type Buying = { readonly shelf: Shelf; readonly kerfMm: number }

/**
 * Takes what the van has before anything is bought, and buys the rest anew, each line from whoever is cheapest for it. The quote
 * stays what it was: the customer pays for goods from the van as for others.
 * Of pipe the van gives whole lengths of the shortest that the item is sold in: lengths = floor(quantity / length). The pieces that fit
 * are cut from as few such lengths as can be; the fullest of those come from the van, and the pieces of the rest are bought. Where the
 * item is sold in one length, no way buys fewer lengths.
 * Refuses pieces that `cutPipe` refuses to cut from such lengths, and a rest that `cheapestPurchase` refuses. One-off things are never in the van.
 *
 * @param purchases what the job buys
 * @param stock what is in the van, in the item's unit (pipe in m), 0 or more
 * @param buying the prices in force and the saw cut in mm
 * @source practice, no published source
 * @example buyAfterVan([{ lineId: 'a', itemId: 'clip', name: 'Clip', unit: 'each', need: 5 }], [{ itemId: 'clip', quantity: 9 }], { kerfMm: 2, shelf: { prices: new Map() } }).value.fromVan[0].quantity // => 5
 */
export function buyAfterVan(
  purchases: readonly Purchase[],
  stock: VanStock,
  buying: Buying,
): Outcome<AfterVanBuying> {
  const loose = purchases.filter(({ pieces, oneOff }) => pieces === undefined && oneOff !== true)
  const taken = new Map(takeFromVan(loose, stock).map((line) => [line.lineId, line]))
  const fromVan: FromVan[] = []
  const rest: Purchase[] = []
  for (const purchase of purchases) {
    const { lineId, itemId, name, unit } = purchase
    const line = taken.get(lineId)
    const given =
      line === undefined
        ? pipeFromVan(purchase, stock, buying)
        : accept<Part>({ quantity: line.fromVan, need: line.toBuy })
    if (!given.ok) return under('vanStock', given)
    const part = given.value
    if (part.quantity === 0) {
      rest.push(purchase)
      continue
    }
    const bars = part.bars === undefined ? {} : { bars: part.bars }
    fromVan.push({ lineId, itemId, name, unit, quantity: part.quantity, ...bars })
    if (part.need === 0) continue
    const bought = boughtRest(purchase, part, buying)
    if (!bought.ok) return under('vanStock', bought)
    rest.push(bought.value)
  }
  return accept({ fromVan, purchases: rest })
}

/** What the van gives of a line, and what is then still needed. */
type Part = {
  readonly quantity: number
  readonly need: number
  readonly pieces?: readonly PipePiece[]
  readonly bars?: readonly Bar[]
}

function boughtRest(purchase: Purchase, { need, pieces }: Part, buying: Buying): Outcome<Purchase> {
  const { lineId, itemId, name, unit } = purchase
  const rest = { quantity: need, unit, ...(pieces === undefined ? {} : { pieces }) }
  return purchaseOf(rest, { itemId, name }, { ...buying, lineId })
}

function pipeFromVan(purchase: Purchase, stock: VanStock, { shelf, kerfMm }: Buying): Outcome<Part> {
  const { itemId, need, pieces = [] } = purchase
  const nothing = accept<Part>({ quantity: 0, need })
  const sold = (shelf.prices.get(itemId) ?? []).map(({ packHolds }) => inMillionths(packHolds))
  const inVan = stock.reduce(
    (sum, one) => (one.itemId === itemId ? sum + inMillionths(one.quantity) : sum),
    0,
  )
  const length = Math.min(...sold)
  if (inVan < length || purchase.oneOff === true) return nothing
  const lengthMm = Math.round((length / stepsInUnit) * 1000)
  const named = pieces.map((piece, index) => ({ ...piece, id: `${index}` }))
  const fitting = named.filter((piece) => piece.lengthMm <= lengthMm)
  if (fitting.length === 0) return nothing
  const cut = cutPipe({ pieces: fitting, stock: [{ id: 'van', lengthMm, pence: 1 }], kerfMm })
  if (!cut.ok) return cut
  const bars = cut.value.bars.toSorted((a, b) => a.offcutMm - b.offcutMm).slice(0, Math.floor(inVan / length))
  const given = Map.groupBy(
    bars.flatMap(({ cuts }) => cuts),
    ({ id }) => id,
  )
  const left = pieces.flatMap((piece, index) => {
    const count = piece.count - (given.get(`${index}`)?.length ?? 0)
    return count === 0 ? [] : [{ ...piece, count }]
  })
  const givenMm = bars.reduce((sum, { cuts }) => sum + cuts.reduce((all, one) => all + one.lengthMm, 0), 0)
  const open = Math.max(0, inMillionths(need) - inMillionths(givenMm / 1000)) / stepsInUnit
  return accept({
    quantity: (bars.length * length) / stepsInUnit,
    need: left.length === 0 ? 0 : open,
    pieces: left,
    bars: bars.map((bar) => ({ ...bar, cuts: bar.cuts.map((one) => labelled(one, pieces)) })),
  })
}

function labelled(cut: Bar['cuts'][number], pieces: readonly PipePiece[]): Bar['cuts'][number] {
  const piece = pieces[Number(cut.id)]
  return { ...cut, id: `${Number(cut.id) + 1}, ${piece?.id ?? ''}` }
}
