import { createHash } from 'node:crypto'
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import PostalMime from 'postal-mime'
import { describe, expect, it } from 'vitest'
import { answer } from '../../../../src-main/desk/router.ts'
import { mailText } from '../../../../src-main/desk/quote-life/quote-mail-text.ts'
import { reverseChargeWording } from '../../../../src-main/domain/pricing.ts'
import { refused } from '../../../answered.ts'
import { ask, deskOfToday, firm, issueDay, job } from './issued-for-tests.ts'

const pounds = (pence: number) => `£${(pence / 100).toFixed(2)}`
const { email: _email, ...firmWithoutMail } = firm

describe('a mail draft of an issued quote', () => {
  it('is from the firm to the customer, says what it comes to, and carries the PDF as it went out', async () => {
    const desk = await deskOfToday()
    const { quoteId, grossPence, validUntil, pdfHash } = await ask(desk, 'quote.issue', { job })
    const made = await ask(desk, 'quote.mail', { quoteId })
    expect(validUntil).toBe('2026-04-01')
    expect(made).toMatchObject({
      path: join(desk.papersFolder, 'quote-Q-2026-0001.eml'),
      to: 'robin@example.com',
      subject: 'Quote Q-2026-0001 from Sampleton Test Heating',
      pdfHash,
    })
    const bytes = await readFile(made.path)
    expect(bytes.length).toBe(made.bytes)
    const mail = await PostalMime.parse(bytes)
    expect(mail.from).toMatchObject({ name: firm.name, address: firm.email })
    expect(mail.to).toMatchObject([{ name: 'Robin Sample', address: 'robin@example.com' }])
    expect(mail.subject).toBe(made.subject)
    expect(mail.date).toBe('2026-03-02T09:30:00.000Z')
    expect(mail.messageId).toBe('<Q-2026-0001@test-heating.example.com>')
    expect(mail.text?.replaceAll('\r\n', '\n').trimEnd().split('\n')).toEqual([
      'Dear Robin Sample,',
      '',
      'Our quote Q-2026-0001 of 2 March 2026 is attached.',
      '',
      `Total with VAT: ${pounds(grossPence)}`,
      'Valid until: 1 April 2026',
      '',
      'If you have a question, answer this mail or ring 01632 960100.',
      '',
      'Kind regards',
      'Sampleton Test Heating',
      '01632 960100',
    ])
    expect(mail.attachments.map(({ filename }) => filename)).toEqual(['quote-Q-2026-0001.pdf'])
    const attached = new Uint8Array(mail.attachments[0]?.content as ArrayBuffer)
    expect(createHash('sha256').update(attached).digest('hex')).toBe(pdfHash)
    const pdf = await ask(desk, 'quote.pdf', { quoteId })
    expect(Buffer.from(attached).equals(await readFile(pdf.path))).toBe(true)
  })

  it('is the same bytes when it is made again, and is read back by its name', async () => {
    const desk = await deskOfToday()
    const { quoteId } = await ask(desk, 'quote.issue', { job })
    const first = await readFile((await ask(desk, 'quote.mail', { quoteId })).path)
    const second = await readFile((await ask(desk, 'quote.mail', { quoteId })).path)
    expect(second.equals(first)).toBe(true)
    const { base64 } = await ask(desk, 'paper.read', { name: 'quote-Q-2026-0001.eml' })
    expect(Buffer.from(base64, 'base64').equals(first)).toBe(true)
  })

  it('names no supplier, no cost and no margin', async () => {
    const desk = await deskOfToday()
    const quote = await ask(desk, 'quote.build', { job })
    const { quoteId } = await ask(desk, 'quote.issue', { job })
    const { path } = await ask(desk, 'quote.mail', { quoteId })
    const { text = '' } = await PostalMime.parse(await readFile(path))
    const { costPence, marginPence, labourCostPence, purchases } = quote.internal
    const secrets = [
      ...[costPence, marginPence, labourCostPence].map((pence) => (pence / 100).toFixed(2)),
      ...purchases.map(({ supplierName }) => supplierName),
      'margin',
      'cost',
    ]
    expect(purchases.length).toBeGreaterThan(0)
    expect(secrets.filter((secret) => text.toLowerCase().includes(secret.toLowerCase()))).toEqual([])
  })

  it('says which revision it is; one that was replaced goes to nobody', async () => {
    const desk = await deskOfToday()
    const first = await ask(desk, 'quote.issue', { job })
    const second = await ask(desk, 'quote.issue', { job, revises: first.quoteId })
    const made = await ask(desk, 'quote.mail', { quoteId: second.quoteId })
    expect(made.subject).toBe('Quote Q-2026-0001, revision 1, from Sampleton Test Heating')
    const { text } = await PostalMime.parse(await readFile(made.path))
    expect(text).toContain('Our quote Q-2026-0001, revision 1, of 2 March 2026 is attached.')
    expect(refused(await answer('quote.mail', { quoteId: first.quoteId }, desk))).toEqual({
      code: 'conflict',
      message: 'Q-2026-0001 is replaced, so it goes to no customer any more.',
      path: 'quoteId',
      next: 'Make a draft of the quote that stands.',
    })
    await ask(desk, 'quote.mark', { quoteId: second.quoteId, kind: 'withdrawn', reason: 'no' })
    const withdrawn = refused(await answer('quote.mail', { quoteId: second.quoteId }, desk))
    expect(withdrawn.message).toBe('Q-2026-0001-R1 is withdrawn, so it goes to no customer any more.')
  })

  it('wants an address of the firm, and takes the one that the firm gives later', async () => {
    const desk = await deskOfToday()
    const { quoteId } = await ask(desk, 'quote.issue', { job: { ...job, firm: firmWithoutMail } })
    expect(refused(await answer('quote.mail', { quoteId }, desk))).toEqual({
      code: 'invalid',
      message: 'Your firm has no email address, so nobody would know whom the mail is from.',
      path: 'firm.email',
      next: 'Give your firm an email address, and try again.',
    })
    await ask(desk, 'firm.save', { firm: { ...firm, email: 'office at home' } })
    const wrong = refused(await answer('quote.mail', { quoteId }, desk))
    expect(wrong.path).toBe('firm.email')
    expect(wrong.message).toContain('“office at home” is no mail address')
    await ask(desk, 'firm.save', { firm: { ...firm, name: 'Another name', email: 'new@example.com' } })
    const { path } = await ask(desk, 'quote.mail', { quoteId })
    const mail = await PostalMime.parse(await readFile(path))
    expect(mail.from).toMatchObject({ name: firm.name, address: 'new@example.com' })
  })

  it('goes to the address that the job has now, or to another that is named', async () => {
    const desk = await deskOfToday()
    const { email: _, ...customer } = job.customer
    const unknown = { ...job, customer }
    const { quoteId } = await ask(desk, 'quote.issue', { job: unknown })
    expect(refused(await answer('quote.mail', { quoteId }, desk))).toEqual({
      code: 'invalid',
      message: 'Nobody has said at which email address Robin Sample is reached.',
      path: 'to',
      next: 'Say whom it goes to, or give the customer an email address.',
    })
    expect((await ask(desk, 'quote.mail', { quoteId, to: 'sam@example.com' })).to).toBe('sam@example.com')
    const wrong = refused(await answer('quote.mail', { quoteId, to: 'sam' }, desk))
    expect([wrong.path, wrong.next]).toEqual([
      'to',
      'Say whom it goes to, or put the customer’s address right.',
    ])
    await ask(desk, 'job.save', { job: { ...job, customer: { ...customer, email: 'later@example.com' } } })
    expect((await ask(desk, 'quote.mail', { quoteId })).to).toBe('later@example.com')
  })

  it('goes where the terminal says, never over another file, and from a window nowhere else', async () => {
    const desk = await deskOfToday()
    const { quoteId } = await ask(desk, 'quote.issue', { job })
    const out = join(desk.dataFolder ?? '', 'to robin.eml')
    expect((await ask(desk, 'quote.mail', { quoteId, out })).path).toBe(out)
    await writeFile(out, 'From: somebody else\r\n\r\nhello')
    const over = refused(await answer('quote.mail', { quoteId, out }, desk))
    expect([over.code, over.path]).toEqual(['conflict', 'out'])
    expect(await readFile(out, 'utf8')).toBe('From: somebody else\r\n\r\nhello')
    const atWindow = refused(await answer('quote.mail', { quoteId, out }, { ...desk, mayChoosePath: false }))
    expect([atWindow.code, atWindow.path]).toEqual(['refused', 'out'])
    expect(refused(await answer('quote.mail', { quoteId: 'Q-9' }, desk)).code).toBe('not-found')
  })
})

