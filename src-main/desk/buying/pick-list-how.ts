import { figure } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { PickList } from '../../domain/quote.ts'
import type { VanStock } from '../../engine/buying/van-stock.ts'
import { buildPickList } from '../../engine/quote/pick-list.ts'
import type { Buying } from '../../engine/quote/pick-list.ts'
import { buyAfterVan } from '../../engine/takeoff/buying/after-van.ts'
import type { WorkedUp } from '../quoting/work-up.ts'
import { planBuying } from './buy-plan.ts'

/** How a pick list is wanted: with what is in the van, and bought line by line or split with carriage in mind. */
export type PickListHow = {
  readonly vanStock?: VanStock | undefined
  readonly by?: 'cheapestEach' | 'cheapestSplit' | undefined
}

/** The pick list as it is wanted. Neither the van nor the split changes the quote. */
export async function pickListHow(worked: WorkedUp, how: PickListHow): Promise<Outcome<PickList>> {
  const { vanStock = [], by } = how
  if (vanStock.length === 0 && by !== 'cheapestSplit') return accept(worked.pickList)
  const buying = await buyingOf(worked, vanStock, by)
  if (!buying.ok) return buying
  const { placed, facts, parts } = worked.ground
  const { figures, quote } = worked
  return accept(buildPickList(parts, quote, { placed, facts, figures, buying: buying.value }))
}

async function buyingOf(
  { ground, figures, catalogue, takeOff }: WorkedUp,
  vanStock: VanStock,
  by: PickListHow['by'],
): Promise<Outcome<Buying>> {
  const { shelf, parts } = ground
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const { purchases } = parts
  if (by !== 'cheapestSplit') return buyAfterVan(purchases, vanStock, { shelf, kerfMm })
  const { suppliers } = catalogue
  return planBuying({ purchases, vanStock, shelf, kerfMm, suppliers, lines: takeOff.lines })
}
