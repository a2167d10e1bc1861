import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { unitOfKind } from '../../../domain/item.ts'
import type { Unit } from '../../../domain/item.ts'
import type { Purchase } from '../../../domain/quote.ts'
import { inMillionths, stepsInUnit } from '../../buying/whole-units.ts'
import { mulDiv } from '../../money/mul-div.ts'
import type { MergedNeed } from '../merge-needs.ts'
import type { ByHand } from '../shelf.ts'

type OneOff = Extract<ByHand, { readonly kind: 'oneOff' }>
type Chosen = Extract<ByHand, { readonly kind: 'item' }>

/** What stands where a supplier's name and code would, for a thing that no catalogue has. */
const elsewhere = { supplierId: 'one-off', supplierName: 'Bought elsewhere', code: 'one-off' }

/**
 * How a thing that no catalogue has is bought: pieces one by one, all else as one pack of just what is needed. The cost is
 * quantity x cost of one unit, a half penny up. Nothing is left over, and pipe is not cut from it.
 * @param need the quantity in its unit
 * @param oneOff its name and what one of the unit costs, whole pence, 0 or more
 * @param lineId the line's id
 * @source practice, no published source
 * @example oneOffPurchase({ quantity: 2.5, unit: 'm' }, { name: 'Flue pipe', netCostPence: 333 }, 'part-1').costPence // => 833
 */
export function oneOffPurchase(
  need: Pick<MergedNeed, 'quantity' | 'unit'>,
  oneOff: Pick<OneOff, 'name' | 'netCostPence'>,
  lineId: string,
): Purchase {
  const { quantity, unit } = need
  const { name, netCostPence } = oneOff
  const costPence = mulDiv(inMillionths(quantity), netCostPence, stepsInUnit, 'half-up')
  const single = unit === 'each' && Number.isInteger(quantity)
  const { supplierId, supplierName, code } = elsewhere
  const pack = single
    ? { code, holds: 1, count: quantity, packPence: netCostPence }
    : { code, holds: quantity, count: 1, packPence: costPence }
  const why = because('Named and priced by hand: quantity x what one costs.', costPence, {
    unit: 'pence',
    from: [given('Needed', quantity, unit), given(`One ${wordOf[unit]} of ${name}`, netCostPence, 'pence')],
  })
  const bought = { need: quantity, packs: [pack], leftover: 0, costPence, oneOff: true as const, why }
  return { lineId, itemId: lineId, name, unit, supplierId, supplierName, ...bought }
}

const wordOf: Readonly<Record<Unit, string>> = { each: 'piece', m: 'm', m2: 'm²', ml: 'ml', L: 'L' }

/**
 * What is wrong with an item that was chosen by hand, in a sentence; null when it can stand in.
 * @param need what it is to stand in for
 * @param chosen its id, and the item if the catalogue has it among its parts
 * @source practice, no published source
 * @example handFault({ unit: 'each' }, { itemId: 'gone', item: null }) // => "gone, chosen by hand, is no part in the catalogue."
 */
export function handFault(
  need: Pick<MergedNeed, 'unit'>,
  chosen: Pick<Chosen, 'itemId' | 'item'>,
): string | null {
  const { itemId, item } = chosen
  if (item === null) return `${itemId}, chosen by hand, is no part in the catalogue.`
  const unit = unitOfKind[item.kind]
  if (unit === need.unit) return null
  return `${item.name}, chosen by hand, is counted in ${countedIn[unit]}, and this line in ${countedIn[need.unit]}.`
}

const countedIn: Readonly<Record<Unit, string>> = {
  each: 'pieces',
  m: 'metres',
  m2: 'square metres',
  ml: 'millilitres',
  L: 'litres',
}

/**
 * The reason of a line whose gap was filled by hand: what was missing, with what it was filled, and how many are needed.
 * @param why how many are needed
 * @param gap what the catalogue lacks, in a sentence
 * @param name what stands in
 * @source practice, no published source
 * @example whyFilled({ says: 'Two.', value: 2, unit: 'each', from: [] }, 'The catalogue has no vent.', 'Brass vent').says // => "Two. The catalogue has no vent. Filled by hand with Brass vent."
 */
export function whyFilled(why: Derivation, gap: string, name: string): Derivation {
  const unit = why.unit === undefined ? {} : { unit: why.unit }
  return because(`${why.says} ${gap} Filled by hand with ${name}.`, why.value, { ...unit, from: [why] })
}
