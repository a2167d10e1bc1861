import { because, given } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Job } from '../../domain/job.ts'
import type { Purchase, QuoteLine } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import { mulDiv } from '../money/mul-div.ts'
import { sharePence } from '../money/price.ts'
import { usualCategory } from './line-categories.ts'
import { sellingOf, soldFor } from './selling-price.ts'
import type { Selling } from './selling-price.ts'

/**
 * The priced lines of the parts list: what each is bought for, with the firm's mark-up or margin of its kind.
 * @param lines the parts list; gaps have no purchase and so no price
 * @param purchases how each line is bought, with the same order of lines
 * @param figures the firm's figures
 * @source practice, no published source
 * @example partLines([{ itemKind: 'vent', why: { says: 'one', value: 1, from: [] } }], [{ lineId: 'part-1', costPence: 100, packs: [], why: { says: 'one', value: 1, from: [] } }], { settings: { 'money.markUpPartsBasisPoints': { value: 3000 } } })[0].netPence // => 130
 */
export function partLines(
  lines: readonly TakeOffLine[],
  purchases: readonly Purchase[],
  figures: Figures,
): readonly QuoteLine[] {
  return jobPartLines(lines, purchases, { figures })
}

/**
 * The same, with the job's own mark-ups and margins before the firm's.
 * @param lines the parts list; gaps have no purchase and so no price
 * @param purchases how each line is bought, with the same order of lines
 * @param more the firm's figures, and the job's own way of pricing when it has one
 * @source practice, no published source
 * @example jobPartLines([{ itemKind: 'vent', why: { says: 'one', value: 1, from: [] } }], [{ lineId: 'part-1', costPence: 75, packs: [], why: { says: 'one', value: 1, from: [] } }], { figures: { settings: {} }, pricing: { markUps: [{ of: 'vent', by: 'margin', basisPoints: 2500 }] } })[0].netPence // => 100
 */
export function jobPartLines(
  lines: readonly TakeOffLine[],
  purchases: readonly Purchase[],
  more: { readonly figures: Figures; readonly pricing?: Job['pricing'] },
): readonly QuoteLine[] {
  const bought = new Map(purchases.map((purchase) => [purchase.lineId, purchase]))
  return lines.flatMap((line, index) => {
    const purchase = bought.get(`part-${index + 1}`)
    const selling = sellingOf(line.itemKind, more.figures, more.pricing)
    return purchase === undefined ? [] : [partLine(line, purchase, selling)]
  })
}

function partLine(line: TakeOffLine, purchase: Purchase, selling: Selling): QuoteLine {
  const why = soldFor(purchase.costPence, selling, [
    because('How many are needed.', line.quantity, { unit: line.unit, from: [line.why] }),
    purchase.why,
  ])
  return {
    lineId: purchase.lineId,
    section: line.itemKind === 'emitter' ? 'emitter' : 'parts',
    name: line.name,
    quantity: chargedQuantity(purchase),
    unit: line.unit,
    netPence: Number(why.value),
    rateKey: usualCategory,
    shared: line.shared,
    swapIds: line.swapIds,
    generic: line.generic,
    part: partOf(line),
    ...(line.was === undefined ? {} : { was: line.was }),
    why,
  }
}

function partOf({ lineKey, itemKind, itemId, filled }: TakeOffLine): NonNullable<QuoteLine['part']> {
  return {
    lineKey,
    itemKind,
    ...(itemId === undefined ? {} : { itemId }),
    ...(filled === undefined ? {} : { filled }),
  }
}

/** Whole packs are charged, so that is the quantity which the price is for. */
function chargedQuantity({ packs }: Purchase): number {
  return packs.reduce((sum, pack) => sum + pack.count * pack.holds, 0)
}

/**
 * The line for driving, there and back; none when the way was not given.
 * @param job the job with its distance in km, one way
 * @param figures the firm's figures
 * @source practice, no published source
 * @example travelLines({ site: { travelKm: 8 } }, { settings: { 'money.travelPencePerKm': { value: 45 } } })[0].netPence // => 720
 */
export function travelLines(job: Job, figures: Figures): readonly QuoteLine[] {
  const kmOneWay = job.site.travelKm ?? 0
  if (kmOneWay === 0) return []
  const km = kmOneWay * 2
  const netPence = pencePerKm(km, figure(figures, 'money.travelPencePerKm'))
  const why = because('There and back x what a kilometre is charged at.', netPence, {
    unit: 'pence',
    from: [given('Distance one way', kmOneWay, 'km', 'survey'), figureWhy(figures, 'money.travelPencePerKm')],
  })
  return [
    ownLine({
      lineId: 'travel',
      section: 'travel',
      name: 'Travel there and back',
      quantity: km,
      unit: 'km',
      netPence,
      why,
    }),
  ]
}

/**
 * Money for a distance, exact to a thousandth of a kilometre and rounded half up to a penny.
 * @param km distance in km, at least 0
 * @param pence pence for each kilometre, a whole number
 * @source practice, no published source
 * @example pencePerKm(24.5, 45) // => 1103
 */
export function pencePerKm(km: number, pence: number): number {
  return mulDiv(Math.round(km * 1000), pence, 1000, 'half-up')
}

/**
 * The allowance for the unforeseen, as a share of what stands before it; none when the firm takes none.
 * @param lines the priced lines that it is a share of
 * @param figures the firm's figures
 * @source practice, no published source
 * @example contingencyLines([{ netPence: 1000 }], { settings: { 'money.contingencyBasisPoints': { value: 500 } } })[0].netPence // => 50
 */
export function contingencyLines(lines: readonly QuoteLine[], figures: Figures): readonly QuoteLine[] {
  const basisPoints = figure(figures, 'money.contingencyBasisPoints')
  if (basisPoints === 0) return []
  const base = lines.reduce((sum, line) => sum + line.netPence, 0)
  const netPence = sharePence(base, basisPoints)
  const why = because('Parts and labour x the allowance.', netPence, {
    unit: 'pence',
    from: [given('Parts and labour', base, 'pence'), figureWhy(figures, 'money.contingencyBasisPoints')],
  })
  return [
    ownLine({
      lineId: 'contingency',
      section: 'other',
      name: 'Allowance for the unforeseen',
      quantity: 1,
      unit: 'sum',
      netPence,
      why,
    }),
  ]
}

/**
 * Options that the customer chose, as lines of the total.
 * @param job the job with its options
 * @source practice, no published source
 * @example chosenOptionLines({ options: [{ optionId: 'a', netPence: 100, chosen: false }] }) // => []
 */
export function chosenOptionLines(job: Job): readonly QuoteLine[] {
  return (job.options ?? [])
    .filter((option) => option.chosen)
    .map((option) => {
      const why = given(`Chosen option: ${option.name}`, option.netPence, 'pence', 'priced by hand')
      const { optionId, name, netPence } = option
      return ownLine({
        lineId: `option-${optionId}`,
        section: 'other',
        name,
        quantity: 1,
        unit: 'sum',
        netPence,
        why,
      })
    })
}

/** A line of the whole job that no catalogue item stands behind. */
function ownLine(
  line: Pick<QuoteLine, 'lineId' | 'section' | 'name' | 'quantity' | 'unit' | 'netPence' | 'why'>,
): QuoteLine {
  return { ...line, rateKey: usualCategory, shared: true, swapIds: [], generic: false }
}
