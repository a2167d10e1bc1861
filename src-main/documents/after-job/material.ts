import type { AfterJob } from '../../domain/follow-up/after-job.ts'
import type { Customer, Firm } from '../../domain/firm.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Job } from '../../domain/job.ts'
import type { Quote } from '../../domain/quote.ts'

/** What the papers after a job are made from. Only what each of them needs is taken out of it. */
export type AfterMaterial = {
  readonly job: Job
  readonly quote: Pick<Quote, 'lines' | 'totals'>
  readonly firm: Firm
  /** By swap. */
  readonly emitters: Readonly<Record<string, Emitter>>
  /** The number that the accepted quote bears, and which revision of it. */
  readonly number: string
  readonly revision: number
  readonly acceptedOn: string
  readonly madeOn: string
  readonly closed: boolean
  readonly after: AfterJob
}

/** Who a paper is from and for, and which quote it follows. */
export type PaperHead = {
  readonly firm: Firm
  readonly customer: Pick<Customer, 'name' | 'addressLines'>
  /** Where the work was; null where that is the customer's own address. */
  readonly site: readonly string[] | null
  /** `Q-2026-0007, revision 1`. */
  readonly quoteName: string
  readonly acceptedOn: string
  readonly madeOn: string
}

export function paperHead({ job, firm, number, revision, acceptedOn, madeOn }: AfterMaterial): PaperHead {
  const { name, addressLines } = job.customer
  const site = job.site.addressLines
  const same = site.length === 0 || site.join('\n') === addressLines.join('\n')
  return {
    firm,
    customer: { name, addressLines },
    site: same ? null : site,
    quoteName: revision === 0 ? number : `${number}, revision ${revision}`,
    acceptedOn,
    madeOn,
  }
}
