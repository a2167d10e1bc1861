import { figure } from '../../domain/figures.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Item } from '../../domain/item.ts'
import type { PickList, Purchase } from '../../domain/quote.ts'
import type { PickingBody, PickingLine } from '../../domain/follow-up/van.ts'
import { standing } from '../../engine/quote/life/quote-state.ts'
import { buyAfterVan } from '../../engine/takeoff/buying/after-van.ts'
import type { FromVan } from '../../engine/takeoff/buying/after-van.ts'
import { mergePurchases } from '../../engine/takeoff/buying/merge-purchases.ts'
import { shelfOf } from '../../engine/takeoff/shelf.ts'
import { keepPicking, quotesBeingPicked, readPicking } from '../../store/van/pickings.ts'
import { readVanStock } from '../../store/van/van-stock.ts'
import type { IssuedQuote } from '../../store/quotes.ts'
import { reading, writing } from '../../store/store.ts'
import { planBuying } from '../buying/buy-plan.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk, UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'
import { issuedOf } from '../quote-life/quote-row.ts'
import { keptWork } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'

/** What one accepted quote brings to a round of picking. */
type Brought = {
  readonly quote: IssuedQuote
  readonly purchases: readonly Purchase[]
  readonly pickList: PickList
  readonly cautions: readonly string[]
}

type Bought = {
  readonly purchases: readonly Purchase[]
  readonly fromVan: readonly FromVan[]
  readonly orders: PickingBody['orders']
  readonly missing: readonly string[]
  readonly items: ReadonlyMap<string, Item>
}

export const pickingMake: UseCase<'picking.make'> = async ({ quoteIds, title, by }, desk) => {
  const brought: Brought[] = []
  for (const quoteId of new Set(quoteIds)) {
    const one = await broughtBy(quoteId, desk)
    if (!one.ok) return one
    brought.push(one.value)
  }
  const bought = await buyTogether(brought, by ?? 'cheapestEach', desk)
  if (!bought.ok) return bought
  const laid = linesOf(brought, bought.value)
  const made = {
    title:
      title ??
      brought
        .map(({ quote }) => quote.customerName)
        .join(', ')
        .slice(0, 200),
    madeOn: desk.today,
    madeAt: desk.now(),
    quoteIds: brought.map(({ quote }) => quote.quoteId),
    lines: laid.map(({ packPence: _price, jobNeed: _need, ...line }) => line),
    body: bodyOf(brought, { ...bought.value, orders: withPacks(bought.value.orders, laid) }),
  }
  return writing(storeOf(desk), async (tx) => {
    const [taken] = await quotesBeingPicked(tx, made.quoteIds)
    if (taken !== undefined) {
      const message = `${taken.quoteId} is on pick list ${taken.pickingNo} already.`
      return refuse('conflict', message, 'quoteIds', `Open pick list ${taken.pickingNo}.`)
    }
    const picking = await readPicking(tx, await keepPicking(tx, made))
    if (picking === null) throw new Error('A pick list that was just written is not there')
    return accept({ picking })
  })
}

async function broughtBy(quoteId: string, desk: Desk): Promise<Outcome<Brought>> {
  const found = await reading(storeOf(desk), (tx) => issuedOf(tx, quoteId, 'quoteIds'))
  if (!found.ok) return found
  const { quote, events } = found.value
  const { state } = standing({ events, validUntil: quote.validUntil }, desk.today)
  if (state !== 'accepted') {
    const message = `${quoteId} is not accepted, so nothing is picked for it yet.`
    return refuse('conflict', message, 'quoteIds', 'Note that the customer accepted it first.')
  }
  const work = await keptWork(quoteId, desk)
  if (!work.ok) return work
  return accept({
    quote,
    purchases: quote.snapshot.quote.internal.purchases,
    pickList: work.value.pickList,
    cautions: quote.snapshot.quote.cautions.map(({ says }) => says),
  })
}

/** Buys for all quotes at once, at today's prices: what the van has first, then as it was asked. */
async function buyTogether(
  brought: readonly Brought[],
  by: 'cheapestEach' | 'cheapestSplit',
  desk: Desk,
): Promise<Outcome<Bought>> {
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const catalogue = await catalogueOf(desk)
  const shelf = shelfOf(catalogue)
  const kerfMm = figure(figures.value, 'pipe.kerfMm')
  const jobs = brought.map(({ quote, purchases }) => ({ label: quote.quoteId, purchases }))
  const merged = mergePurchases(jobs, { shelf, kerfMm })
  const stock = await reading(storeOf(desk), readVanStock)
  const twice = cutAndBoughtTwice(merged.purchases)
  const vanStock = stock.filter(({ itemId, quantity }) => quantity > 0 && !twice.has(itemId))
  const missing = merged.missing.map(({ name, says }) => `${name}: ${says}`)
  const items = new Map(catalogue.items.map((item) => [item.itemId, item]))
  if (by === 'cheapestEach') {
    const after = buyAfterVan(merged.purchases, vanStock, { shelf, kerfMm })
    return after.ok
      ? accept({ ...after.value, orders: goodsOf(after.value.purchases), missing, items })
      : after
  }
  const { suppliers } = catalogue
  const planned = await planBuying({
    purchases: merged.purchases,
    vanStock,
    shelf,
    kerfMm,
    suppliers,
    lines: [],
  })
  if (!planned.ok) return planned
  const { purchases, fromVan, split } = planned.value
  const orders = split.orders.map(({ supplierId, name, goodsPence, carriagePence }) => ({
    supplierId,
    name,
    goodsPence,
    carriagePence,
  }))
  return accept({ purchases, fromVan, orders, missing, items })
}

