import type { Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { dayInWords } from './days.ts'
import { bareMm } from './in-words.ts'
import { paper, plain, tickBox, typeface } from './look.ts'
import type { SetOutSheetView, SetOutView } from './set-out-view.ts'

const ptPerMm = 72 / 25.4
const marginPt = 40
const widthPt = 595.28 - 2 * marginPt
const pageHeightPt = 841.89
const topPt = 32
const bottomPt = 44
const holeRowPt = 20
const linePt = 15.4

type Words = Omit<SetOutSheetView, 'drawing'>

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
    content: sheets.map((sheet, index) => sheetContent(sheet, { view, onNewPage: index > 0 })),
  })
  return { ...made, pageMargins: [marginPt, topPt, marginPt, bottomPt] }
}

/** The paper that a sheet's drawing is to be made for, in millimetres: as high as the sheet's words leave room for. */
export function drawingPaper(sheet: Words): { widthMm: number; heightMm: number } {
  return {
    widthMm: widthPt / ptPerMm / enlarged,
    heightMm: drawingHeightPt(sheet) / ptPerMm / enlarged,
  }
}

/**
 * Height of a page's text area, less what the words take: lines are counted from the signs that go on one, a little few.
 * Never too small to read.
 */
function drawingHeightPt(sheet: Words): number {
  const beside = linesOf(besideTexts(sheet), 26) * linePt + besideTexts(sheet).length * 3
  const holes = Math.max(holeRowPt * sheet.holes.length + 30, beside)
  const title = linesOf([titleOf(sheet)], 60) * 19.5 + 42
  const warnings = sheet.warnings.length === 0 ? 0 : linesOf([sheet.warnings.join(' ')], 76) * linePt + 13
  const [left, right] = halves(sheet.cautions)
  const care = left.length === 0 ? 0 : 23 + Math.max(linesOf(left, 38), linesOf(right, 38)) * linePt
  const steps = 23 + linesOf(sheet.steps, 78) * linePt
  const rest = pageHeightPt - topPt - bottomPt - title - warnings - holes - steps - care - 10
  return Math.min(430, Math.max(190, rest))
}

function linesOf(texts: readonly string[], signs: number): number {
  return texts.reduce((sum, text) => sum + Math.ceil((text.length + 1) / signs), 0)
}

function halves(texts: readonly string[]): readonly [readonly string[], readonly string[]] {
  const half = Math.ceil(texts.length / 2)
  return [texts.slice(0, half), texts.slice(half)]
}

type Place = { readonly view: SetOutView; readonly onNewPage: boolean }

function sheetContent(sheet: SetOutSheetView, { view, onNewPage }: Place): Content {
  return {
    ...(onNewPage ? { pageBreak: 'before' as const } : {}),
    stack: [
      { text: titleOf(sheet), fontSize: 14.5, bold: true, lineHeight: 1.1 },
      {
        text: `${sheet.wallName}, ${sheet.wallBuild}. ${[view.customerName, ...view.siteLines].join(', ')}`,
        margin: [0, 2, 0, 6],
      },
      ...boxed('Stop and look', sheet.warnings),
      {
        svg: sheet.drawing,
        width: widthPt,
        height: drawingHeightPt(sheet),
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
    ],
  }
}

function titleOf({ roomName, emitterName }: Words): string {
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

function besideTexts(sheet: Beside): readonly string[] {
  return besidePairs(sheet).map(([label, says]) => `${label}: ${says}`)
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
  const [left, right] = halves(sentences)
  const column = (some: readonly string[]): Content => ({ ul: [...some], lineHeight: 1.15 })
  return [
    { text: title, bold: true, margin: [0, 5, 0, 1] },
    { columns: [column(left), column(right)], columnGap: 18 },
  ]
}
