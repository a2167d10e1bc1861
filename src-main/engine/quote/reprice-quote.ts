import type { Figures } from '../../domain/figures.ts'
import type { Job, Override } from '../../domain/job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Quote, QuoteLine } from '../../domain/quote.ts'
import { pricedWork, waivedGap } from './price-work.ts'
import { sellingOf, soldFor } from './selling-price.ts'

/**
 * A quote priced anew: the same work, with the job's present mark-ups, discounts, options, tax and prices by hand. It is what
 * building the quote from the ground would give, as long as `sameWork` holds, and much quicker.
 * Refuses what building the quote would refuse of the price.
 * @param quote the quote as it was built for the job before
 * @param job the job as it is now
 * @param figures the figures in force, the job's own among them
 * @source practice, no published source
 * @example repriceQuote({ lines: [], gaps: [], internal: { costPence: 0 } }, { site: {}, options: [{ optionId: 'a', name: 'A', netPence: 100, chosen: true }] }, { settings: { 'money.contingencyBasisPoints': { value: 0 }, 'money.depositBasisPoints': { value: 2500 }, 'tax.standardBasisPoints': { value: 2000 } } }).value.internal.marginPence // => 100
 */
export function repriceQuote(quote: Quote, job: Job, figures: Figures): Outcome<Quote> {
  const work = quote.lines.filter((line) => line.part !== undefined || line.section === 'labour')
  const ids = new Map(
    work.flatMap(({ part, lineId }) => (part === undefined ? [] : [[part.lineKey, lineId]])),
  )
  const base = () => work.map((line) => soldAnew(asWorkedOut(line), job, figures))
  const own = new Map(
    (job.overrides ?? [])
      .filter(({ netPence }) => netPence !== undefined)
      .map((one) => [ids.get(one.lineKey) ?? one.lineKey, one]),
  )
  const priced = pricedWork({ job, base, own, figures })
  if (!priced.ok) return priced
  const { internal } = quote
  return accept({
    ...quote,
    ...priced.value,
    gaps: quote.gaps.map((gap) => waivedGap(gap, job.waivers)),
    internal: { ...internal, marginPence: priced.value.totals.netPence - internal.costPence },
  })
}

/** The line before its price was set by hand, and without the tax that rounding by line gave it. */
function asWorkedOut(priced: QuoteLine): QuoteLine {
  if (priced.taxPence === undefined && priced.was?.netPence === undefined) return priced
  const { taxPence: _taxPence, was, ...line } = priced
  const { netPence, ...before } = was ?? {}
  const kept = Object.keys(before).length === 0 ? line : { ...line, was: before }
  const [, why] = line.why.from
  return netPence === undefined || why === undefined ? kept : { ...kept, netPence, why }
}

/**
 * A part at the job's present mark-up or margin. Its reason holds how many, what they cost, and how that is sold. What is sold as
 * before stays the same object, so that whoever shows it sees that nothing changed.
 */
function soldAnew(line: QuoteLine, job: Job, figures: Figures): QuoteLine {
  const [needed, bought, before] = line.why.from
  if (line.part === undefined || needed === undefined || bought === undefined) return line
  const selling = sellingOf(line.part.itemKind, figures, job.pricing)
  if (JSON.stringify(selling.why) === JSON.stringify(before)) return line
  const why = soldFor(Number(bought.value), selling, [needed, bought])
  return { ...line, netPence: Number(why.value), why }
}

const sold = ['money.deposit', 'money.contingency', 'money.markUp', 'money.margin']

/**
 * Whether two states of a job call for the same parts and the same labour, so that only their prices can differ: the survey, the
 * swaps, what gaps were filled with, quantities and items changed by hand, and every figure but mark-ups, margins, the allowance
 * and the deposit are the same.
 * @param a one state of a job
 * @param b another
 * @source practice, no published source
 * @example sameWork({ rooms: [], title: 'A' }, { rooms: [], title: 'B' }) // => true
 */
export function sameWork(a: Job, b: Job): boolean {
  const pairs: readonly (readonly [unknown, unknown])[] = [
    [a.rooms, b.rooms],
    [a.swaps, b.swaps],
    [a.survey, b.survey],
    [a.site, b.site],
    [a.quotedOn, b.quotedOn],
    [a.fills ?? [], b.fills ?? []],
    [partsChanged(a.overrides), partsChanged(b.overrides)],
    [workFigures(a), workFigures(b)],
  ]
  return pairs.every(([one, other]) => one === other || JSON.stringify(one) === JSON.stringify(other))
}

function partsChanged(overrides: readonly Override[] = []): readonly unknown[] {
  return overrides
    .filter(({ quantity, itemId }) => quantity !== undefined || itemId !== undefined)
    .map(({ lineKey, quantity, itemId, reason }) => ({ lineKey, quantity, itemId, reason }))
}

function workFigures({ figures = {} }: Job): readonly unknown[] {
  return Object.entries(figures)
    .filter(([id]) => !sold.some((start) => id.startsWith(start)))
    .toSorted(([one], [other]) => (one < other ? -1 : 1))
}
