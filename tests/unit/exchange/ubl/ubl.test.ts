import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { orderXml } from '../../../../src-main/exchange/ubl/order.ts'
import { quotationXml } from '../../../../src-main/exchange/ubl/quotation.ts'
import type { TradeLine, TradeUnit } from '../../../../src-main/exchange/ubl/trade-paper.ts'
import { amount, decimal, percentage } from '../../../../src-main/exchange/ubl/written-values.ts'
import { answered, refused } from '../../../answered.ts'
import { allAt, readUbl, textAt } from './read-ubl.ts'
import { anOrder, quotationOf, someLines } from './trade-papers-for-tests.ts'

/** The published schemas lie beside the project, where they are there at all. */
const schemas = join(import.meta.dirname, '../../../../../shared/ubl-2.1/maindoc')

async function validatorOf(kind: 'Quotation' | 'Order') {
  const { XmlDocument, XsdValidator } = await import('libxml2-wasm')
  const { xmlRegisterFsInputProviders } = await import('libxml2-wasm/lib/nodejs.mjs')
  xmlRegisterFsInputProviders()
  const path = join(schemas, `UBL-${kind}-2.1.xsd`)
  const schema = XmlDocument.fromBuffer(readFileSync(path), { url: pathToFileURL(path).href })
  const validator = XsdValidator.fromDoc(schema)
  return (xml: string) => {
    using document = XmlDocument.fromString(xml)
    validator.validate(document)
  }
}

const units: readonly TradeUnit[] = ['each', 'm', 'm2', 'L', 'ml', 'min', 'km', 'sum']
const anyLine = fc.record({
  name: fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
    .filter((text) => /^[^\p{Cc}\p{Cs}\ufffe\uffff\s]+$/u.test(text)),
  quantity: fc.integer({ min: 1, max: 9_999_999 }).map((thousandths) => thousandths / 1000),
  unit: fc.constantFrom(...units),
  netPence: fc.integer({ min: -100_000, max: 100_000_000 }),
  rateKey: fc.constantFrom('standard', 'reduced', 'zero'),
})
const anyLines = fc
  .array(anyLine, { minLength: 1, maxLength: 12 })
  .map((lines) => lines.map((line, nth): TradeLine => ({ lineId: `${nth + 1}`, ...line })))

const penceOf = (text: string) => Math.round(Number(text) * 100)

