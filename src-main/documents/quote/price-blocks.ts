import type { Content, CustomTableLayout, TableCell } from 'pdfmake/interfaces'
import { money, percent, quantity } from '../in-words.ts'
import { ink, rule, ruledRows, textWidthPt, tickBox } from '../look.ts'
import type { PricedLine, Prices, PriceSection } from './prices.ts'

/** Under reverse charge the customer pays tax to HMRC beside this total. */
export function totalLabel({ reverseChargeNotes }: Prices): string {
  return reverseChargeNotes.length === 0 ? 'Total with VAT' : 'Total to pay us'
}

/** The price as the firm shows it: by line, by room, or the total alone. */
export function priceBlocks(prices: Prices): Content[] {
  const note: Content[] =
    prices.genericNote === null ? [] : [{ text: prices.genericNote, style: 'soft', margin: [0, 8, 0, 0] }]
  const totals: Content = { unbreakable: true, stack: totalsStack(prices) }
  if (prices.detail !== 'rooms') return [...prices.sections.map(sectionTable), totals, ...note]
  return [...prices.sections.map((rooms) => roomsTable(rooms, totalsStack(prices))), ...note]
}

type Columns = {
  readonly quantity: boolean
  readonly tax: boolean
  readonly widths: readonly number[]
}

/** One more column, for the tax, where it is rounded by line; none for quantities where a line is a sum of many. */
function columnsOf({ lines, taxPence }: PriceSection): Columns {
  const tax = taxPence !== null
  const counted = lines.some((line) => line.quantity !== null)
  return { quantity: counted, tax, widths: withNames([...(counted ? [92] : []), 82, ...(tax ? [72] : [])]) }
}

/**
 * A column of names in what other columns leave of the page. Its width is given in points, because a column that may grow grows with
 * its longest word and pushes the amounts off the paper.
 */
function withNames(others: readonly number[], across: number = textWidthPt): readonly number[] {
  const gaps = 12 * others.length
  return [others.reduce((left, width) => left - width, across - gaps), ...others]
}

/** One group of lines; its head is repeated on every page that it runs over. */
function sectionTable(group: PriceSection): Content {
  const { title, lines, netPence, taxPence } = group
  const columns = columnsOf(group)
  const together: TableCell[] = [
    { text: `${title}, together`, bold: true },
    ...(columns.quantity ? [''] : []),
    { text: money(netPence), style: 'amount', bold: true },
    ...(columns.tax ? [{ text: money(taxPence ?? 0), style: 'amount', bold: true }] : []),
  ]
  const rows = lines.map((line) => lineRow(line, columns))
  const last = rows.slice(-keptRows)
  const table = { widths: columns.widths, body: [...last, together] }
  const body =
    rows.length === 1 ? rows : [...rows.slice(0, -keptRows), acrossAll([keptTable(table)], columns)]
  return headedTable([headsOf(title, columns), ...body], columns)
}

/** Sums for rooms, and under them the totals, which keep the last rooms beside them. */
function roomsTable(group: PriceSection, totals: readonly Content[]): Content {
  const columns = columnsOf(group)
  const rows = group.lines.map((line) => lineRow(line, columns))
  const kept = rows.length <= fewRooms ? rows.length : keptRows
  const last = { widths: columns.widths, body: rows.slice(-kept), closed: true }
  const body = [...rows.slice(0, -kept), acrossAll([keptTable(last), ...totals], columns)]
  const table = headedTable([headsOf(group.title, columns), ...body], columns, openAtFoot)
  return rows.length <= fewRooms ? { unbreakable: true, stack: [table] } : table
}

const openAtFoot: CustomTableLayout = {
  ...ruledRows,
  hLineWidth: (row, node) => (row === node.table.body.length ? 0 : (ruledRows.hLineWidth?.(row, node) ?? 0)),
}

/** So many lines stay on the page of the sum under them. */
const keptRows = 2

/** No more rooms than this stand with their totals on one page. */
const fewRooms = 8

function headsOf(title: string, columns: Columns): TableCell[] {
  const head = (text: string): TableCell => ({
    text,
    style: 'head',
    alignment: 'right',
    margin: [0, 1, 0, 0],
  })
  return [
    { text: title, style: 'subheading' },
    ...(columns.quantity ? [head('Quantity')] : []),
    head('Before VAT'),
    ...(columns.tax ? [head('VAT')] : []),
  ]
}

