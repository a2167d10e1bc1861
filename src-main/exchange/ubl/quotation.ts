import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { QuotationPaper, TradeLine, TradeTax } from './trade-paper.ts'
import { decimal, percentage, unitCode } from './written-values.ts'
import { money, partyElements, xmlPaper } from './xml-paper.ts'
import type { Inside } from './xml-paper.ts'

/**
 * A quotation as UBL 2.1 XML (OASIS Universal Business Language 2.1, Quotation), with the amounts that the customer was quoted.
 * Refused where its sums do not agree to the penny, so that no file says what no paper said.
 */
export function quotationXml(paper: QuotationPaper): Outcome<string> {
  const wrong = wrongSum(paper)
  if (wrong !== null) return wrong
  const { number, issuedOn, validTo, currency, notes = [], seller, buyer, lines, totals } = paper
  const taxPence = totals.taxes.reduce((sum, tax) => sum + tax.taxPence, 0)
  return xmlPaper('Quotation', {
    'cbc:ID': number,
    'cbc:IssueDate': issuedOn,
    'cbc:Note': notes,
    'cbc:PricingCurrencyCode': currency,
    'cbc:LineCountNumeric': String(lines.length),
    'cac:ValidityPeriod':
      validTo === undefined ? undefined : { 'cbc:StartDate': issuedOn, 'cbc:EndDate': validTo },
    'cac:SellerSupplierParty': { 'cac:Party': partyElements(seller) },
    'cac:BuyerCustomerParty': { 'cac:Party': partyElements(buyer) },
    'cac:TaxTotal': {
      'cbc:TaxAmount': money(taxPence, currency),
      'cac:TaxSubtotal': totals.taxes.map((tax) => subtotal(tax, currency)),
    },
    'cac:QuotedMonetaryTotal': {
      'cbc:LineExtensionAmount': money(totals.netPence, currency),
      'cbc:TaxExclusiveAmount': money(totals.netPence, currency),
      'cbc:TaxInclusiveAmount': money(totals.grossPence, currency),
      'cbc:PayableAmount': money(totals.grossPence, currency),
    },
    'cac:QuotationLine': lines.map((line) => lineElements(line, paper)),
  })
}

function subtotal(tax: TradeTax, currency: string): Inside {
  return {
    'cbc:TaxableAmount': money(tax.netPence, currency),
    'cbc:TaxAmount': money(tax.taxPence, currency),
    'cac:TaxCategory': category(tax),
  }
}

function category({ category: id, rateName, basisPoints, reason }: TradeTax): Inside {
  return {
    'cbc:ID': id,
    'cbc:Name': rateName,
    'cbc:Percent': percentage(basisPoints),
    'cbc:TaxExemptionReason': reason,
    'cac:TaxScheme': { 'cbc:ID': 'VAT' },
  }
}

/** The price is for the whole quantity, named beside it: so that 0.24 m for 3.33 stays exact. */
function lineElements(line: TradeLine, { currency, totals }: QuotationPaper): Inside {
  const quantity = { '@unitCode': unitCode(line.unit), '#': decimal(line.quantity) }
  const taxAmount = line.taxPence === undefined ? undefined : money(line.taxPence, currency)
  const tax = totals.taxes.find(({ rateKey }) => rateKey === line.rateKey)
  return {
    'cbc:ID': line.lineId,
    'cac:LineItem': {
      'cbc:ID': line.lineId,
      'cbc:Quantity': quantity,
      'cbc:LineExtensionAmount': money(line.netPence, currency),
      'cbc:TotalTaxAmount': taxAmount,
      'cac:Price': { 'cbc:PriceAmount': money(line.netPence, currency), 'cbc:BaseQuantity': quantity },
      'cac:Item': {
        'cbc:Name': line.name,
        'cac:ClassifiedTaxCategory': tax === undefined ? undefined : category(tax),
      },
    },
  }
}

/** The first sum that does not agree with what it sums. */
function wrongSum({ lines, totals }: QuotationPaper): Outcome<string> | null {
  const { netPence, taxes, grossPence } = totals
  if (lines.length === 0)
    return refuse('invalid', 'A quotation has at least one line; this has none.', 'lines')
  const strange = lines.findIndex((line) => taxes.every(({ rateKey }) => rateKey !== line.rateKey))
  if (strange >= 0)
    return refuse('invalid', 'The totals have no tax at the rate of this line.', `lines[${strange}]`)
  const uncounted = lines.findIndex(({ quantity }) => !Number.isFinite(quantity))
  if (uncounted >= 0)
    return refuse('invalid', 'A line’s quantity is a number.', `lines[${uncounted}].quantity`)
  for (const tax of taxes) {
    const own = lines
      .filter(({ rateKey }) => rateKey === tax.rateKey)
      .reduce((sum, line) => sum + line.netPence, 0)
    if (own !== tax.netPence)
      return disagrees(`The lines at ${tax.rateName} come to ${own} pence`, tax.netPence)
  }
  const net = lines.reduce((sum, line) => sum + line.netPence, 0)
  if (net !== netPence) return disagrees(`The lines come to ${net} pence`, netPence)
  const gross = taxes.reduce((sum, tax) => sum + tax.taxPence, netPence)
  return gross === grossPence ? null : disagrees(`Net and tax come to ${gross} pence`, grossPence)
}

function disagrees(says: string, saidPence: number): Outcome<string> {
  return refuse('conflict', `${says}, but the totals say ${saidPence}; they must be equal.`, 'totals')
}
