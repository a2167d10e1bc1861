import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { OrderLine, OrderPaper } from './trade-paper.ts'
import { decimal, unitCode } from './written-values.ts'
import { money, partyElements, xmlPaper } from './xml-paper.ts'
import type { Inside } from './xml-paper.ts'

/** An order as UBL 2.1 XML (OASIS Universal Business Language 2.1, Order): packs by the supplier's own codes, before tax. */
export function orderXml(paper: OrderPaper): Outcome<string> {
  const { number, issuedOn, currency, notes = [], reference, buyer, seller, lines, carriagePence = 0 } = paper
  const wrong = lines.findIndex(
    ({ packs, packHolds }) => !Number.isInteger(packs) || packs < 1 || !(packHolds > 0),
  )
  if (wrong >= 0) {
    return refuse(
      'invalid',
      'An order is for whole packs, at least one, each of which holds something.',
      `lines[${wrong}]`,
    )
  }
  if (lines.length === 0) return refuse('invalid', 'An order has at least one line; this has none.', 'lines')
  const goodsPence = lines.reduce((sum, { packs, packPence }) => sum + packs * packPence, 0)
  return xmlPaper('Order', {
    'cbc:ID': number,
    'cbc:IssueDate': issuedOn,
    'cbc:Note': notes,
    'cbc:DocumentCurrencyCode': currency,
    'cbc:CustomerReference': reference,
    'cbc:LineCountNumeric': String(lines.length),
    'cac:BuyerCustomerParty': {
      'cbc:SupplierAssignedAccountID': paper.accountNumber,
      'cac:Party': partyElements(buyer),
    },
    'cac:SellerSupplierParty': { 'cac:Party': partyElements(seller) },
    'cac:Delivery': delivery(paper),
    'cac:AllowanceCharge': carriagePence === 0 ? undefined : carriage(carriagePence, currency),
    'cac:AnticipatedMonetaryTotal': {
      'cbc:LineExtensionAmount': money(goodsPence, currency),
      'cbc:TaxExclusiveAmount': money(goodsPence + carriagePence, currency),
      'cbc:ChargeTotalAmount': carriagePence === 0 ? undefined : money(carriagePence, currency),
      'cbc:PayableAmount': money(goodsPence + carriagePence, currency),
    },
    'cac:OrderLine': lines.map((line) => ({ 'cac:LineItem': lineElements(line, currency) })),
  })
}

function delivery({ deliverTo = [], deliverOn }: OrderPaper): Inside | undefined {
  if (deliverTo.length === 0 && deliverOn === undefined) return undefined
  const address = { 'cac:AddressLine': deliverTo.map((line) => ({ 'cbc:Line': line })) }
  return {
    'cac:DeliveryAddress': deliverTo.length === 0 ? undefined : address,
    'cac:RequestedDeliveryPeriod': deliverOn === undefined ? undefined : { 'cbc:EndDate': deliverOn },
  }
}

function carriage(pence: number, currency: string): Inside {
  return {
    'cbc:ChargeIndicator': 'true',
    'cbc:AllowanceChargeReason': 'Carriage',
    'cbc:Amount': money(pence, currency),
  }
}

/** So many packs; what one pack holds stands with the item. */
function lineElements(
  { lineId, code, name, packs, packPence, packHolds, unit }: OrderLine,
  currency: string,
): Inside {
  return {
    'cbc:ID': lineId,
    'cbc:Quantity': { '@unitCode': unitCode('each'), '#': decimal(packs) },
    'cbc:LineExtensionAmount': money(packs * packPence, currency),
    'cac:Price': {
      'cbc:PriceAmount': money(packPence, currency),
      'cbc:BaseQuantity': { '@unitCode': unitCode('each'), '#': '1' },
    },
    'cac:Item': {
      'cbc:PackQuantity': { '@unitCode': unitCode(unit), '#': decimal(packHolds) },
      'cbc:Name': name,
      'cac:SellersItemIdentification': { 'cbc:ID': code },
    },
  }
}
