import type { Order } from '../domain/follow-up/order.ts'
import { csvFile } from './price-export/csv-file.ts'
import { numberCell, penceCell, textCell } from './price-export/table.ts'
import type { Cell } from './price-export/table.ts'

const columns = [
  'Order',
  'Supplier',
  'Line',
  'Code',
  'Item',
  'Packs',
  'Pack holds',
  'Unit',
  'Pack price before VAT',
  'Amount before VAT',
].map((heading) => ({ heading, widthChars: 16 }))

/** An order as CSV (RFC 4180): a row for each line and one for carriage, so that the last column sums to the order's total. */
export function orderCsv({ orderId, supplierName, lines, carriagePence }: Order): Uint8Array {
  const whose = [textCell(orderId), textCell(supplierName)]
  const goods = lines.map((line): readonly Cell[] => [
    ...whose,
    numberCell(line.lineNo),
    textCell(line.code),
    textCell(line.name),
    numberCell(line.packs),
    numberCell(line.packHolds),
    textCell(line.unit),
    penceCell(line.packPence),
    penceCell(line.linePence),
  ])
  const carriage = [
    ...whose,
    null,
    null,
    textCell('Carriage'),
    null,
    null,
    null,
    null,
    penceCell(carriagePence),
  ]
  return csvFile({ name: 'Order', columns, rows: carriagePence === 0 ? goods : [...goods, carriage] })
}
