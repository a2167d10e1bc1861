import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { points, ruledRows, section, textWidthPt } from '../look.ts'
import { afterPaper, signatures } from './head-blocks.ts'
import type { HandoverView } from './handover-view.ts'

/** The handover sheet on paper. The definition is used up by printing: ask for a new one each time. */
export function handoverDocument(view: HandoverView): TDocumentDefinitions {
  return afterPaper({
    head: view,
    name: 'Handover sheet',
    content: [
      ...section('Who to ring', [{ text: view.ring.join('  ·  '), bold: true }]),
      ...section('What we fitted', fitted(view)),
      ...section('The valves', view.valves.flatMap(valveBlock)),
      ...section('Letting air out', steps(view.venting)),
      ...section('Looking after it', points(view.care)),
      ...section('Guarantees', guarantees(view)),
      ...section('Take care', points(view.cautions)),
      handedOver(view),
    ],
  })
}

function twoColumns(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  firstPt: number,
): Content {
  const rest = (textWidthPt - firstPt - 12 * (heads.length - 1)) / (heads.length - 1)
  return {
    margin: [0, 2, 0, 4],
    table: {
      widths: heads.map((_, at) => (at === 0 ? firstPt : rest)),
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      body: [
        heads.map((text): TableCell => ({ text, style: 'head' })),
        ...rows.map((row) => row.map((text): TableCell => ({ text }))),
      ],
    },
    layout: ruledRows,
  }
}

function fitted({ fitted: rows }: HandoverView): Content[] {
  if (rows.length === 0) return []
  return [
    twoColumns(
      ['Room', 'Radiator or towel rail'],
      rows.map(({ room, what }) => [room, what]),
      150,
    ),
  ]
}

function guarantees({ guarantees: rows }: HandoverView): Content[] {
  if (rows.length === 0) return []
  const noted = rows.some(({ says }) => says !== '')
  return [
    twoColumns(
      ['On what', 'Until', ...(noted ? ['Good to know'] : [])],
      rows.map(({ what, until, says }) => [what, until, ...(noted ? [says] : [])]),
      noted ? 190 : 290,
    ),
    { text: 'Keep this sheet and the quote: a guarantee is asked for with both.', style: 'soft' },
  ]
}

function valveBlock({ rooms, says }: HandoverView['valves'][number]): Content[] {
  const [first, ...rest] = points(says)
  if (first === undefined) return []
  const head: Content = { text: rooms, style: 'subheading', margin: [0, 2, 0, 3] }
  return [{ unbreakable: true, stack: [head, first] }, ...rest]
}

/** Sentences one after the other, numbered, because their order counts. */
function steps(sentences: readonly string[]): Content[] {
  if (sentences.length === 0) return []
  return [{ unbreakable: true, stack: [{ ol: [...sentences] }] }]
}

function handedOver({ firm, customer }: HandoverView): Content {
  return {
    unbreakable: true,
    stack: [
      { text: 'Handed over', style: 'heading', margin: [0, 14, 0, 4] },
      { text: 'The valves, the venting and the cautions were shown and explained.' },
      signatures([firm.name, customer.name]),
    ],
  }
}