describe('a quotation as UBL 2.1', () => {
  it(
    'is valid by the published schema, and so is an order; a wrong file is not',
    { timeout: 60_000 },
    async ({ skip }) => {
      if (!existsSync(schemas)) {
        console.log('The UBL 2.1 schemas are not beside the project, so no file was validated by them')
        return skip('The UBL 2.1 schemas are not beside the project')
      }
      const quotation = await validatorOf('Quotation')
      const order = await validatorOf('Order')
      const xml = answered(quotationXml(quotationOf(someLines)))
      expect(() => quotation(xml)).not.toThrow()
      const { validTo: _, notes: __, ...bare } = quotationOf(someLines.slice(0, 1))
      const plain = { name: 'A', addressLines: [] }
      expect(() => quotation(answered(quotationXml({ ...bare, seller: plain, buyer: plain })))).not.toThrow()
      expect(() => order(answered(orderXml(anOrder)))).not.toThrow()
      const { deliverTo: _to, deliverOn: _on, carriagePence: _c, accountNumber: _a, ...bareOrder } = anOrder
      expect(() => order(answered(orderXml(bareOrder)))).not.toThrow()
      expect(() => quotation(xml.replaceAll('cbc:PayableAmount', 'cbc:PayAmount'))).toThrow(/PayAmount/)
      expect(() => order(answered(orderXml(anOrder)).replaceAll('cbc:IssueDate', 'cbc:IssueDay'))).toThrow(
        /IssueDay/,
      )
      fc.assert(
        fc.property(anyLines, (lines) => {
          quotation(answered(quotationXml(quotationOf(lines))))
        }),
        { numRuns: 25 },
      )
    },
  )

  it('says who, when, until when and what for, in any letters', () => {
    const read = readUbl(answered(quotationXml(quotationOf(someLines))))
    expect(read.attributes).toMatchObject({
      xmlns: 'urn:oasis:names:specification:ubl:schema:xsd:Quotation-2',
    })
    expect(textAt(read, 'UBLVersionID')).toBe('2.1')
    expect(textAt(read, 'ID')).toBe('Q-2026-0007-2')
    expect(textAt(read, 'IssueDate')).toBe('2026-03-02')
    expect(textAt(read, 'ValidityPeriod', 'EndDate')).toBe('2026-04-01')
    expect(textAt(read, 'Note')).toBe('Revision 2')
    const party = ['SellerSupplierParty', 'Party'] as const
    expect(textAt(read, ...party, 'PartyName', 'Name')).toBe('Ψύλλας & Łukasz <Heating> Ltd')
    expect(textAt(read, ...party, 'PartyTaxScheme', 'CompanyID')).toBe('GB 000 0000 00')
    expect(textAt(read, ...party, 'Contact', 'ElectronicMail')).toBe('office@test-heating.example.com')
    expect(allAt(read, ...party, 'PostalAddress', 'AddressLine', 'Line').map(({ text }) => text)).toEqual([
      '2 Example Yard',
      'Sampleton',
    ])
    expect(textAt(read, 'BuyerCustomerParty', 'Party', 'PartyName', 'Name')).toBe('Żaneta Παπαδοπούλου')
  })

  it('counts each line in a unit of UN/ECE Recommendation 20, its price for the whole quantity', () => {
    const read = readUbl(answered(quotationXml(quotationOf(someLines))))
    const items = allAt(read, 'QuotationLine', 'LineItem')
    const quantities = items.flatMap((one) => allAt(one, 'Quantity'))
    expect(quantities.map(({ text, attributes }) => `${text} ${attributes['unitCode']}`)).toEqual([
      '1 EA',
      '0.24 MTR',
      '500 MLT',
      '158 MIN',
      '24 KMT',
      '1 LS',
      '1.5 MTK',
      '1 LS',
      '90 LTR',
    ])
    const [, pipe, inhibitor] = items
    if (pipe === undefined || inhibitor === undefined) throw new Error('There are nine lines')
    expect(textAt(pipe, 'Price', 'PriceAmount')).toBe('3.33')
    expect(textAt(pipe, 'Price', 'BaseQuantity')).toBe('0.24')
    expect(textAt(pipe, 'Item', 'ClassifiedTaxCategory', 'Percent')).toBe('20')
    expect(textAt(inhibitor, 'TotalTaxAmount')).toBe('2.41')
    expect(items.map((one) => textAt(one, 'Item', 'Name'))[0]).toBe(
      'Radiator "600 × 1000" <white> & brackets',
    )
    expect(items.map((one) => textAt(one, 'LineExtensionAmount'))[7]).toBe('-0.05')
  })

  it('read back by another reader has the same lines and sums, to the penny', () => {
    fc.assert(
      fc.property(anyLines, (lines) => {
        const paper = quotationOf(lines)
        const read = readUbl(answered(quotationXml(paper)))
        const items = allAt(read, 'QuotationLine', 'LineItem')
        expect(
          items.map((one) => ({
            lineId: textAt(one, 'ID'),
            name: textAt(one, 'Item', 'Name'),
            quantity: Number(textAt(one, 'Quantity')),
            netPence: penceOf(textAt(one, 'LineExtensionAmount')),
          })),
        ).toEqual(lines.map(({ lineId, name, quantity, netPence }) => ({ lineId, name, quantity, netPence })))
        const taxes = allAt(read, 'TaxTotal', 'TaxSubtotal')
        expect(taxes.map((one) => penceOf(textAt(one, 'TaxAmount')))).toEqual(
          paper.totals.taxes.map(({ taxPence }) => taxPence),
        )
        const taxPence = penceOf(textAt(read, 'TaxTotal', 'TaxAmount'))
        expect(paper.totals.netPence + taxPence).toBe(paper.totals.grossPence)
        expect(penceOf(textAt(read, 'QuotedMonetaryTotal', 'TaxExclusiveAmount'))).toBe(paper.totals.netPence)
        expect(penceOf(textAt(read, 'QuotedMonetaryTotal', 'PayableAmount'))).toBe(paper.totals.grossPence)
        expect(textAt(read, 'LineCountNumeric')).toBe(String(lines.length))
      }),
    )
  })

  it('writes nothing that it was not asked for: a cost or a supplier that comes along is left out', () => {
    const canary = 'Kanarienvogel'
    const secret = { costPence: 98_765_432, supplierName: canary, why: { says: canary } }
    const lines = someLines.map((line) => ({ ...line, ...secret }))
    const more = { internal: secret }
    const xml = answered(quotationXml({ ...quotationOf(lines), ...more }))
    expect(xml).not.toContain(canary)
    expect(xml).not.toMatch(/987654|cost|margin/i)
  })

  it('says reverse charge in words where the customer accounts for the tax', () => {
    const paper = quotationOf(someLines.slice(0, 1))
    const reason = 'Reverse charge: the customer accounts for the VAT.'
    const taxes = paper.totals.taxes.map((tax) => ({
      ...tax,
      basisPoints: 0,
      taxPence: 0,
      category: 'AE' as const,
      reason,
    }))
    const totals = { ...paper.totals, taxes, grossPence: paper.totals.netPence }
    const read = readUbl(answered(quotationXml({ ...paper, totals })))
    const category = ['TaxTotal', 'TaxSubtotal', 'TaxCategory'] as const
    expect(textAt(read, ...category, 'ID')).toBe('AE')
    expect(textAt(read, ...category, 'Percent')).toBe('0')
    expect(textAt(read, ...category, 'TaxExemptionReason')).toBe(reason)
    expect(textAt(read, 'TaxTotal', 'TaxAmount')).toBe('0.00')
  })

  it('refuses sums that do not agree, a line at no rate, and no line at all', () => {
    const paper = quotationOf(someLines)
    const { totals } = paper
    const says = (changes: Partial<typeof totals>) =>
      refused(quotationXml({ ...paper, totals: { ...totals, ...changes } }))
    expect(says({ netPence: totals.netPence + 1 })).toMatchObject({
      code: 'conflict',
      path: 'totals',
      message: 'The lines come to 141828 pence, but the totals say 141829; they must be equal.',
    })
    expect(says({ grossPence: totals.grossPence - 1 }).message).toMatch(/^Net and tax come to \d+ pence, but/)
    const off = totals.taxes.map((tax, nth) => (nth === 1 ? { ...tax, netPence: 2002 } : tax))
    expect(says({ taxes: off }).message).toBe(
      'The lines at VAT, reduced rate come to 2001 pence, but the totals say 2002; they must be equal.',
    )
    const unrated = someLines.map((line, nth) => (nth === 2 ? { ...line, rateKey: 'other' } : line))
    expect(refused(quotationXml({ ...paper, lines: unrated }))).toMatchObject({
      code: 'invalid',
      path: 'lines[2]',
    })
    expect(refused(quotationXml(quotationOf([])))).toMatchObject({ code: 'invalid', path: 'lines' })
    const endless = someLines.map((line, nth) => (nth === 1 ? { ...line, quantity: Infinity } : line))
    expect(refused(quotationXml({ ...paper, lines: endless })).path).toBe('lines[1].quantity')
  })

  it('refuses a sign that XML cannot hold, by name and place, and puts a text on one line', () => {
    const named = (name: string) => someLines.map((line, nth) => (nth === 1 ? { ...line, name } : line))
    for (const [sign, code] of [
      ['\u0000', '0000'],
      ['\u0007', '0007'],
      ['\u001b', '001B'],
      ['\u0085', '0085'],
      ['\uffff', 'FFFF'],
      ['\ud800', 'D800'],
    ] as const) {
      const problem = refused(quotationXml(quotationOf(named(`Pipe${sign}15 mm`))))
      expect(problem.message).toBe(
        `“Pipe�15 mm” has a control character (U+${code}), which an XML file cannot hold.`,
      )
      expect(problem.path).toBe('Quotation.QuotationLine[1].LineItem.Item.Name')
    }
    const read = readUbl(answered(quotationXml(quotationOf(named('Pipe\r\n\t15 mm')))))
    expect(allAt(read, 'QuotationLine', 'LineItem', 'Item', 'Name')[1]?.text).toBe('Pipe 15 mm')
  })
})