/** Pipe that is bought in more than one way: what the van has of it would be given to each, so it is given to none. */
function cutAndBoughtTwice(purchases: readonly Purchase[]): ReadonlySet<string> {
  const byItem = Map.groupBy(purchases, ({ itemId }) => itemId)
  const twice = [...byItem].filter(
    ([, same]) => same.length > 1 && same.some(({ pieces }) => pieces !== undefined),
  )
  return new Set(twice.map(([itemId]) => itemId))
}

function goodsOf(purchases: readonly Purchase[]): PickingBody['orders'] {
  return [...Map.groupBy(bySupplier(purchases), ({ supplierId }) => supplierId)].map(
    ([supplierId, same]) => ({
      supplierId,
      name: same[0]?.supplierName ?? supplierId,
      goodsPence: same.reduce((sum, { costPence }) => sum + costPence, 0),
    }),
  )
}

/** A thing named and priced by hand has no supplier in the catalogue: it is not ordered from one. */
function bySupplier(purchases: readonly Purchase[]): readonly Purchase[] {
  return purchases.filter(({ oneOff }) => oneOff !== true)
}

/** A line with what an order of it needs to know: the price of a pack, and how much of it the jobs need. */
type LaidLine = PickingLine & { readonly packPence?: number; readonly jobNeed?: number }

function withPacks(orders: PickingBody['orders'], lines: readonly LaidLine[]): PickingBody['orders'] {
  return orders.map((one) => ({
    ...one,
    packs: lines.flatMap(({ supplierId, lineNo, packPence, jobNeed }) =>
      supplierId === one.supplierId && packPence !== undefined && jobNeed !== undefined
        ? [{ lineNo, packPence, need: jobNeed }]
        : [],
    ),
  }))
}

const inUnits = (quantity: number) => Math.round(quantity * 1e6) / 1e6

/** How much of each of a purchase's packs the jobs need. Lengths of pipe that are cut are needed whole: an offcut is no stock. */
function needsOfPacks({ packs, need, bars }: Purchase): readonly number[] {
  let open = need
  return packs.map(({ count, holds }) => {
    const held = inUnits(count * holds)
    const needed = bars === undefined ? Math.min(held, Math.max(0, open)) : held
    open = inUnits(open - needed)
    return needed
  })
}

function linesOf(brought: readonly Brought[], { purchases, fromVan, items }: Bought): readonly LaidLine[] {
  const kindOf = (itemId: string) => items.get(itemId)?.kind ?? 'other'
  const van = fromVan.map((line) => ({
    source: 'van' as const,
    kind: kindOf(line.itemId),
    itemId: line.itemId,
    name: line.name,
    unit: line.unit,
    need: line.quantity,
  }))
  const inBoxes = Map.groupBy(
    brought.flatMap(({ pickList }) => pickList.fromBox),
    ({ name }) => name,
  )
  const boxes = [...inBoxes].map(([name, same]) => ({
    source: 'box' as const,
    kind: 'box',
    name: name.slice(0, 200),
    unit: 'each',
    need: same.reduce((sum, { quantity }) => sum + quantity, 0),
  }))
  const bought = bySupplier(purchases).flatMap((one) => {
    const needs = needsOfPacks(one)
    return one.packs.map((pack, at) => ({
      source: 'supplier' as const,
      supplierId: one.supplierId,
      kind: kindOf(one.itemId),
      itemId: one.itemId,
      code: pack.code,
      name: one.name,
      unit: one.unit,
      need: inUnits(pack.count * pack.holds),
      packs: pack.count,
      packHolds: pack.holds,
      packPence: pack.packPence,
      jobNeed: needs[at] ?? 0,
    }))
  })
  return [...inOrder(van), ...inOrder(bought), ...boxes].map((line, at) => ({
    lineNo: at + 1,
    picked: 0,
    ...line,
  }))
}

/** As one walks a shop: by supplier, then kind by kind, then by name. */
function inOrder<L extends { readonly supplierId?: string; readonly kind: string; readonly name: string }>(
  lines: readonly L[],
): readonly L[] {
  const place = ({ supplierId = '', kind, name }: L) => `${supplierId}\n${kind}\n${name}`
  return lines.toSorted((a, b) => (place(a) < place(b) ? -1 : 1))
}

function bodyOf(brought: readonly Brought[], { purchases, fromVan, orders, missing }: Bought): PickingBody {
  const tools = new Map(brought.flatMap(({ pickList }) => pickList.tools.map((tool) => [tool.name, tool])))
  const oneOffs = purchases.filter(({ oneOff }) => oneOff === true)
  return {
    quotes: brought.map(({ quote }) => ({
      quoteId: quote.quoteId,
      title: quote.title,
      customerName: quote.customerName,
    })),
    tools: [...tools.values()],
    pipeCuts: [...fromVan, ...purchases].flatMap(({ name, bars }) =>
      bars === undefined ? [] : [{ name, bars }],
    ),
    lifts: brought.flatMap(({ quote, pickList }) =>
      pickList.lifts.map(({ name, massKg, says }) => ({ quoteId: quote.quoteId, name, massKg, says })),
    ),
    cautions: [...new Set(brought.flatMap(({ cautions }) => cautions))],
    missing: [
      ...missing,
      ...oneOffs.map(({ name, need, unit }) => `${name}: ${need} ${unit}, in no catalogue; get it by hand.`),
      ...brought.flatMap(({ pickList }) => pickList.missing),
    ],
    orders,
    says: `The van first, then whole packs at the prices of the day, for ${brought.length === 1 ? 'one quote' : `${brought.length} quotes together`}.`,
  }
}
