import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import type { Firm } from '../domain/firm.ts'
import type { Order, OrderLine } from '../domain/follow-up/order.ts'
import { dayInWords } from './days.ts'
import { money, nameInColumn, numberInWords, tight } from './in-words.ts'
import { letterhead } from './letterhead.ts'
import { breakable } from './pick-list-document.ts'
import { ink, paper, ruledRows, textWidthPt } from './look.ts'

/** An order as its supplier gets it: who asks, for what, at which prices. It has no place for a customer. */
export type OrderPaperView = { readonly firm: Firm; readonly order: Order }

export function orderDocument({ firm, order }: OrderPaperView): TDocumentDefinitions {
  const { orderId } = order
  return paper({
    title: `Order ${orderId}`,
    author: firm.name,
    foot: `${firm.name.slice(0, 50)}  ·  Order ${orderId}`,
    colour: '#000000',
    content: [
      ...letterhead(firm),
      { text: `Order ${orderId}`, style: 'paperName', margin: [0, 0, 0, 6] },
      ...cancelledBlocks(order),
      whoAndWhen(firm, order),
      linesTable(order.lines),
      totalsBlock(order),
      { text: 'Prices are before VAT. Please quote the order number on the delivery note and the invoice.' },
    ],
  })
}

function cancelledBlocks({ cancelledOn }: Order): Content[] {
  if (cancelledOn === undefined) return []
  return [
    {
      text: `Cancelled on ${dayInWords(cancelledOn)}. Please send nothing of it.`,
      style: 'big',
      margin: [0, 0, 0, 8],
    },
  ]
}

function whoAndWhen(firm: Firm, { supplierName, madeOn, pickingNo }: Order): Content {
  const reference = pickingNo === undefined ? [] : [labelled('Our reference', [`Pick list ${pickingNo}`])]
  return {
    columns: [
      { width: '*', stack: [labelled('To', [supplierName])] },
      { width: '*', stack: [labelled('Deliver to', [firm.name, ...firm.addressLines])] },
      { width: 110, stack: [labelled('Date', [dayInWords(madeOn)]), ...reference] },
    ],
    columnGap: 14,
    margin: [0, 0, 0, 10],
  }
}

function labelled(label: string, lines: readonly string[]): Content {
  return {
    stack: [{ text: label, style: 'label' }, ...lines.map((text) => ({ text }))],
    margin: [0, 0, 0, 6],
  }
}

/** Widths in points: a column that may grow would push the amounts off the paper. */
const widths = [14, 92, 0, 66, 58, 62] as const
const nameWidthPt =
  textWidthPt - widths.reduce<number>((sum, width) => sum + width, 0) - 12 * (widths.length - 1)

function linesTable(lines: readonly OrderLine[]): Content {
  const right = { style: 'head', alignment: 'right' } as const
  const top: TableCell[] = [
    '',
    { text: 'Your code', style: 'head' },
    { text: 'Item', style: 'head' },
    { text: 'Packs', ...right },
    { text: 'A pack', ...right },
    { text: 'Amount', ...right },
  ]
  const rows = lines.map((line): TableCell[] => [
    { text: String(line.lineNo), style: 'soft' },
    { text: breakable(line.code), bold: true },
    { text: nameInColumn(line.name) },
    { text: packsOf(line), style: 'amount', bold: true },
    { text: money(line.packPence), style: 'amount' },
    { text: money(line.linePence), style: 'amount' },
  ])
  return {
    table: {
      widths: widths.map((width) => (width === 0 ? nameWidthPt : width)),
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      body: [top, ...rows],
    },
    layout: ruledRows,
    margin: [0, 0, 0, 8],
  }
}

function totalsBlock({ goodsPence, carriagePence, totalPence }: Order): Content {
  const row = (label: string, pence: number, bold: boolean): TableCell[] => [
    { text: label, bold },
    { text: money(pence), style: 'amount', bold },
  ]
  const body = [
    row('Goods', goodsPence, false),
    row('Carriage', carriagePence, false),
    row('Total before VAT', totalPence, true),
  ]
  return {
    unbreakable: true,
    margin: [textWidthPt - 230, 0, 0, 14],
    stack: [
      {
        table: { widths: [130, 88], body },
        layout: {
          ...ruledRows,
          hLineWidth: (row) => (row === 0 || row === body.length ? 0 : row === body.length - 1 ? 1 : 0.5),
          hLineColor: () => ink,
        },
      },
    ],
  }
}

/** `2 × 12 m` of packs; plain `2` where a pack holds one. */
function packsOf({ packs, packHolds, unit }: OrderLine): string {
  const held = numberInWords(packHolds)
  if (unit === 'each') return packHolds === 1 ? String(packs) : `${packs} × ${held}`
  return `${packs} × ${held}${tight}${unit === 'm2' ? 'm²' : unit}`
}
