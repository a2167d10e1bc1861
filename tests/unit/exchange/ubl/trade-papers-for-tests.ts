import type {
  OrderPaper,
  QuotationPaper,
  TradeLine,
  TradeTax,
} from '../../../../src-main/exchange/ubl/trade-paper.ts'

const firm = {
  name: 'Ψύλλας & Łukasz <Heating> Ltd',
  addressLines: ['2 Example Yard', 'Sampleton'],
  taxNumber: 'GB 000 0000 00',
  phone: '01632 960002',
  email: 'office@test-heating.example.com',
}

const rates = [
  { rateKey: 'standard', rateName: 'VAT, standard rate', basisPoints: 2000, category: 'S' },
  { rateKey: 'reduced', rateName: 'VAT, reduced rate', basisPoints: 500, category: 'S' },
  { rateKey: 'zero', rateName: 'VAT, zero rate', basisPoints: 0, category: 'Z' },
] as const

/** A quotation whose sums agree: tax on each rate's own sum, halves up. */
export function quotationOf(
  lines: readonly TradeLine[],
  changes: Partial<QuotationPaper> = {},
): QuotationPaper {
  const taxes = rates.flatMap((rate): TradeTax[] => {
    const own = lines.filter(({ rateKey }) => rateKey === rate.rateKey)
    const netPence = own.reduce((sum, line) => sum + line.netPence, 0)
    const taxPence = Math.floor((netPence * rate.basisPoints + 5000) / 10_000)
    return own.length === 0 ? [] : [{ ...rate, netPence, taxPence }]
  })
  const netPence = lines.reduce((sum, line) => sum + line.netPence, 0)
  const grossPence = taxes.reduce((sum, tax) => sum + tax.taxPence, netPence)
  return {
    number: 'Q-2026-0007-2',
    issuedOn: '2026-03-02',
    validTo: '2026-04-01',
    currency: 'GBP',
    notes: ['Revision 2'],
    seller: firm,
    buyer: { name: 'Żaneta Παπαδοπούλου', addressLines: ['1 Example Row'] },
    lines,
    totals: { netPence, taxes, grossPence },
    ...changes,
  }
}

const line = (nth: number, rest: Omit<TradeLine, 'lineId'>): TradeLine => ({ lineId: `line-${nth}`, ...rest })

export const someLines: readonly TradeLine[] = [
  line(1, {
    name: 'Radiator "600 × 1000" <white> & brackets',
    quantity: 1,
    unit: 'each',
    netPence: 123_456,
    rateKey: 'standard',
  }),
  line(2, { name: 'Copper pipe, 15 mm', quantity: 0.24, unit: 'm', netPence: 333, rateKey: 'standard' }),
  line(3, {
    name: 'Inhibitor',
    quantity: 500,
    unit: 'ml',
    netPence: 1205,
    rateKey: 'standard',
    taxPence: 241,
  }),
  line(4, { name: 'Labour', quantity: 158, unit: 'min', netPence: 13_751, rateKey: 'standard' }),
  line(5, { name: 'Travel', quantity: 24, unit: 'km', netPence: 1080, rateKey: 'standard' }),
  line(6, {
    name: 'Loft hatch, draught strip',
    quantity: 1,
    unit: 'sum',
    netPence: 2001,
    rateKey: 'reduced',
  }),
  line(7, { name: 'Board', quantity: 1.5, unit: 'm2', netPence: 7, rateKey: 'zero' }),
  line(8, { name: 'Discount', quantity: 1, unit: 'sum', netPence: -5, rateKey: 'standard' }),
  line(9, { name: 'Water', quantity: 90, unit: 'L', netPence: 0, rateKey: 'standard' }),
]

export const anOrder: OrderPaper = {
  number: 'PO-12',
  issuedOn: '2026-03-03',
  currency: 'GBP',
  reference: 'Back bedroom & landing',
  buyer: firm,
  seller: { name: 'Brackenholt Supply', addressLines: [] },
  accountNumber: '00471',
  deliverTo: ['2 Example Yard', 'Sampleton'],
  deliverOn: '2026-03-06',
  carriagePence: 795,
  lines: [
    {
      lineId: '1',
      code: '00126',
      name: 'Clip 15 mm & screw',
      packs: 3,
      packPence: 410,
      packHolds: 50,
      unit: 'each',
    },
    {
      lineId: '2',
      code: 'P-15',
      name: 'Copper pipe, 15 mm',
      packs: 2,
      packPence: 1299,
      packHolds: 3,
      unit: 'm',
    },
  ],
}
