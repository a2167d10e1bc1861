import { daysAfter } from './days.ts'
import { assumptionsOf, notIncludedOf } from './quote/assumptions.ts'
import { safetyFor } from './quote/safety.ts'
import type { Safety } from './quote/safety.ts'
import { roomsOf, wholeJobWork } from './quote/scope.ts'
import type { ScopeOfRoom } from './quote/scope.ts'
import { pricesOf } from './quote/prices.ts'
import type { Prices } from './quote/prices.ts'
import type { Customer, Firm } from '../domain/firm.ts'
import type { Emitter } from '../domain/item.ts'
import type { Job } from '../domain/job.ts'
import type { Quote } from '../domain/quote.ts'
import type { SetOut } from '../domain/set-out.ts'
import type { TakeOffLine } from '../domain/take-off.ts'

/** All that the customer's paper may show. Nothing here says what the firm pays, whom it buys from, or what it earns. */
export type CustomerQuoteView = {
  readonly reference: string
  /** The number that it was issued under; absent on a draft. */
  readonly number?: string
  /** 0 or absent: as first issued. */
  readonly revision?: number
  /** The day on which it was issued; absent on a draft. */
  readonly issuedOn?: string
  readonly quotedOn: string
  readonly validUntil: string
  readonly surveyedOn: string
  readonly firm: Firm
  readonly customer: Pick<Customer, 'name' | 'addressLines'>
  /** Where the work is; null where that is the customer's own address. */
  readonly site: readonly string[] | null
  readonly rooms: readonly ScopeOfRoom[]
  readonly wholeJob: readonly string[]
  readonly prices: Prices
  readonly notIncluded: readonly string[]
  readonly assumptions: readonly string[]
  readonly safety: Safety
}

/** What the customer's view is made from. Only what it needs is taken out of it. */
export type QuoteMaterial = {
  readonly job: Job
  readonly quote: Quote
  readonly firm: Firm
  readonly takeOffLines: readonly TakeOffLine[]
  /** By swap. */
  readonly setOuts: Readonly<Record<string, SetOut>>
  /** By swap. */
  readonly emitters: Readonly<Record<string, Emitter>>
  readonly reference: string
  /** What it bears once it is issued; without a number and a day of issue it is a draft. */
  readonly number?: string | undefined
  readonly revision?: number | undefined
  readonly issuedOn?: string | undefined
  /** The last day on which it stands; so many days after its date when absent. */
  readonly validUntil?: string | undefined
  readonly quotedOn: string
  readonly validDays: number
  /** Rates of tax by their key, in basis points, for options that stand outside the total. */
  readonly taxBasisPoints: Readonly<Record<string, number>>
}

/** The quote as its customer reads it. */
export function customerQuoteView(from: QuoteMaterial): CustomerQuoteView {
  const { job, quote, firm, reference, quotedOn } = from
  const { name, addressLines } = job.customer
  const { number, revision, issuedOn } = from
  const samePlace = job.site.addressLines.join('\n') === addressLines.join('\n')
  return {
    reference,
    ...(number === undefined ? {} : { number }),
    ...(revision === undefined ? {} : { revision }),
    ...(issuedOn === undefined ? {} : { issuedOn }),
    quotedOn,
    validUntil: from.validUntil ?? daysAfter(issuedOn ?? quotedOn, from.validDays),
    surveyedOn: job.survey.surveyedOn,
    firm,
    customer: { name, addressLines },
    site: samePlace || job.site.addressLines.length === 0 ? null : job.site.addressLines,
    rooms: roomsOf(from),
    wholeJob: wholeJobWork(from),
    prices: pricesOf({
      quote,
      job,
      detail: job.priceDetail ?? firm.priceDetail ?? 'lines',
      taxBasisPoints: from.taxBasisPoints,
    }),
    notIncluded: notIncludedOf(from),
    assumptions: assumptionsOf(from),
    safety: safetyFor(quote.cautions),
  }
}
