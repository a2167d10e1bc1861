import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { money } from '../in-words.ts'
import { ink, rule, ruledRows, section, textWidthPt } from '../look.ts'
import type { AccountLine, AccountView } from './account-view.ts'
import { afterPaper, atAGlance } from './head-blocks.ts'

/** The final account on paper. The definition is used up by printing: ask for a new one each time. */
export function accountDocument(view: AccountView): TDocumentDefinitions {
  const { closed, grossPence, paidPence, toPayPence } = view
  return afterPaper({
    head: view,
    name: 'Final account',
    ...(closed ? {} : { draft: 'Draft, the job is not closed yet' }),
    content: [
      atAGlance([
        [totalLabel(view), money(grossPence)],
        ['Paid', money(paidPence)],
        [toPayLabel(view), money(Math.abs(toPayPence))],
      ]),
      ...section('What the job came to', [
        linesTable('The quote', view.quoted),
        ...(view.variations.length === 0
          ? [{ text: 'Nothing was added or left out.', margin: [0, 2, 0, 6] } satisfies Content]
          : [linesTable('Agreed since', view.variations)]),
        totalsBlock(view),
      ]),
      ...lastWords(view),
    ],
  })
}

function totalLabel({ reversed }: AccountView): string {
  return reversed ? 'Total to pay us' : 'Total with VAT'
}

function toPayLabel({ toPayPence }: AccountView): string {
  return toPayPence < 0 ? 'We owe you' : 'Still to pay'
}

const widths = [textWidthPt - 24 - 92 - 82, 92, 82]

function linesTable(title: string, lines: readonly AccountLine[]): Content {
  const head: TableCell[] = [
    { text: title, style: 'subheading' },
    { text: 'VAT', style: 'head', alignment: 'right', margin: [0, 1, 0, 0] },
    { text: 'Before VAT', style: 'head', alignment: 'right', margin: [0, 1, 0, 0] },
  ]
  const rows = lines.map(({ name, under, rate, netPence }): TableCell[] => [
    { stack: [{ text: name }, ...under.map((text) => ({ text, style: 'soft' }))] },
    { text: rate, style: 'amount' },
    { text: money(netPence), style: 'amount' },
  ])
  return {
    margin: [0, 2, 0, 10],
    table: {
      widths: [...widths],
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      body: [head, ...rows],
    },
    layout: ruledRows,
  }
}

type Row = readonly [label: string, pence: number, bold?: boolean]

/** The sums, in the order in which a reader adds them up. */
function totalsBlock(view: AccountView): Content {
  const { netPence, taxes, grossPence, paidPence, toPayPence } = view
  const rows: readonly Row[] = [
    ['Total before VAT', netPence, true],
    ...taxes.map((tax): Row => [tax.name, tax.taxPence]),
    [totalLabel(view), grossPence, true],
    ['Less what is paid', -paidPence],
    [toPayLabel(view), Math.abs(toPayPence), true],
  ]
  const heavy = rows.flatMap(([, , bold], index) => (bold === true ? [index] : []))
  const left = textWidthPt * 0.3
  return {
    unbreakable: true,
    stack: [
      {
        margin: [left, 6, 0, 0],
        table: { widths: [textWidthPt * 0.7 - 92 - 12, 92], body: rows.map(totalRow) },
        layout: {
          ...ruledRows,
          hLineWidth: (row) => (heavy.includes(row) || heavy.includes(row - 1) ? 1 : 0),
          hLineColor: (row) => (heavy.includes(row) ? ink : rule),
        },
      },
      ...view.reverseChargeNotes.map(
        (text) => ({ text, bold: true, margin: [left, 6, 0, 0] }) satisfies Content,
      ),
      ...view.notes.map((text) => ({ text, style: 'soft', margin: [left, 6, 0, 0] }) satisfies Content),
    ],
  }
}

function totalRow([label, pence, bold]: Row): TableCell[] {
  const weight = bold === true ? { bold: true, fontSize: 12 } : {}
  return [
    { text: label, fontFeatures: ['tnum'], ...weight },
    { text: money(pence === 0 ? 0 : pence), style: 'amount', ...weight },
  ]
}

function lastWords(view: AccountView): Content[] {
  const { toPayPence, quoteName, firm } = view
  const words =
    toPayPence > 0
      ? `Please name quote ${quoteName} when you pay. If anything here is not as you agreed it, tell ${firm.name} before you do.`
      : toPayPence === 0
        ? 'Paid in full, with thanks.'
        : `You have paid ${money(-toPayPence)} more than the job came to; it is yours.`
  return [{ text: words, margin: [0, 10, 0, 0] }]
}
