import type { TDocumentDefinitions } from 'pdfmake/interfaces'
import type { FinalAccount } from '../../domain/follow-up/after-job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { accountDocument } from '../../documents/after-job/account-document.ts'
import { accountView } from '../../documents/after-job/account-view.ts'
import { commissioningDocument } from '../../documents/after-job/commissioning-document.ts'
import { commissioningView } from '../../documents/after-job/commissioning-view.ts'
import { handoverDocument } from '../../documents/after-job/handover-document.ts'
import { handoverView } from '../../documents/after-job/handover-view.ts'
import type { AfterMaterial } from '../../documents/after-job/material.ts'
import { readAfterJob } from '../../store/after-jobs.ts'
import { reading } from '../../store/store.ts'
import type { Desk, UseCase } from '../desk.ts'
import { printPdf } from '../papers/print-pdf.ts'
import { printable } from '../papers/printable.ts'
import { usableLogo } from '../papers/usable-logo.ts'
import { paperPath, writePaper } from '../papers/write-paper.ts'
import type { Paper } from '../papers/write-paper.ts'
import { keptWork } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'
import { acceptedOf, accountOf, nothingYet } from './accepted.ts'

type Ready = { readonly material: AfterMaterial; readonly account: FinalAccount; readonly madeOn: string }

/** The final account for the customer: the quote, what was agreed since, tax, what is paid and what is left. */
export const finalAccountPdf: UseCase<'finalAccount.pdf'> = (input, desk) =>
  printed({ ...input, name: 'final-account' }, desk, async ({ material, account }) => {
    const { internal: _firmOnly, why: _why, ...shown } = account
    const view = await printable(accountView(material, shown))
    return view.ok ? accept(accountDocument(view.value)) : view
  })

/** The commissioning record, to be signed. */
export const commissioningPdf: UseCase<'commissioning.pdf'> = (input, desk) =>
  printed({ ...input, name: 'commissioning' }, desk, async ({ material }) => {
    const { commissioning } = material.after
    if (commissioning === undefined) {
      const message = 'Nothing is noted of the commissioning yet, so there is no record to print.'
      return refuse('conflict', message, 'quoteId', 'Note what was flushed, dosed and tested first.')
    }
    const view = await printable(commissioningView(material, commissioning))
    return view.ok ? accept(commissioningDocument(view.value)) : view
  })

/** The handover sheet: how the customer lives with what was fitted. */
export const handoverPdf: UseCase<'handover.pdf'> = (input, desk) =>
  printed({ ...input, name: 'handover' }, desk, async ({ material }) => {
    const view = await printable(handoverView(material))
    return view.ok ? accept(handoverDocument(view.value)) : view
  })

type Asked = { readonly quoteId: string; readonly out?: string | undefined; readonly name: string }

async function printed(
  { quoteId, out, name }: Asked,
  desk: Desk,
  define: (ready: Ready) => Promise<Outcome<TDocumentDefinitions>>,
): Promise<Outcome<Paper>> {
  const where = { out, name: `${name}-${quoteId}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const ready = await readyFor(quoteId, desk)
  if (!ready.ok) return ready
  const defined = await define(ready.value)
  if (!defined.ok) return defined
  return writePaper(await printPdf(defined.value, { createdOn: ready.value.madeOn }), where, desk)
}

/** All that the papers after a job are made from, as it is noted now. */
async function readyFor(quoteId: string, desk: Desk): Promise<Outcome<Ready>> {
  const found = await reading(storeOf(desk), async (tx) => {
    const accepted = await acceptedOf(tx, quoteId, desk)
    if (!accepted.ok) return accepted
    return accept({ accepted: accepted.value, kept: await readAfterJob(tx, quoteId) })
  })
  if (!found.ok) return found
  const { accepted, kept } = found.value
  const work = await keptWork(quoteId, desk)
  if (!work.ok) return work
  const after = kept?.afterJob ?? nothingYet
  const account = accountOf(accepted, after)
  if (!account.ok) return account
  const firm = await firmOnPaper(work.value.firm)
  if (!firm.ok) return firm
  const { quote, events } = accepted
  const acceptedOn = events.findLast(({ kind }) => kind === 'accepted')?.onDay ?? quote.issuedOn
  const madeOn = kept?.closedOn ?? desk.today
  const { job, emitters } = work.value
  const material = {
    job,
    quote: work.value.quote,
    firm: firm.value,
    emitters,
    after,
    number: quote.number,
    revision: quote.revision,
    acceptedOn,
    madeOn,
    closed: (kept?.closedOn ?? null) !== null,
  }
  return accept({ material, account: account.value, madeOn })
}

async function firmOnPaper(firm: AfterMaterial['firm'] | null): Promise<Outcome<AfterMaterial['firm']>> {
  if (firm === null) {
    const message = 'The quote does not say which firm it is from, so no paper can follow it.'
    return refuse('invalid', message, 'quoteId', 'Fill in your firm’s details, and issue the quote again.')
  }
  if (firm.logo === undefined) return accept(firm)
  const logo = await usableLogo(firm.logo)
  return logo.ok ? accept({ ...firm, logo: logo.value }) : logo
}
