import { because } from '../../domain/derivation.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { certain } from '../../domain/outcome.ts'
import type { PickList, Purchase, Quote } from '../../domain/quote.ts'
import { cutPipe } from '../buying/cut-pipe.ts'
import { hangingCrew, liftLimit, liftSettings } from '../labour/crew-lift.ts'
import type { JobFacts, PlacedSwap } from '../takeoff/job-facts.ts'
import type { SwapFacts } from '../takeoff/swap-facts.ts'
import { named } from '../takeoff/rule.ts'
import { needInWords } from '../takeoff/resolve.ts'
import type { PricedTakeOff } from '../takeoff/take-off.ts'

/**
 * What goes into the van: each supplier's packs, what the boxes bring, tools, pipe cuts, and what is missing.
 * @param parts the parts list with its purchases
 * @param quote the quote, for its gaps
 * @param more the swaps and the firm's figures
 * @source practice, no published source
 * @example buildPickList({ purchases: [], boxUses: [], takeOff: { tools: [], lines: [] } }, { gaps: [{ says: 'No vent.' }] }, { placed: [], facts: { swaps: [] }, figures: { settings: { 'pipe.kerfMm': { value: 1 } } } }).missing // => ["No vent."]
 */
export function buildPickList(
  parts: PricedTakeOff,
  quote: Pick<Quote, 'gaps'>,
  more: { readonly placed: readonly PlacedSwap[]; readonly facts: JobFacts; readonly figures: Figures },
): PickList {
  const { placed, facts, figures } = more
  const suppliers = supplierGroups(parts, placed)
  return {
    suppliers,
    fromBox: parts.boxUses.map((use) => ({
      name: needInWords(use),
      quantity: use.quantity,
      swapId: use.swapId,
    })),
    tools: parts.takeOff.tools,
    pipeCuts: parts.purchases.flatMap((purchase) => cutsOf(purchase, figure(figures, 'pipe.kerfMm'))),
    missing: quote.gaps.map((gap) =>
      gap.waived === undefined ? gap.says : `${gap.says} Left out because: ${gap.waived}`,
    ),
    lifts: facts.swaps.flatMap((swap) => liftsOf(swap, figures)),
    why: because('Whole packs for every line, by supplier.', parts.purchases.length, {
      unit: 'lines',
      from: parts.purchases.map((purchase) => purchase.why),
    }),
  }
}

function supplierGroups(parts: PricedTakeOff, placed: readonly PlacedSwap[]): PickList['suppliers'] {
  const known: Known = {
    masses: new Map(placed.map(({ emitter }) => [emitter.itemId, emitter.dryKg])),
    generic: new Set(parts.takeOff.lines.filter((line) => line.generic).map((line) => line.itemId)),
  }
  return [...Map.groupBy(parts.purchases, (purchase) => purchase.supplierId)]
    .map(([supplierId, group]) => ({
      supplierId,
      name: group[0]?.supplierName ?? supplierId,
      lines: group.flatMap((purchase) => linesOf(purchase, known)),
    }))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
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

function cutsOf(purchase: Purchase, kerfMm: number): PickList['pipeCuts'] {
  if (purchase.pieces === undefined) return []
  const stock = purchase.packs.map((pack) => ({
    id: pack.code,
    lengthMm: Math.round(pack.holds * 1000),
    pence: pack.packPence,
  }))
  const pieces = purchase.pieces.map((piece, index) => ({ ...piece, id: `${index + 1}, ${piece.id}` }))
  return [{ name: purchase.name, bars: certain(cutPipe({ pieces, stock, kerfMm })).bars }]
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
