import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import type { CustomerQuoteView } from './customer-quote-view.ts'
import { dayInWords } from './days.ts'
import { money, percent, quantity } from './in-words.ts'
import { letterhead } from './letterhead.ts'
import { ink, paper, plain, points, rule, ruledRows, section, softInk, textWidthPt, tickBox } from './look.ts'
import type { PricedLine, Prices, PriceSection } from './quote/prices.ts'
import type { ScopeOfRoom } from './quote/scope.ts'

/** The quote on paper. The definition is used up by printing: ask for a new one each time. */
export function quoteDocument(view: CustomerQuoteView): TDocumentDefinitions {
  const { firm, reference, prices } = view
  return paper({
    title: `Quote ${reference}`,
    author: firm.name,
    foot: `${firm.name}  ·  Quote ${reference}`,
    content: [
      ...letterhead(firm),
      { text: 'Quote', style: 'paperName', margin: [0, 0, 0, 6] },
      whoAndWhen(view),
      atAGlance(view),
      ...section('What we will do', [...view.rooms.flatMap(roomBlock), ...wholeJob(view.wholeJob)]),
      ...section('Price', priceBlocks(prices)),
      ...(prices.options.length === 0
        ? []
        : section('Options, not in the total', [optionsTable(prices.options)])),
      ...section('Not included', points(view.notIncluded)),
      ...section('What the price rests on', points(view.assumptions)),
      ...safetyBlocks(view),
      ...lastWords(view),
    ],
  })
}

function labelled(label: string, lines: readonly string[]): Content {
  return {
    stack: [{ text: label, style: 'label' }, ...lines.map((text) => ({ text }))],
    margin: [0, 0, 0, 6],
  }
}

function whoAndWhen({ customer, site, reference, quotedOn }: CustomerQuoteView): Content {
  const who = [customer.name, ...customer.addressLines]
  return {
    columns: [
      labelled('For', who),
      labelled('Work at', site ?? ['The same address']),
      { stack: [labelled('Reference', [reference]), labelled('Date', [dayInWords(quotedOn)])] },
    ],
    columnGap: 18,
  }
}

function atAGlance({ prices, validUntil }: CustomerQuoteView): Content {
  const cell = (label: string, big: string): TableCell => ({
    stack: [
      { text: label, style: 'label' },
      { text: big, style: 'big' },
    ],
  })
  const deposit = prices.depositPence === 0 ? [] : [cell('Deposit to book', money(prices.depositPence))]
  const cells = [
    cell(totalLabel(prices), money(prices.grossPence)),
    ...deposit,
    cell('This quote stands until', dayInWords(validUntil)),
  ]
  return {
    margin: [0, 6, 0, 0],
    table: { widths: cells.map(() => '*'), body: [cells] },
    layout: {
      ...plain,
      hLineWidth: () => 1,
      hLineColor: () => ink,
      paddingTop: () => 8,
      paddingBottom: () => 6,
    },
  }
}

function roomBlock({ name, work, warmth }: ScopeOfRoom): Content[] {
  return [
    {
      // What is kept together must fit on one page, or it is not printed at all.
      unbreakable: work.length <= 15,
      margin: [0, 0, 0, 6],
      stack: [
        { text: name, style: 'subheading', margin: [0, 2, 0, 3] },
        ...points(work),
        ...warmth.map((text) => ({ text, style: 'soft', margin: [0, 2, 0, 0] }) satisfies Content),
      ],
    },
  ]
}

function wholeJob(sentences: readonly string[]): Content[] {
  const head: Content = { text: 'The job as a whole', style: 'subheading', margin: [0, 2, 0, 3] }
  return [{ unbreakable: true, stack: [head, ...points(sentences)] }]
}

/** Under reverse charge the customer pays tax to HMRC beside this total. */
function totalLabel({ reverseChargeNotes }: Prices): string {
  return reverseChargeNotes.length === 0 ? 'Total with VAT' : 'Total to pay us'
}

