import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import type { PickingLine } from '../../domain/follow-up/van.ts'
import { dayInWords } from '../days.ts'
import { nameInColumn, numberInWords, tight } from '../in-words.ts'
import { acrossLine, ink, pageWidthPt, paper, points, ruledRows, section, tickBox } from '../look.ts'
import { breakable, cutBlocks, ticked } from '../pick-list-document.ts'
import type { KindOfLines, PickingView } from './picking-view.ts'

const sidePt = 42
const widthPt = pageWidthPt - 2 * sidePt

/** One round of picking for the van, to be ticked off with a pen; black on white, and nothing told by colour. */
export function pickingDocument(view: PickingView): TDocumentDefinitions {
  const name = `Pick list ${view.pickingNo}`
  return paper({
    title: name,
    author: view.firmName,
    foot: `${name}  ·  ${view.title.slice(0, 60)}`,
    fontSize: 10.5,
    sidePt,
    colour: '#000000',
    content: [
      ...head(view),
      ...section('Missing from this list: find these yourself', tickedOrNone(view.missing)),
      ...section(
        'From the van',
        view.van.length === 0 ? [] : [linesTable(['What', 'How many', ''], view.van)],
      ),
      ...section(
        'From suppliers',
        view.suppliers.map(({ name: supplier, kinds }) => linesTable([supplier, 'Packs', 'Comes to'], kinds)),
      ),
      ...section('In the emitters’ boxes', boxesTable(view.boxes)),
      ...section('Tools', tickedOrNone(view.tools)),
      ...section('Drill bits', tickedOrNone(view.bits)),
      ...section('Protective gear', tickedOrNone(view.gear)),
      ...section('Pipe to cut', view.pipeCuts.flatMap(cutBlocks)),
      ...section('Lifts for two people', points(view.lifts)),
      ...section('Take care', points(view.cautions)),
    ],
  })
}

function head({ pickingNo, title, madeOn, closedOn, quotes, says }: PickingView): Content[] {
  const closed = closedOn === null ? [] : [`Closed ${dayInWords(closedOn)}`]
  return [
    {
      columns: [
        { text: `Pick list ${pickingNo}`, style: 'paperName', width: '*' },
        { text: [dayInWords(madeOn), ...closed].join('\n'), alignment: 'right', width: 'auto' },
      ],
    },
    { text: title, bold: true, margin: [0, 4, 0, 2] },
    ...quotes.map((quote): Content => ({ text: quote })),
    { text: says, style: 'soft', margin: [0, 2, 0, 0] },
    acrossLine(8, 0, widthPt),
  ]
}

function tickedOrNone(names: readonly string[]): Content[] {
  return names.length === 0 ? [] : [ticked(names)]
}

function boxesTable(boxes: readonly PickingLine[]): Content[] {
  return tickedOrNone(boxes.map(({ need, name }) => `${numberInWords(need)} × ${name}`))
}

/** Widths in points: a column that may grow would push the amounts off the paper. */
const others = [12, 100, 66, 62] as const
const nameWidthPt = widthPt - others.reduce((sum, width) => sum + width, 0) - 12 * others.length

type Heads = readonly [what: string, many: string, whole: string]

/** Lines kind by kind under one head, which is repeated on every page that they run over. */
function linesTable([what, many, whole]: Heads, kinds: readonly KindOfLines[]): Content {
  const right = { style: 'head', alignment: 'right', color: ink } as const
  const top: TableCell[] = [
    { text: what, style: 'subheading', colSpan: 3 },
    '',
    '',
    { text: many, ...right },
    { text: whole, ...right },
  ]
  const body = kinds.flatMap(({ kind, lines }): TableCell[][] => [
    [{ text: kind, bold: true, colSpan: 5, fillColor: '#eeeeee', headlineLevel: 2 }, '', '', '', ''],
    ...lines.map(lineRow),
  ])
  const [code, amount, all] = [others[1], others[2], others[3]]
  return {
    margin: [0, 0, 0, 12],
    table: {
      widths: [others[0], code, nameWidthPt, amount, all],
      headerRows: 1,
      keepWithHeaderRows: 2,
      dontBreakRows: true,
      body: [top, ...body],
    },
    layout: { ...ruledRows, paddingTop: () => 3, paddingBottom: () => 1.5 },
  }
}

function lineRow(line: PickingLine): TableCell[] {
  const notes = notesOf(line)
  const name = nameInColumn(line.name)
  return [
    isFound(line) ? tickedBox() : tickBox(),
    { text: breakable(line.code ?? '') },
    notes.length === 0 ? { text: name } : { stack: [name, { text: notes.join(' '), italics: true }] },
    { text: manyOf(line), style: 'amount', bold: true },
    { text: line.packs === undefined ? '' : amountOf(line.need, line.unit), style: 'amount' },
  ]
}

/** What was ticked on the screen and is all there; what is short stays open. */
function isFound({ tickedAt, picked, need }: PickingLine): boolean {
  return tickedAt !== undefined && picked >= need
}

/** A box that was ticked on the screen. */
function tickedBox(): Content {
  const box = { type: 'rect', x: 0, y: 1.5, w: 11, h: 11, lineWidth: 1, lineColor: ink } as const
  const down = { type: 'line', x1: 2, y1: 7.5, x2: 4.5, y2: 10.5, lineWidth: 1.5, lineColor: ink } as const
  const up = { type: 'line', x1: 4.5, y1: 10.5, x2: 9.5, y2: 3.5, lineWidth: 1.5, lineColor: ink } as const
  return { canvas: [box, down, up] }
}

/** What was found out about a line since: what is short, and what was taken instead. */
function notesOf({ picked, need, unit, insteadSays, shortSays, tickedAt }: PickingLine): readonly string[] {
  return [
    ...(insteadSays === undefined ? [] : [`Instead: ${insteadSays}.`]),
    ...(tickedAt === undefined || picked >= need ? [] : [`Found ${amountOf(picked, unit)}.`]),
    ...(shortSays === undefined ? [] : [`Short: ${shortSays}`]),
  ]
}

/** `2 × 12 m` of packs, plain `2` where a pack holds one; of the van how much. */
function manyOf({ packs, packHolds = 1, need, unit }: PickingLine): string {
  if (packs === undefined) return amountOf(need, unit)
  return packHolds === 1 && unit === 'each' ? String(packs) : `${packs} × ${amountOf(packHolds, unit)}`
}

function amountOf(many: number, unit: string): string {
  const number = numberInWords(many)
  return unit === 'each' ? number : `${number}${tight}${unit === 'm2' ? 'm²' : unit}`
}
