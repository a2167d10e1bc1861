import { accept, refuse, under } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { Unit } from '../../../domain/item.ts'
import { inMillionths, stepsInUnit } from '../whole-units.ts'
import { mixedWays, wayAlone } from './mixed-ways.ts'
import type { Way, WayAlone } from './mixed-ways.ts'
import { coverWithBreaks } from './supplier-split-packs.ts'
import type { OfferedPack } from './supplier-split-packs.ts'
import type { Terms } from './supplier-split-cost.ts'
import { takeFromVan } from '../van-stock.ts'
import type { AfterVan, VanStock } from '../van-stock.ts'

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
/** A line with what it comes to from each supplier who has it, and from two together where that is cheaper. */
export type OfferedLine = SplitLine & {
  readonly fromVan: number
  /** Of all the lines that are bought together with this one. */
  readonly toBuy: number
  readonly from: readonly Way[]
  /** The lines of the same item whose packs are bought here, this one too; absent where it is the only one. */
  readonly lineIds?: readonly string[] | undefined
  /** The item's name, for sentences; its id stands in where there is none. */
  readonly name?: string | undefined
  /** Why nobody's offer could be used, where that is so. */
  readonly gap?: string | undefined
}

/**
 * What each line comes to from each supplier who offers it, in whole packs, after what the van gives. Lines of the same item are
 * bought together, under the first of their ids, and share packs: a supplier's packs for one of them do for all.
 * Refuses an id given twice, one item in two units, an offer for a line or from a supplier that is not there, and packs that
 * `coverWithBreaks` refuses.
 *
 * @param input lines with a need in the item's unit; offers with packs in the same unit and whole pence; suppliers; van stock
 * @source practice, no published source
 * @example offeredLines({ lines: [{ lineId: 'a', itemId: 'clip', need: 7, unit: 'each' }], offers: [{ lineId: 'a', supplierId: 's', packs: [{ code: 'C', holds: 5, pence: 100 }] }], suppliers: [{ supplierId: 's', name: 'S', carriagePence: 0 }], vanStock: [{ itemId: 'clip', quantity: 2 }] }).value.map((line) => line.from[0].pence) // => [100]
 */
export function offeredLines(input: SplitInput): Outcome<readonly OfferedLine[]> {
  const fault = inputFault(input) ?? unitFault(input.lines)
  if (fault !== null) return fault
  const offers = Map.groupBy(
    input.offers.map((offer, place) => ({ ...offer, place })),
    ({ lineId }) => lineId,
  )
  const taken = takeFromVan(input.lines, input.vanStock ?? [])
  const wanted = taken.filter(({ toBuy }) => toBuy > 0).toSorted((a, b) => (a.lineId < b.lineId ? -1 : 1))
  const bought = new Map<string, OfferedLine>()
  for (const group of Map.groupBy(wanted, ({ itemId }) => itemId).values()) {
    const asked = group.flatMap(({ lineId }) => offers.get(lineId) ?? [])
    const steps = group.reduce((sum, { toBuy }) => sum + inMillionths(toBuy), 0)
    const from = waysFrom(steps / stepsInUnit, asked)
    if (!from.ok) return from
    for (const line of boughtTogether(group, from.value, steps / stepsInUnit)) bought.set(line.lineId, line)
  }
  return accept(taken.map((line) => bought.get(line.lineId) ?? { ...line, from: [] }))
}

/**
 * Lines of one item that are bought together: the first of them buys for all, sum(to_buy). Where nobody offers the item, each is a gap
 * of its own.
 *
 * @param group lines of one item, in the order of their ids
 * @param from what they come to together from each supplier
 * @param toBuy of all of them, in the item's unit
 * @source practice, no published source
 * @example boughtTogether([{ lineId: 'a' }, { lineId: 'b' }], [{ supplierId: 's', pence: 5 }], 2).map((line) => line.toBuy) // => [2, 0]
 */
export function boughtTogether(
  group: readonly AfterVan<SplitLine>[],
  from: readonly Way[],
  toBuy: number,
): readonly OfferedLine[] {
  const lineIds = group.map(({ lineId }) => lineId)
  if (from.length === 0 || group.length === 1) return group.map((line) => ({ ...line, from }))
  return group.map((line, place) =>
    place === 0 ? { ...line, toBuy, from, lineIds } : { ...line, toBuy: 0, from: [] },
  )
}

type Asked = Offer & { readonly place: number }

function waysFrom(toBuy: number, asked: readonly Asked[]): Outcome<readonly Way[]> {
  const alone: WayAlone[] = []
  for (const [supplierId, offers] of Map.groupBy(asked, (offer) => offer.supplierId)) {
    const offered = different(offers.flatMap(({ packs }) => packs))
    const bought = coverWithBreaks(toBuy, offered)
    if (!bought.ok) return under(`offers[${offers[0]?.place ?? 0}]`, bought)
    alone.push({ ...bought.value, supplierId, offered })
  }
  return accept([...alone.map(wayAlone), ...mixedWays(toBuy, alone)])
}

/** Each pack once: two lines of an item name the same packs. */
function different(packs: readonly OfferedPack[]): readonly OfferedPack[] {
  const keyOf = ({ code, holds, pence, breaks = [] }: OfferedPack) =>
    JSON.stringify([code, holds, pence, breaks])
  return [...new Map(packs.map((pack) => [keyOf(pack), pack])).values()]
}

function unitFault(lines: readonly SplitLine[]): Outcome<never> | null {
  const units = new Map<string, Unit>()
  for (const [place, { itemId, unit }] of lines.entries()) {
    const before = units.get(itemId) ?? unit
    if (before !== unit) {
      const message = `The item ${itemId} is counted in ${before} in one line and in ${unit} in another; give it one unit.`
      return refuse('invalid', message, `lines[${place}].unit`)
    }
    units.set(itemId, unit)
  }
  return null
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
