import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import type { PickList, Purchase, Quote } from '../../domain/quote.ts'
import type { SplitAnswer } from '../buying/split/supplier-split-answer.ts'
import { hangingCrew, liftLimit, liftSettings } from '../labour/crew-lift.ts'
import type { FromVan } from '../takeoff/buying/after-van.ts'
import type { JobFacts, PlacedSwap } from '../takeoff/job-facts.ts'
import type { SwapFacts } from '../takeoff/swap-facts.ts'
import { named } from '../takeoff/rule.ts'
import { needInWords } from '../takeoff/resolve.ts'
import type { PricedTakeOff } from '../takeoff/take-off.ts'

/** How the parts are come by when it is not as the quote bought them: from the van first, or split with carriage in mind. */
export type Buying = {
  readonly purchases: readonly Purchase[]
  readonly fromVan: readonly FromVan[]
  readonly split?: SplitAnswer | undefined
}

type More = {
  readonly placed: readonly PlacedSwap[]
  readonly facts: JobFacts
  readonly figures: Figures
  readonly buying?: Buying
}

/**
 * What goes into the van: what it has already, each supplier's packs, what the boxes bring, tools, pipe cuts, and what is missing.
 * @param parts the parts list with its purchases
 * @param quote the quote, for its gaps
 * @param more the swaps, the firm's figures, and how the parts are bought when it is not as in the quote
 * @source practice, no published source
 * @example buildPickList({ purchases: [], boxUses: [], takeOff: { tools: [], lines: [] } }, { gaps: [{ says: 'No vent.' }] }, { placed: [], facts: { swaps: [] }, figures: { settings: { 'pipe.kerfMm': { value: 1 } } } }).missing // => ["No vent."]
 */
export function buildPickList(parts: PricedTakeOff, quote: Pick<Quote, 'gaps'>, more: More): PickList {
  const { placed, facts, figures, buying = { purchases: parts.purchases, fromVan: [] } } = more
  const { purchases, fromVan, split } = buying
  return {
    suppliers: supplierGroups({ ...parts, purchases }, placed, split),
    ...(fromVan.length === 0 ? {} : { fromVan: fromVan.map(vanLine) }),
    ...(split === undefined ? {} : { split: splitSums(split) }),
    fromBox: parts.boxUses.map((use) => ({
      name: needInWords(use),
      quantity: use.quantity,
      swapId: use.swapId,
    })),
    tools: parts.takeOff.tools,
    pipeCuts: [...fromVan, ...purchases].flatMap(cutsOf),
    missing: quote.gaps.map((gap) =>
      gap.waived === undefined ? gap.says : `${gap.says} Left out because: ${gap.waived}`,
    ),
    lifts: facts.swaps.flatMap((swap) => liftsOf(swap, figures)),
    why: whyList(buying),
  }
}

function whyList({ purchases, fromVan, split }: Buying): Derivation {
  const van = fromVan.map(({ name, quantity, unit }) =>
    because(`${name}: in the van already, so not bought.`, quantity, { unit }),
  )
  const bought = purchases.map((purchase) => purchase.why)
  const from = split === undefined ? [...van, ...bought] : [...van, split.why]
  const says =
    split === undefined
      ? 'Whole packs for every line, by supplier.'
      : 'Whole packs for every line, split over the suppliers with carriage and minimum orders.'
  return because(says, purchases.length, { unit: 'lines', from })
}

function vanLine({ itemId, name, quantity, unit }: FromVan): NonNullable<PickList['fromVan']>[number] {
  return { itemId, name, quantity, unit }
}

function splitSums(split: SplitAnswer): PickList['split'] {
  const { goodsPence, carriagePence, totalPence, proved, says, oneSupplier } = split
  return { goodsPence, carriagePence, totalPence, proved, says, oneSupplier }
}

function supplierGroups(
  parts: PricedTakeOff,
  placed: readonly PlacedSwap[],
  split: SplitAnswer | undefined,
): PickList['suppliers'] {
  const known: Known = {
    masses: new Map(placed.map(({ emitter }) => [emitter.itemId, emitter.dryKg])),
    generic: new Set(parts.takeOff.lines.filter((line) => line.generic).map((line) => line.itemId)),
  }
  return [...Map.groupBy(parts.purchases, (purchase) => purchase.supplierId)]
    .map(([supplierId, group]) => ({
      supplierId,
      name: group[0]?.supplierName ?? supplierId,
      lines: group.flatMap((purchase) => linesOf(purchase, known)),
      ...orderOf(split, supplierId),
    }))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
}

function orderOf(
  split: SplitAnswer | undefined,
  supplierId: string,
): Pick<PickList['suppliers'][number], 'goodsPence' | 'carriagePence' | 'shortOfFreePence'> {
  const order = split?.orders.find((one) => one.supplierId === supplierId)
  if (order === undefined) return {}
  const { goodsPence, carriagePence, shortOfFreePence } = order
  return { goodsPence, carriagePence, ...(shortOfFreePence === undefined ? {} : { shortOfFreePence }) }
}

type Known = {
  readonly masses: ReadonlyMap<string, number>
  readonly generic: ReadonlySet<string | undefined>
}

function linesOf(purchase: Purchase, { masses, generic }: Known): PickList['suppliers'][number]['lines'] {
  const { itemId, name, unit, need, leftover } = purchase
  const massKg = masses.get(itemId)
  return purchase.packs.map((pack) => ({
    itemId,
    name,
    code: pack.code,
    packs: pack.count,
    packHolds: pack.holds,
    unit,
    need,
    leftover,
    generic: generic.has(itemId),
    ...(massKg === undefined ? {} : { massKg }),
  }))
}

function cutsOf({ name, bars }: Pick<Purchase, 'name' | 'bars'>): PickList['pipeCuts'] {
  return bars === undefined ? [] : [{ name, bars }]
}

/** What one person should not lift alone, by where and how it is lifted: the new emitter, and the old one on its way out. */
function liftsOf({ swapId, ask }: SwapFacts, figures: Figures): PickList['lifts'] {
  const use = named(figures, liftSettings)
  const says = 'Over what one person should lift here: two people or a lifting aid.'
  const anew =
    hangingCrew(ask, use).people === 2 ? [{ name: ask.emitterName, massKg: ask.emitterMassKg }] : []
  const oldKg = ask.oldMassKg ?? 0
  const out = liftLimit(oldKg, { stairs: ask.storey !== 0 }, use)
  const old = out.people === 2 ? [{ name: `Old: ${ask.oldName ?? 'emitter'}`, massKg: oldKg }] : []
  return [...anew, ...old].map((lift) => ({ swapId, ...lift, says }))
}
