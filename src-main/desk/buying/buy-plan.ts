import { figure } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Supplier } from '../../domain/price.ts'
import type { Purchase } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import type { SplitAnswer } from '../../engine/buying/split/supplier-split-answer.ts'
import type { OfferedLine } from '../../engine/buying/split/supplier-split-offers.ts'
import { splitCase, splitWith } from '../../engine/buying/split/supplier-split.ts'
import type { VanStock } from '../../engine/buying/van-stock.ts'
import { buyAfterVan } from '../../engine/takeoff/buying/after-van.ts'
import type { FromVan } from '../../engine/takeoff/buying/after-van.ts'
import { linesToSplit, purchasesOfSplit } from '../../engine/takeoff/buying/split-purchases.ts'
import { jobFacts } from '../../engine/takeoff/job-facts.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import { overrideParts } from '../../engine/quote/override-parts.ts'
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
  const whole = takeOff(jobFacts(job, placed, figures), shelf, figures)
  const listed = overrideParts(whole, job.overrides ?? [], { shelf, figures })
  if (!listed.ok) return listed
  const { takeOff: list, purchases } = listed.value
  const kerfMm = figure(figures, 'pipe.kerfMm')
  const { suppliers } = catalogue
  const planned = await planBuying({ purchases, vanStock, shelf, kerfMm, suppliers, lines: list.lines })
  return planned.ok ? accept(planned.value.split) : planned
}

type ToPlan = {
  readonly purchases: readonly Purchase[]
  readonly vanStock: VanStock
  readonly shelf: Shelf
  readonly kerfMm: number
  readonly suppliers: readonly Supplier[]
  /** The parts list, for its gaps. */
  readonly lines: readonly TakeOffLine[]
}
type Planned = {
  readonly split: SplitAnswer
  readonly purchases: readonly Purchase[]
  readonly fromVan: readonly FromVan[]
}

/** The van first, then the cheapest split of the rest: the answer in sums, and as purchases. */
export async function planBuying(from: ToPlan): Promise<Outcome<Planned>> {
  const van = buyAfterVan(from.purchases, from.vanStock, from)
  if (!van.ok) return van
  const { lines, bars } = linesToSplit(from.purchases, van.value, from)
  const ready = splitCase([...lines, ...gapLines(from.lines)], from.suppliers)
  const split = await splitWith(ready, solverWithin())
  if (!split.ok) return split
  const purchases = purchasesOfSplit(split.value, van.value.purchases, bars)
  return accept({ split: split.value, purchases, fromVan: van.value.fromVan })
}

function gapLines(lines: readonly TakeOffLine[]): readonly OfferedLine[] {
  return lines.flatMap(({ gap, itemId, itemKind, unit, quantity }, index) =>
    gap === undefined
      ? []
      : [
          {
            lineId: `gap-${index + 1}`,
            itemId: itemId ?? itemKind,
            unit,
            need: quantity,
            fromVan: 0,
            toBuy: quantity,
            from: [],
            gap,
          },
        ],
  )
}
