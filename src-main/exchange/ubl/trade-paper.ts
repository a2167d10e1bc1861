import type { Unit } from '../../domain/item.ts'

/** Who a trade paper is from or to. */
export type TradeParty = {
  readonly name: string
  readonly addressLines: readonly string[]
  readonly taxNumber?: string | undefined
  readonly phone?: string | undefined
  readonly email?: string | undefined
}

/** What a quantity is counted in; a sum has the quantity 1. */
export type TradeUnit = Unit | 'min' | 'km' | 'sum'

/** One line: its net price is for all of its quantity, before tax. */
export type TradeLine = {
  readonly lineId: string
  readonly name: string
  readonly quantity: number
  readonly unit: TradeUnit
  readonly netPence: number
  readonly rateKey: string
  /** Tax of the line, where tax is rounded by line. */
  readonly taxPence?: number | undefined
}

/** S: a positive rate; Z: zero rate; E: exempt; AE: the customer accounts for it. (UNTDID 5305) */
export type TaxCategory = 'S' | 'Z' | 'E' | 'AE'

export type TradeTax = {
  readonly rateKey: string
  readonly rateName: string
  readonly basisPoints: number
  readonly category: TaxCategory
  /** Why there is none, where it is exempt or the customer's to account for. */
  readonly reason?: string | undefined
  readonly netPence: number
  readonly taxPence: number
}

export type TradeTotals = {
  readonly netPence: number
  readonly taxes: readonly TradeTax[]
  readonly grossPence: number
}

/** What a customer is quoted. It has no place for a cost, a margin or a supplier. */
export type QuotationPaper = {
  readonly number: string
  readonly issuedOn: string
  readonly validTo?: string | undefined
  readonly currency: string
  readonly notes?: readonly string[] | undefined
  readonly seller: TradeParty
  readonly buyer: TradeParty
  readonly lines: readonly TradeLine[]
  readonly totals: TradeTotals
}

/** One line of an order: so many packs by the supplier's code. */
export type OrderLine = {
  readonly lineId: string
  readonly code: string
  readonly name: string
  readonly packs: number
  readonly packPence: number
  /** What one pack holds. */
  readonly packHolds: number
  readonly unit: Unit
}

/** What a supplier is asked to send. Tax is the supplier's to add. */
export type OrderPaper = {
  readonly number: string
  readonly issuedOn: string
  readonly currency: string
  readonly notes?: readonly string[] | undefined
  /** The buyer's name for the job, printed on the delivery note. */
  readonly reference?: string | undefined
  readonly buyer: TradeParty
  readonly seller: TradeParty
  readonly accountNumber?: string | undefined
  readonly deliverTo?: readonly string[] | undefined
  readonly deliverOn?: string | undefined
  readonly lines: readonly OrderLine[]
  readonly carriagePence?: number | undefined
}
