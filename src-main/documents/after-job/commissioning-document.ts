import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { points, ruledRows, section, textWidthPt } from '../look.ts'
import type { BalancingRow, CommissioningView } from './commissioning-view.ts'
import { afterPaper, atAGlance, pairs, signatures } from './head-blocks.ts'

/** The commissioning record on paper. The definition is used up by printing: ask for a new one each time. */
export function commissioningDocument(view: CommissioningView): TDocumentDefinitions {
  return afterPaper({
    head: view,
    name: 'Commissioning record',
    content: [
      atAGlance([
        ['Done on', view.doneOn],
        ['By', view.by],
      ]),
      ...section('Water', [pairs(view.water)]),
      ...section('Pressure', [pairs(view.pressure)]),
      ...(view.balancing.length === 0 ? [] : section('Balancing', balancing(view.balancing))),
      ...section('Looked at before we left', [pairs(view.checks)]),
      ...section('Notes', points(view.notes)),
      signed(view),
    ],
  })
}

function balancing(rows: readonly BalancingRow[]): Content[] {
  const others = [48, 52, 48, 62]
  const left = others.reduce((sum, width) => sum - width, textWidthPt - 12 * 5)
  const head = (text: string, right = true): TableCell => ({
    text,
    style: 'head',
    ...(right ? { alignment: 'right' } : {}),
  })
  const heads = [
    head('Room', false),
    head('Radiator or towel rail', false),
    head('Flow'),
    head('Return'),
    head('Drop'),
    head('Turns open'),
  ]
  const body = rows.map(({ room, emitter, flow, back, drop, turns }): TableCell[] => [
    { text: room },
    { text: emitter },
    ...[flow, back, drop, turns].map((text) => ({ text, style: 'amount' })),
  ])
  return [
    {
      margin: [0, 2, 0, 4],
      table: {
        widths: [left * 0.34, left * 0.66, ...others],
        headerRows: 1,
        keepWithHeaderRows: 1,
        dontBreakRows: true,
        body: [heads, ...body],
      },
      layout: ruledRows,
    },
    { text: 'Turns open: of the lockshield valve, counted from shut. A dash: not measured.', style: 'soft' },
  ]
}

function signed({ firm, customer }: CommissioningView): Content {
  return {
    unbreakable: true,
    stack: [
      { text: 'Signatures', style: 'heading', margin: [0, 14, 0, 4] },
      { text: 'This is what was done and measured on that day.' },
      signatures([firm.name, customer.name]),
    ],
  }
}