describe('an order as UBL 2.1', () => {
  it('has packs by the supplier’s codes, which stay text, with carriage and sums', () => {
    const read = readUbl(answered(orderXml(anOrder)))
    const items = allAt(read, 'OrderLine', 'LineItem')
    expect(items.map((one) => textAt(one, 'Item', 'SellersItemIdentification', 'ID'))).toEqual([
      '00126',
      'P-15',
    ])
    expect(items.map((one) => textAt(one, 'Quantity'))).toEqual(['3', '2'])
    expect(items.map((one) => textAt(one, 'Price', 'PriceAmount'))).toEqual(['4.10', '12.99'])
    // 3 x 4.10 and 2 x 12.99.
    expect(items.map((one) => textAt(one, 'LineExtensionAmount'))).toEqual(['12.30', '25.98'])
    const holds = items.flatMap((one) => allAt(one, 'Item', 'PackQuantity'))
    expect(holds.map(({ text, attributes }) => `${text} ${attributes['unitCode']}`)).toEqual([
      '50 EA',
      '3 MTR',
    ])
    expect(textAt(read, 'AnticipatedMonetaryTotal', 'LineExtensionAmount')).toBe('38.28')
    expect(textAt(read, 'AnticipatedMonetaryTotal', 'ChargeTotalAmount')).toBe('7.95')
    expect(textAt(read, 'AnticipatedMonetaryTotal', 'PayableAmount')).toBe('46.23')
    expect(textAt(read, 'AllowanceCharge', 'Amount')).toBe('7.95')
    expect(textAt(read, 'BuyerCustomerParty', 'SupplierAssignedAccountID')).toBe('00471')
    expect(textAt(read, 'CustomerReference')).toBe('Back bedroom & landing')
    expect(textAt(read, 'Delivery', 'RequestedDeliveryPeriod', 'EndDate')).toBe('2026-03-06')
    expect(textAt(read, 'SellerSupplierParty', 'Party', 'PartyName', 'Name')).toBe('Brackenholt Supply')
  })

  it('refuses half a pack, an empty pack and an empty order', () => {
    const [first] = anOrder.lines
    if (first === undefined) throw new Error('The order has lines')
    const path = 'lines[0]'
    expect(refused(orderXml({ ...anOrder, lines: [{ ...first, packs: 0.5 }] }))).toMatchObject({
      code: 'invalid',
      path,
    })
    expect(refused(orderXml({ ...anOrder, lines: [{ ...first, packs: 0 }] }))).toMatchObject({
      code: 'invalid',
      path,
    })
    expect(refused(orderXml({ ...anOrder, lines: [{ ...first, packHolds: 0 }] }))).toMatchObject({
      code: 'invalid',
      path,
    })
    expect(refused(orderXml({ ...anOrder, lines: [] }))).toMatchObject({ code: 'invalid', path: 'lines' })
  })
})

describe('written values', () => {
  it('writes pence with two places, percentages and quantities without trailing noughts', () => {
    expect([0, 5, 99, 100, -5, -12_345, 900_719_925_474_099].map(amount)).toEqual([
      '0.00',
      '0.05',
      '0.99',
      '1.00',
      '-0.05',
      '-123.45',
      '9007199254740.99',
    ])
    expect([0, 500, 1750, 2000, 1, 10_000].map(percentage)).toEqual(['0', '5', '17.5', '20', '0.01', '100'])
    expect([1, 0.24, 100, 1e-7, 1e20, -0.5, -1e-9].map(decimal)).toEqual([
      '1',
      '0.24',
      '100',
      '0',
      '100000000000000000000',
      '-0.5',
      '0',
    ])
    expect(() => amount(0.5)).toThrow('0.5 is no whole number of pence')
    expect(() => decimal(Number.NaN)).toThrow('NaN is no quantity')
  })
})