function priceBlocks(prices: Prices): Content[] {
  const note: Content[] =
    prices.genericNote === null ? [] : [{ text: prices.genericNote, style: 'soft', margin: [0, 6, 0, 0] }]
  return [...prices.sections.map(sectionTable), totalsBlock(prices), ...note]
}

/** One group of lines; its head is repeated on every page that it runs over. */
function sectionTable(group: PriceSection): Content {
  const { title, lines, netPence, taxPence } = group
  const columns = columnsOf(group)
  const head = (text: string): TableCell => ({
    text,
    style: 'head',
    alignment: 'right',
    margin: [0, 1, 0, 0],
  })
  const heads: TableCell[] = [
    { text: title, style: 'subheading' },
    head('Quantity'),
    head('Before VAT'),
    ...(columns.tax ? [head('VAT')] : []),
  ]
  const rows = lines.map((line) => lineRow(line, columns))
  const together: TableCell[] = [
    { text: `${title}, together`, bold: true },
    '',
    { text: money(netPence), style: 'amount', bold: true },
    ...(columns.tax ? [{ text: money(taxPence ?? 0), style: 'amount', bold: true }] : []),
  ]
  const body =
    rows.length === 1 ? rows : [...rows.slice(0, -1), keptTogether([...rows.slice(-1), together], columns)]
  return {
    margin: [0, 2, 0, 10],
    table: {
      widths: [...columns.widths],
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      body: [heads, ...body],
    },
    layout: ruledRows,
  }
}

type Columns = { readonly tax: boolean; readonly widths: readonly (string | number)[] }

/** One more column, for the tax, where it is rounded by line. */
function columnsOf({ taxPence }: PriceSection): Columns {
  const tax = taxPence !== null
  return { tax, widths: ['*', 92, 82, ...(tax ? [72] : [])] }
}

/** The last line and the sum under it, as one row, so that no sum stands alone on a page. */
function keptTogether(rows: TableCell[][], { widths }: Columns): TableCell[] {
  const table: Content = {
    table: { widths: [...widths], body: rows },
    layout: {
      ...ruledRows,
      hLineWidth: (row) => (row === 1 ? 0.5 : 0),
      paddingTop: (row) => (row === 0 ? 0 : 3),
      paddingBottom: (row) => (row === 0 ? 1.5 : 0),
    },
  }
  return [{ ...table, colSpan: widths.length }, ...widths.slice(1).map(() => '')]
}

function lineRow(line: PricedLine, columns: Columns): TableCell[] {
  const { name, quantity: count, unit, netPence, rate, taxPence, marked } = line
  return [
    { text: `${name}${rate === null ? '' : ` (${rate})`}${marked ? ' *' : ''}` },
    { text: quantity(count, unit), style: 'amount' },
    { text: money(netPence), style: 'amount' },
    ...(columns.tax ? [{ text: money(taxPence ?? 0), style: 'amount' }] : []),
  ]
}

type Row = readonly [label: string, pence: number, bold?: boolean]

/** The sums, in the order in which a reader adds them up. */
function totalsBlock(prices: Prices): Content {
  const { sections, taxes, depositPence } = prices
  const before: readonly Row[] = [
    ...sections.map((one): Row => [one.title, one.netPence]),
    ['Total before VAT', prices.netPence, true],
  ]
  const tax = taxes.map(({ name, basisPoints, netPence, taxPence, byLine }): Row => [
    `${name}: ${percent(basisPoints)} of ${money(netPence)}${byLine ? ', by line' : ''}`,
    taxPence,
  ])
  const pay: readonly Row[] =
    depositPence === 0
      ? []
      : [
          ['Deposit, to book the work', depositPence],
          ['Balance, when the work is done', prices.balancePence],
        ]
  const rows: readonly Row[] = [...before, ...tax, [totalLabel(prices), prices.grossPence, true], ...pay]
  const heavy = rows.flatMap(([, , bold], index) => (bold === true ? [index] : []))
  return {
    unbreakable: true,
    stack: [
      {
        margin: [textWidthPt * 0.3, 6, 0, 0],
        table: { widths: ['*', 92], body: rows.map(totalRow) },
        layout: {
          ...ruledRows,
          hLineWidth: (row) => (heavy.includes(row) || heavy.includes(row - 1) ? 1 : 0),
          hLineColor: (row) => (heavy.includes(row) ? ink : rule),
        },
      },
      ...prices.reverseChargeNotes.map(
        (text) => ({ text, bold: true, margin: [textWidthPt * 0.3, 6, 0, 0] }) satisfies Content,
      ),
      { text: prices.taxNote, style: 'soft', margin: [textWidthPt * 0.3, 6, 0, 0] },
    ],
  }
}

