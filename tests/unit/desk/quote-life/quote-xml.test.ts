import { existsSync, readFileSync } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it, vi } from 'vitest'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import { answer } from '../../../../src-main/desk/router.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import { reverseChargeWording } from '../../../../src-main/domain/pricing.ts'
import { refused } from '../../../answered.ts'
import { allAt, readUbl, textAt } from '../../exchange/ubl/read-ubl.ts'
import type { Read } from '../../exchange/ubl/read-ubl.ts'
import { ask, deskOfToday, job } from './issued-for-tests.ts'

type Quote = AnswerOf<'quote.build'>

// Every form is of a quote that was issued and printed first: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 120_000 })

/** The published schemas lie beside the project, where they are there at all. */
const schemas = join(import.meta.dirname, '../../../../../shared/ubl-2.1/maindoc')

const hasSchemas = existsSync(schemas)
if (!hasSchemas)
  console.log('The UBL 2.1 schemas are not beside the project, so no file was validated by them')

async function validator(): Promise<(xml: string) => void> {
  const { XmlDocument, XsdValidator } = await import('libxml2-wasm')
  const { xmlRegisterFsInputProviders } = await import('libxml2-wasm/lib/nodejs.mjs')
  xmlRegisterFsInputProviders()
  const path = join(schemas, 'UBL-Quotation-2.1.xsd')
  const schema = XmlDocument.fromBuffer(readFileSync(path), { url: pathToFileURL(path).href })
  const by = XsdValidator.fromDoc(schema)
  return (xml) => {
    using document = XmlDocument.fromString(xml)
    by.validate(document)
  }
}

const penceOf = (text: string) => Math.round(Number(text) * 100)
const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0)

/** The quote of a job as its open form, with what it was worked out to be. */
async function issuedForm(
  of: Job,
): Promise<{ readonly xml: string; readonly form: Read; readonly quote: Quote }> {
  const desk = await deskOfToday()
  const quote = await ask(desk, 'quote.build', { job: of })
  const { quoteId } = await ask(desk, 'quote.issue', { job: of })
  const made = await ask(desk, 'quote.xml', { quoteId })
  expect(made.path).toBe(join(desk.papersFolder, 'quote-Q-2026-0001.xml'))
  const xml = await readFile(made.path, 'utf8')
  expect(Buffer.byteLength(xml)).toBe(made.bytes)
  return { xml, form: readUbl(xml), quote }
}

const lineSums = (form: Read) =>
  allAt(form, 'QuotationLine', 'LineItem', 'LineExtensionAmount').map(({ text }) => penceOf(text))
const notes = (form: Read) => allAt(form, 'Note').map(({ text }) => text)
const taxesIn = (form: Read) =>
  allAt(form, 'TaxTotal', 'TaxSubtotal').map((one) => ({
    category: textAt(one, 'TaxCategory', 'ID'),
    percent: textAt(one, 'TaxCategory', 'Percent'),
    netPence: penceOf(textAt(one, 'TaxableAmount')),
    taxPence: penceOf(textAt(one, 'TaxAmount')),
  }))

/** Its sums are those of the quote, and its lines add up to them. */
function expectItsSums(form: Read, { totals }: Quote): void {
  expect(penceOf(textAt(form, 'QuotedMonetaryTotal', 'TaxExclusiveAmount'))).toBe(totals.netPence)
  expect(penceOf(textAt(form, 'QuotedMonetaryTotal', 'PayableAmount'))).toBe(totals.grossPence)
  expect(sumOf(lineSums(form))).toBe(totals.netPence)
  expect(penceOf(textAt(form, 'TaxTotal', 'TaxAmount'))).toBe(totals.grossPence - totals.netPence)
}

const jobs: Readonly<Record<string, Job>> = {
  plain: job,
  severalRates: {
    ...job,
    pricing: {
      taxTreatment: 'usual',
      rounding: 'document',
      lineCategories: { labour: 'reduced', travel: 'exempt' },
      discounts: [{ kind: 'amount', name: 'Neighbour', pence: 1234 }],
    },
  },
  reversed: { ...job, pricing: { taxTreatment: 'reverseCharge', rounding: 'document' } },
  byLine: { ...job, pricing: { taxTreatment: 'usual', rounding: 'line' } },
  byRoom: { ...job, priceDetail: 'rooms', pricing: { taxTreatment: 'usual', rounding: 'line' } },
  totalOnly: {
    ...job,
    priceDetail: 'total',
    pricing: {
      taxTreatment: 'usual',
      rounding: 'document',
      lineCategories: { labour: 'reduced' },
      discounts: [{ kind: 'percent', name: 'Neighbour', basisPoints: 500 }],
    },
  },
}

