import type { Content, Node, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { dayInWords } from './days.ts'
import { bareMm } from './in-words.ts'
import { paper, plain, tickBox, typeface } from './look.ts'
import type { SetOutSheetView, SetOutSheetWords, SetOutView } from './set-out-view.ts'

const ptPerMm = 72 / 25.4
const marginPt = 40
const widthPt = 595.28 - 2 * marginPt
const pageHeightPt = 841.89
const topPt = 32
const bottomPt = 44
/** A drawing lower than this could not be read; one higher than that would be larger than it need be. */
const leastDrawingPt = 190
const mostDrawingPt = 470

/** The drawing is made for a smaller paper and printed so much larger: its figures then stand 11 points high. */
const enlarged = 11 / (3.2 * ptPerMm)

/** Where to drill: one page a swap, black on white, to be read at arm's length. */
export function setOutDocument(view: SetOutView): TDocumentDefinitions {
  const { reference, madeOn, firmName, customerName, sheets } = view
  const made = paper({
    title: `Set-out ${reference}`,
    author: firmName,
    foot: `Set-out ${reference}  ·  ${customerName}  ·  ${dayInWords(madeOn)}`,
    fontSize: 11,
    sidePt: marginPt,
    colour: '#000000',
    content: sheets.map((sheet, index) => sheetContent(sheet, { view, index })),
  })
  return { ...made, pageMargins: [marginPt, topPt, marginPt, bottomPt] }
}

/** The paper that a drawing of some height is to be made for, in millimetres. */
export function drawingPaper(heightPt: number): { widthMm: number; heightMm: number } {
  return { widthMm: widthPt / ptPerMm / enlarged, heightMm: heightPt / ptPerMm / enlarged }
}

type BeforeDrawing = Omit<SetOutView, 'sheets'> & { readonly sheets: readonly SetOutSheetWords[] }

/**
 * The document with an empty place for each drawing, and what its layout tells: once it is printed, `heightsPt` says how high
 * each sheet's drawing may be for the sheet to fill one page.
 */
export function setOutWithoutDrawings(view: BeforeDrawing) {
  const blank = { svg: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"></svg>', heightPt: 10 }
  const ends = new Map<string, { readonly page: number; readonly topPt: number }>()
  const definition = setOutDocument({
    ...view,
    sheets: view.sheets.map((sheet) => ({ ...sheet, drawing: blank })),
  })
  const heightPt = (index: number) => {
    const end = ends.get(endOf(index))
    if (end === undefined) throw new Error('The set-out was not laid out')
    const before = index === 0 ? 0 : (ends.get(endOf(index - 1))?.page ?? 0)
    const left = end.page === before + 1 ? pageHeightPt - bottomPt - end.topPt - 6 : 0
    return Math.min(mostDrawingPt, Math.max(leastDrawingPt, blank.heightPt + left))
  }
  return {
    definition: {
      ...definition,
      pageBreakBefore: ({ id, startPosition }: Node) => {
        if (id !== undefined) ends.set(id, { page: startPosition.pageNumber, topPt: startPosition.top })
        return false
      },
    },
    heightsPt: () => view.sheets.map((_, index) => heightPt(index)),
  }
}

function endOf(index: number): string {
  return `end-of-sheet-${index}`
}

type Place = { readonly view: SetOutView; readonly index: number }

function sheetContent(sheet: SetOutSheetView, { view, index }: Place): Content {
  return {
    ...(index > 0 ? { pageBreak: 'before' as const } : {}),
    stack: [
      { text: titleOf(sheet), fontSize: 14.5, bold: true, lineHeight: 1.1 },
      {
        text: `${sheet.wallName}, ${sheet.wallBuild}. ${[view.customerName, ...view.siteLines].join(', ')}`,
        margin: [0, 2, 0, 6],
      },
      ...boxed('Stop and look', sheet.warnings),
      {
        svg: sheet.drawing.svg,
        width: widthPt,
        height: sheet.drawing.heightPt,
        font: typeface,
        alignment: 'center',
      },
      {
        columns: [
          { width: 322, stack: [holeTable(sheet)] },
          { width: '*', stack: besideHoles(sheet) },
        ],
        columnGap: 18,
        margin: [0, 6, 0, 0],
      },
      ...numbered('Order of work', sheet.steps),
      ...inTwo('Take care', sheet.cautions),
      { text: ' ', id: endOf(index), fontSize: 1, lineHeight: 1 },
    ],
  }
}

function titleOf({ roomName, emitterName }: SetOutSheetWords): string {
  return `${roomName}: ${emitterName}`
}

function holeTable({ holes }: SetOutSheetView): Content {
  const head = ['Hole', 'From\ncentre', 'From\nfloor', 'From\nleft end', 'Bit', 'Deep', 'Measured\ntwice']
  const top: TableCell[] = head.map((text, index) => ({
    text,
    fontSize: 10,
    alignment: index === 0 ? 'left' : index === 6 ? 'center' : 'right',
    lineHeight: 1.05,
  }))
  const rows = holes.map((hole): TableCell[] => [
    { text: hole.id, bold: true },
    { text: fromCentre(hole.fromCentreMm), bold: true, alignment: 'right' },
    { text: bareMm(hole.yMm), bold: true, alignment: 'right' },
    { text: bareMm(hole.xMm), alignment: 'right' },
    { text: bareMm(hole.drillMm), alignment: 'right' },
    { text: bareMm(hole.depthMm), alignment: 'right' },
    { columns: [tickBox(11), tickBox(11)], columnGap: 6, margin: [10, 0, 0, 0] },
  ])
  return {
    table: { widths: [28, 62, 40, 44, 22, 30, 50], headerRows: 1, dontBreakRows: true, body: [top, ...rows] },
    layout: {
      hLineWidth: (row) => (row === 0 ? 0 : row === 1 ? 1.25 : 0.5),
      vLineWidth: () => 0,
      hLineColor: () => '#000000',
      paddingLeft: () => 0,
      paddingRight: () => 6,
      paddingTop: () => 2.5,
      paddingBottom: () => 1,
    },
  }
}

/** `240 left`, `240 right`, `on it`. */
function fromCentre(distanceMm: number): string {
  if (Math.abs(distanceMm) < 0.05) return 'on it'
  return `${bareMm(Math.abs(distanceMm))} ${distanceMm < 0 ? 'left' : 'right'}`
}

type Beside = Pick<SetOutSheetView, 'fixing' | 'pipes'>

function besidePairs({ fixing, pipes }: Beside): readonly (readonly [label: string, says: string])[] {
  const use = `${Math.round(fixing.useRatio * 100)}%`
  const holds = fixing.holds
    ? `Carries ${use} of what it may.`
    : `Does not hold: ${use} of what it may carry. Do not hang it so.`
  return [
    ['Plug and screw', `${fixing.name}. ${holds}`],
    ...pipes.map((pipe) => [pipe.label, pipe.says] as const),
  ]
}

function besideHoles(sheet: Beside): Content[] {
  return besidePairs(sheet).map(([label, says]) => ({
    text: [{ text: `${label}: `, bold: true }, says],
    margin: [0, 0, 0, 3],
    lineHeight: 1.15,
  }))
}

/** Warnings in a heavy frame, so that they are seen without colour. */
function boxed(title: string, sentences: readonly string[]): Content[] {
  if (sentences.length === 0) return []
  const text = [{ text: `${title}. `, bold: true }, sentences.join(' ')]
  return [
    {
      table: { widths: ['*'], body: [[{ text, lineHeight: 1.15 }]] },
      layout: {
        ...plain,
        hLineWidth: () => 1.5,
        vLineWidth: () => 1.5,
        paddingLeft: () => 6,
        paddingRight: () => 6,
      },
      margin: [0, 0, 0, 6],
    },
  ]
}

function numbered(title: string, sentences: readonly string[]): Content[] {
  if (sentences.length === 0) return []
  return [
    { text: title, bold: true, margin: [0, 5, 0, 1] },
    { ol: [...sentences], lineHeight: 1.15 },
  ]
}

function inTwo(title: string, sentences: readonly string[]): Content[] {
  if (sentences.length === 0) return []
  const half = Math.ceil(sentences.length / 2)
  const column = (some: readonly string[]): Content => ({ ul: [...some], lineHeight: 1.15 })
  return [
    { text: title, bold: true, margin: [0, 5, 0, 1] },
    { columns: [column(sentences.slice(0, half)), column(sentences.slice(half))], columnGap: 18 },
  ]
}
