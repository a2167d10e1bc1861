import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { mailDraft } from '../../exchange/mail/draft.ts'
import type { MailAddress } from '../../exchange/mail/draft.ts'
import { readFirm } from '../../store/firm.ts'
import { readJob } from '../../store/jobs.ts'
import { readIssuedPdf } from '../../store/quotes.ts'
import { reading } from '../../store/store.ts'
import type { ReadTx } from '../../store/tables.ts'
import type { UseCase } from '../desk.ts'
import { filePath, writeFile } from '../papers/write-file.ts'
import { storeOf } from '../store-of.ts'
import { mailSubject, mailText } from './quote-mail-text.ts'
import type { MailSays } from './quote-mail-text.ts'
import { issuedOf, quoteRow } from './quote-row.ts'
import type { WithEvents } from './quote-row.ts'

/** The issued quote as a mail that nobody has sent: from the firm, to the customer, with the PDF as it went out. */
export const quoteMail: UseCase<'quote.mail'> = async ({ quoteId, to, out }, desk) => {
  const file = { form: 'eml' as const, out, name: `quote-${quoteId}` }
  const place = filePath(file, desk)
  if (!place.ok) return place
  const asked = { quoteId, to, today: desk.today }
  const material = await reading(storeOf(desk), (tx) => materialOf(tx, asked))
  if (!material.ok) return material
  const { says, from, customer, pdf } = material.value
  const subject = mailSubject(says)
  const drafted = await mailDraft({
    from,
    to: [customer],
    subject,
    text: mailText(says),
    attached: { fileName: `quote-${quoteId}.pdf`, pdf: pdf.bytes },
    sentAt: desk.now(),
    messageId: `${quoteId.replace(/[^A-Za-z0-9-]+/g, '-')}@${domainOf(from)}`,
    boundary: pdf.hash.slice(0, 40),
  })
  if (!drafted.ok) return { ok: false, problems: drafted.problems.map(atTheirFields) }
  const written = await writeFile({ ...file, bytes: drafted.value }, desk)
  if (!written.ok) return written
  return accept({ ...written.value, to: customer.address, subject, pdfHash: pdf.hash })
}

type Asked = { readonly quoteId: string; readonly to: string | undefined; readonly today: string }
type Material = {
  readonly says: MailSays
  readonly from: MailAddress
  readonly customer: MailAddress
  readonly pdf: { readonly bytes: Uint8Array; readonly hash: string }
}

async function materialOf(tx: ReadTx, { quoteId, to, today }: Asked): Promise<Outcome<Material>> {
  const found = await issuedOf(tx, quoteId)
  if (!found.ok) return found
  const { quote, events } = found.value
  const row = quoteRow(quote, events, today)
  if (row.state === 'replaced' || row.state === 'withdrawn') {
    const message = `${quoteId} is ${row.state}, so it goes to no customer any more.`
    return refuse('conflict', message, 'quoteId', 'Make a draft of the quote that stands.')
  }
  const from = await senderOf(tx, found.value)
  if (!from.ok) return from
  const customer = await receiverOf(tx, found.value, to)
  if (!customer.ok) return customer
  const pdf = await readIssuedPdf(tx, quoteId)
  if (pdf === null) {
    const message = `${quoteId} was kept before PDFs were, so there is none to attach.`
    return refuse('not-found', message, 'quoteId', 'Issue the job’s quote anew, and send that.')
  }
  const { phone } = quote.snapshot.job.firm ?? {}
  const firm = { name: from.value.name, ...(phone === undefined ? {} : { phone }) }
  const says = { quote: row, totals: quote.snapshot.quote.totals, firm }
  return accept({ says, from: from.value, customer: customer.value, pdf })
}

/** The firm of the quote, by the address that stands in it or else by the one that the firm has now. */
async function senderOf(tx: ReadTx, { quote }: WithEvents): Promise<Outcome<MailAddress>> {
  const firm = quote.snapshot.job.firm ?? null
  const now = await readFirm(tx)
  const address = [firm?.email, now?.email].find((email) => email !== undefined && email !== '')
  const name = firm?.name ?? now?.name
  if (address !== undefined && name !== undefined) return accept({ name, address })
  const message = 'Your firm has no email address, so nobody would know whom the mail is from.'
  return refuse('invalid', message, 'firm.email', 'Give your firm an email address, and try again.')
}

/** Who is named; else the customer, by the address that the job has now or else by the one in the quote. */
async function receiverOf(
  tx: ReadTx,
  { quote }: WithEvents,
  to: string | undefined,
): Promise<Outcome<MailAddress>> {
  const { customerName: name, snapshot, jobId } = quote
  if (to !== undefined) return accept({ name, address: to })
  const job = await readJob(tx, jobId)
  const known = [job?.customer.email, snapshot.job.customer.email]
  const address = known.find((email) => email !== undefined && email !== '')
  if (address !== undefined) return accept({ name, address })
  const message = `Nobody has said at which email address ${name} is reached.`
  return refuse('invalid', message, 'to', 'Say whom it goes to, or give the customer an email address.')
}

function domainOf({ address }: MailAddress): string {
  return address.slice(address.lastIndexOf('@') + 1)
}

/** What the draft refuses by its own names, by those of the request and of the firm. */
function atTheirFields(problem: Problem): Problem {
  const { path = '' } = problem
  if (path.startsWith('from') || path === 'messageId') {
    const next = 'Put it right in your firm’s details, and try again.'
    return { ...problem, path: path === 'from.name' ? 'firm.name' : 'firm.email', next }
  }
  if (!path.startsWith('to')) return problem
  return { ...problem, path: 'to', next: 'Say whom it goes to, or put the customer’s address right.' }
}