type Issued = Awaited<ReturnType<typeof issuedForm>>
/** Each is issued once for all that is asked of it: printing takes its time. */
const forms = new Map<string, Promise<Issued>>()
function made(name: string): Promise<Issued> {
  const known = forms.get(name) ?? issuedForm(jobs[name] ?? job)
  forms.set(name, known)
  return known
}

describe('the open form of an issued quote', () => {
  it.skipIf(!hasSchemas).each(Object.keys(jobs))(
    'is valid by the published schema of UBL 2.1, whatever tax it bears and however much it shows: %s',
    async (name) => {
      const { xml } = await made(name)
      const validate = await validator()
      expect(() => validate(xml)).not.toThrow()
      expect(() => validate(xml.replaceAll('cbc:PayableAmount', 'cbc:PayAmount'))).toThrow(/PayAmount/)
    },
  )

  it('says each line as the customer’s paper has it, with whom it is from and to', async () => {
    const { form, quote } = await made('plain')
    expectItsSums(form, quote)
    expect(textAt(form, 'ID')).toBe('Q-2026-0001')
    expect(textAt(form, 'IssueDate')).toBe('2026-03-02')
    expect(textAt(form, 'ValidityPeriod', 'EndDate')).toBe('2026-04-01')
    expect(textAt(form, 'SellerSupplierParty', 'Party', 'PartyName', 'Name')).toBe('Sampleton Test Heating')
    expect(textAt(form, 'BuyerCustomerParty', 'Party', 'PartyName', 'Name')).toBe('Robin Sample')
    expect(allAt(form, 'QuotationLine', 'LineItem', 'Item', 'Name').map(({ text }) => text)).toEqual(
      quote.lines.map(({ name }) => name),
    )
    expect(lineSums(form)).toEqual(quote.lines.map(({ netPence }) => netPence))
  })

  it('has a sum of tax for each rate, to the penny', async () => {
    const { form, quote } = await made('severalRates')
    expectItsSums(form, quote)
    const taxes = taxesIn(form)
    expect(taxes.map(({ category, percent }) => [category, percent]).toSorted()).toEqual([
      ['E', '0'],
      ['S', '20'],
      ['S', '5'],
    ])
    // Rounded once for each rate, halves up, worked out here a second time.
    for (const { percent, netPence, taxPence } of taxes) {
      expect(taxPence).toBe(Math.floor((netPence * Number(percent) + 50) / 100))
    }
    expect(
      lineSums(form)
        .filter((pence) => pence < 0)
        .reduce((sum, one) => sum + one, 0),
    ).toBe(-1234)
  })

  it('says under reverse charge that the customer pays the tax, and charges none', async () => {
    const { form, quote } = await made('reversed')
    expectItsSums(form, quote)
    const { netPence } = quote.totals
    expect(taxesIn(form)).toEqual([{ category: 'AE', percent: '0', netPence, taxPence: 0 }])
    expect(textAt(form, 'TaxTotal', 'TaxSubtotal', 'TaxCategory', 'TaxExemptionReason')).toBe(
      reverseChargeWording,
    )
    expect(notes(form)).toContain(`${reverseChargeWording}.`)
    expect(penceOf(textAt(form, 'QuotedMonetaryTotal', 'PayableAmount'))).toBe(netPence)
  })

  it('has each line’s own tax where tax is rounded by line', async () => {
    const { form, quote } = await made('byLine')
    expectItsSums(form, quote)
    const taxes = allAt(form, 'QuotationLine', 'LineItem', 'TotalTaxAmount').map(({ text }) => penceOf(text))
    expect(taxes).toEqual(lineSums(form).map((net) => Math.floor((net * 20 + 50) / 100)))
    expect(sumOf(taxes)).toBe(quote.totals.grossPence - quote.totals.netPence)
  })

  it('shows no more of the price than the customer’s paper', async () => {
    const rooms = await made('byRoom')
    expectItsSums(rooms.form, rooms.quote)
    const names = allAt(rooms.form, 'QuotationLine', 'LineItem', 'Item', 'Name').map(({ text }) => text)
    expect(names).toContain('Bathroom')
    expect(names).toContain('Back bedroom')
    expect(names.length).toBeLessThan(rooms.quote.lines.length / 2)
    const total = await made('totalOnly')
    expectItsSums(total.form, total.quote)
    expect(allAt(total.form, 'QuotationLine', 'LineItem', 'Item', 'Name').map(({ text }) => text)).toEqual([
      'The work: VAT, standard rate',
      'The work: VAT, reduced rate',
      'Discount: Neighbour (5%)',
      'Discount: Neighbour (5%)',
    ])
  })

  it('names no supplier, no cost and no margin', async () => {
    const { xml, quote } = await made('plain')
    const { costPence, marginPence, purchases } = quote.internal
    const secrets = [
      ...[costPence, marginPence].map((pence) => `>${(pence / 100).toFixed(2)}<`),
      ...purchases.map(({ supplierName }) => supplierName),
      ...purchases.flatMap(({ packs }) => packs.map(({ code }) => `>${code}<`)),
      'margin',
      '>cost',
    ]
    expect(secrets.length).toBeGreaterThan(10)
    expect(secrets.filter((secret) => xml.toLowerCase().includes(secret.toLowerCase()))).toEqual([])
  })

  it('stays what was issued when prices change, and stands over no other file', async () => {
    const desk = await deskOfToday()
    const { quoteId } = await ask(desk, 'quote.issue', { job })
    const { path } = await ask(desk, 'quote.xml', { quoteId })
    const before = await readFile(path)
    await ask(desk, 'job.save', { job: { ...job, customer: { ...job.customer, name: 'Somebody Else' } } })
    await ask(desk, 'firm.save', { firm: { name: 'Another Firm', addressLines: [] } })
    await ask({ ...desk, today: '2026-03-20' }, 'quote.xml', { quoteId })
    expect((await readFile(path)).equals(before)).toBe(true)
    const foreign = '<?xml version="1.0" encoding="UTF-8"?>\n<Invoice/>\n'
    await writeFile(path, foreign)
    const problem = refused(await answer('quote.xml', { quoteId }, desk))
    expect(problem.code).toBe('conflict')
    expect(problem.message).toContain('is no XML file of this kind, so it was left as it is')
    expect(await readFile(path, 'utf8')).toBe(foreign)
  })

  it('says which revision it is', async () => {
    const desk = await deskOfToday()
    const first = await ask(desk, 'quote.issue', { job })
    const { quoteId } = await ask(desk, 'quote.issue', { job, revises: first.quoteId })
    const form = readUbl(await readFile((await ask(desk, 'quote.xml', { quoteId })).path, 'utf8'))
    expect(textAt(form, 'ID')).toBe('Q-2026-0001-R1')
    expect(notes(form)[0]).toBe('Revision 1 of Q-2026-0001')
  })
})

describe('the number that the next quote would get', () => {
  it('follows the firm’s pattern or one that is tried, and takes none', async () => {
    const desk = await deskOfToday()
    const next = async (quoteNumbers?: string) =>
      (await ask(desk, 'quote.nextNumber', quoteNumbers === undefined ? {} : { quoteNumbers })).number
    expect([await next(), await next(), await next('A{nn}')]).toEqual(['Q-2026-0001', 'Q-2026-0001', 'A01'])
    await ask(desk, 'quote.issue', { job })
    expect([await next(), await next('A{nn}')]).toEqual(['Q-2026-0002', 'A01'])
    await ask(desk, 'firm.save', { firm: { name: 'A Firm', addressLines: [], quoteNumbers: 'F-{yy}-{n}' } })
    expect(await next()).toBe('F-26-1')
    expect(refused(await answer('quote.nextNumber', { quoteNumbers: 'no number' }, desk)).path).toBe(
      'quoteNumbers',
    )
  })
})