function headedTable(
  body: TableCell[][],
  { widths }: Columns,
  layout: CustomTableLayout = ruledRows,
): Content {
  return {
    margin: [0, 2, 0, 10],
    table: {
      widths: [...widths],
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      body,
    },
    layout,
  }
}

/** Rows as one row of the table around them, so that no page comes between them. */
function acrossAll(stack: Content[], { widths }: Columns): TableCell[] {
  return [{ stack, colSpan: widths.length }, ...widths.slice(1).map(() => '')]
}

type Kept = {
  readonly widths: readonly number[]
  readonly body: TableCell[][]
  /** Draws the rule under its last row, where the table around it draws none. */
  readonly closed?: boolean
}

function keptTable({ widths, body, closed = false }: Kept): Content {
  const layout: CustomTableLayout = {
    ...ruledRows,
    hLineWidth: (row) => (row === 0 || (row === body.length && !closed) ? 0 : 0.5),
    hLineColor: () => rule,
    paddingTop: (row) => (row === 0 ? 0 : 3),
    paddingBottom: (row) => (row === body.length - 1 && !closed ? 0 : 1.5),
  }
  return { table: { widths: [...widths], body }, layout }
}

function lineRow(line: PricedLine, columns: Columns): TableCell[] {
  const { name, quantity: count, unit, netPence, rate, taxPence, marked } = line
  const how = count === null ? '' : quantity(count, unit)
  return [
    { text: `${name}${rate === null ? '' : ` (${rate})`}${marked ? ' *' : ''}` },
    ...(columns.quantity ? [{ text: how, style: 'amount' }] : []),
    { text: money(netPence), style: 'amount' },
    ...(columns.tax ? [{ text: money(taxPence ?? 0), style: 'amount' }] : []),
  ]
}

type Row = readonly [label: string, pence: number, bold?: boolean]

/** The sums, in the order in which a reader adds them up. */
function totalsStack(prices: Prices): Content[] {
  const rows = totalRows(prices)
  const heavy = rows.flatMap(([, , bold], index) => (bold === true ? [index] : []))
  return [
    {
      margin: [textWidthPt * 0.3, 6, 0, 0],
      table: { widths: [...withNames([92], textWidthPt * 0.7)], body: rows.map(totalRow) },
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
  ]
}

function totalRows(prices: Prices): readonly Row[] {
  const { parts, taxes, depositPence } = prices
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
  return [
    ...parts.map((one): Row => [one.name, one.netPence]),
    ['Total before VAT', prices.netPence, true],
    ...tax,
    [totalLabel(prices), prices.grossPence, true],
    ...pay,
  ]
}

function totalRow([label, pence, bold]: Row): TableCell[] {
  const weight = bold === true ? { bold: true, fontSize: 12 } : {}
  return [
    { text: label, fontFeatures: ['tnum'], ...weight },
    { text: money(pence), style: 'amount', ...weight },
  ]
}

/** What may be added, each with an empty square to tick. */
export function optionsTable({ options, reverseChargeNotes }: Prices): Content {
  const gross = reverseChargeNotes.length === 0 ? 'With VAT' : 'To pay us'
  const head: TableCell[] = [
    { text: 'Tick to add', style: 'head', colSpan: 2 },
    '',
    { text: 'Before VAT', style: 'head', alignment: 'right' },
    { text: gross, style: 'head', alignment: 'right' },
  ]
  const rows = options.map(({ name, netPence, grossPence }): TableCell[] => [
    tickBox(10),
    { text: name },
    { text: money(netPence), style: 'amount' },
    { text: money(grossPence), style: 'amount' },
  ])
  const [names = 0] = withNames([14, 82, 82])
  const table: Content = {
    table: {
      widths: [14, names, 82, 82],
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      body: [head, ...rows],
    },
    layout: ruledRows,
  }
  return rows.length <= fewOptions ? { unbreakable: true, stack: [table] } : table
}

/** No more options than this stay on the page of their heading, however long their names. */
const fewOptions = 6
