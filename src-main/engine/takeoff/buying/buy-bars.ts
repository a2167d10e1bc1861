import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { Bar, Purchase } from '../../../domain/quote.ts'
import type { PipePiece } from '../../../domain/take-off.ts'
import { cutPipe } from '../../buying/cut-pipe.ts'
import { choiceCount, levelChoices, priceAtCount, priceLevels } from '../../buying/split/price-ladder.ts'
import type { PriceLevel } from '../../buying/split/price-ladder.ts'
import type { OfferedPack } from '../../buying/split/supplier-split-packs.ts'

/** Lengths bought, and how they are cut. */
export type BarsBought = { readonly packs: Purchase['packs']; readonly bars: readonly Bar[] }
type Want = {
  readonly pieces: readonly PipePiece[]
  readonly stock: readonly OfferedPack[]
  readonly kerfMm: number
}

const mostTrials = 256

/**
 * The lengths of pipe to buy from one supplier and how to cut them, for the least money. Each choice of a price break for each
 * stock length is tried: the pieces are cut at those prices, and where too few lengths were used to reach a break, as many more
 * as reach it are bought with them if that is cheaper. Without breaks, and with one stock length, this is the least there is:
 * least over levels k of max(bars, from_k) p_k. With breaks on several stock lengths it is the best of the plans tried.
 * Refuses what `cutPipe` refuses, and more than 256 choices of breaks.
 * @param want pieces in mm, stock in m with whole pence, kerf in mm
 * @source one-dimensional cutting stock (Gilmore and Gomory 1961); all-units discounts by trying each level, ours
 * @example buyBars({ pieces: [{ id: 'a', lengthMm: 2000, count: 9 }], kerfMm: 2, stock: [{ code: 'T', holds: 3, pence: 600, breaks: [{ fromPacks: 10, packPence: 500 }] }] }).value.packs // => [{ code: 'T', holds: 3, count: 10, packPence: 500 }]
 */
export function buyBars(want: Want): Outcome<BarsBought> {
  const ladders = want.stock.map(({ pence, breaks }) => priceLevels(pence, breaks))
  if (choiceCount(ladders) > mostTrials) {
    const message = `This pipe has so many price breaks that more than ${mostTrials} ways would have to be tried; give fewer breaks.`
    return refuse('impossible', message, 'stock')
  }
  let best: Tried | null = null
  for (const levels of levelChoices(ladders)) {
    const tried = cutAt(want, ladders, levels)
    if (!tried.ok) return tried
    if (best === null || tried.value.pence < best.pence) best = tried.value
  }
  if (best === null) throw new Error('There is always at least one choice of levels')
  const { packs, bars } = best
  return accept({ packs, bars })
}

type Tried = BarsBought & { readonly pence: number }

function cutAt(
  { pieces, stock, kerfMm }: Want,
  ladders: readonly (readonly PriceLevel[])[],
  levels: readonly PriceLevel[],
): Outcome<Tried> {
  const cut = cutPipe({
    pieces: pieces.map((piece, index) => ({ ...piece, id: `${index + 1}, ${piece.id}` })),
    stock: stock.map(({ holds }, index) => ({
      id: `${index}`,
      lengthMm: Math.round(holds * 1000),
      pence: levels[index]?.pence ?? 0,
    })),
    kerfMm,
  })
  if (!cut.ok) return cut
  const used = Map.groupBy(cut.value.bars, ({ stockId }) => stockId)
  const packs = stock.flatMap(({ code, holds }, index) => {
    const count = Math.max(used.get(`${index}`)?.length ?? 0, levels[index]?.fromPacks ?? 0)
    const packPence = priceAtCount(ladders[index] ?? [], count)
    return count === 0 ? [] : [{ code, holds, count, packPence }]
  })
  const pence = packs.reduce((sum, pack) => sum + pack.count * pack.packPence, 0)
  const bars = cut.value.bars.map((bar) => ({ ...bar, stockId: stock[Number(bar.stockId)]?.code ?? '' }))
  return accept({ packs, bars, pence })
}