function totalRow([label, pence, bold]: Row): TableCell[] {
  const weight = bold === true ? { bold: true, fontSize: 12 } : {}
  return [
    { text: label, fontFeatures: ['tnum'], ...weight },
    { text: money(pence), style: 'amount', ...weight },
  ]
}

function optionsTable(options: Prices['options']): Content {
  const head: TableCell[] = [
    { text: 'Tick to add', style: 'head', colSpan: 2 },
    '',
    { text: 'Before VAT', style: 'head', alignment: 'right' },
    { text: 'With VAT', style: 'head', alignment: 'right' },
  ]
  const rows = options.map(({ name, netPence, grossPence }): TableCell[] => [
    tickBox(10),
    { text: name },
    { text: money(netPence), style: 'amount' },
    { text: money(grossPence), style: 'amount' },
  ])
  return {
    table: { widths: [14, '*', 82, 82], headerRows: 1, dontBreakRows: true, body: [head, ...rows] },
    layout: ruledRows,
  }
}

function safetyBlocks({ safety }: CustomerQuoteView): Content[] {
  const group = (title: string, sentences: readonly string[]): Content[] => {
    const [first, ...rest] = points(sentences)
    if (first === undefined) return []
    const head: Content = { text: title, style: 'subheading', margin: [0, 4, 0, 3] }
    return [{ unbreakable: true, stack: [head, first] }, ...rest]
  }
  return section('Safety', [
    ...group('For you to know', safety.forCustomer),
    ...group('How we will work', safety.forFitter),
  ])
}

/** Terms and acceptance, on one page where they fit on one. */
function lastWords(view: CustomerQuoteView): Content[] {
  const own = (view.firm.terms ?? '').split(/\n+/).filter((text) => text.trim() !== '')
  const terms = own.map((text): Content => ({ text, margin: [0, 0, 0, 4] }))
  const blocks = [...section('Terms', terms), acceptance(view)]
  const short = own.join('').length <= 1800 && own.length <= 12
  return short ? [{ unbreakable: true, stack: blocks }] : blocks
}

function withTax({ reverseChargeNotes, reverseChargePence }: Prices): string {
  return reverseChargeNotes.length === 0
    ? ' with VAT'
    : `; I pay ${money(reverseChargePence)} of VAT to HMRC myself by reverse charge`
}

function acceptance({ reference, quotedOn, validUntil, prices, customer }: CustomerQuoteView): Content {
  const line = (label: string): TableCell => ({
    stack: [
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: 150, y2: 0, lineWidth: 0.75, lineColor: softInk }] },
      { text: label, style: 'label', margin: [0, 4, 0, 0] },
    ],
    margin: [0, 26, 0, 0],
  })
  const options =
    prices.options.length === 0 ? '' : ' Options that I have ticked are added at the price beside them.'
  return {
    unbreakable: true,
    stack: [
      { text: 'Acceptance', style: 'heading', margin: [0, 14, 0, 4] },
      {
        text: `I accept quote ${reference} of ${dayInWords(quotedOn)}, which stands until ${dayInWords(validUntil)}, for ${money(prices.grossPence)}${withTax(prices)}.${options}`,
      },
      {
        table: {
          widths: ['*', '*', '*'],
          body: [[line(`Signed, for ${customer.name}`), line('Name in capitals'), line('Date')]],
        },
        layout: plain,
      },
    ],
  }
}