describe('what the mail says', () => {
  const quote = {
    number: 'Q-2026-0007',
    revision: 0,
    customerName: 'Robin Sample',
    issuedOn: issueDay,
    validUntil: '2026-04-01',
    grossPence: 100_000,
    state: 'issued',
  } as const
  const totals = { netPence: 100_000, taxes: [], grossPence: 100_000, depositPence: 0 }

  it('does not speak of VAT where none is charged, nor of a telephone that the firm has not', () => {
    const text = mailText({ quote, totals, firm: { name: 'A' } })
    expect(text).toContain('\nTotal: £1,000.00\n')
    expect(text).toContain('\nIf you have a question, answer this mail.\n\nKind regards\nA\n')
  })

  it('says that its day is past when it is', () => {
    const text = mailText({ quote: { ...quote, state: 'lapsed' }, totals, firm: { name: 'A' } })
    expect(text).toContain('\nIt was valid until: 1 April 2026\n')
  })

  it('says under reverse charge what the customer pays to HMRC', () => {
    const reversed = {
      rateKey: 'reverseCharge',
      rateName: 'VAT, reverse charge',
      basisPoints: 0,
      netPence: 100_000,
      taxPence: 0,
      toAccountFor: { basisPoints: 2000, pence: 20_000 },
    }
    const text = mailText({ quote, totals: { ...totals, taxes: [reversed] }, firm: { name: 'A' } })
    expect(text).toContain(`\nTotal: £1,000.00\n${reverseChargeWording}.\n`)
    expect(text).toContain('VAT to account for on £1,000.00 at 20%: £200.00. It is not in the total.\n')
  })
})
