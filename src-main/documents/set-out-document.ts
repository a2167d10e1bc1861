import type { Content, Node, TDocumentDefinitions } from 'pdfmake/interfaces'
import { dayInWords } from './days.ts'
import { paper, plain, typeface } from './look.ts'
import { cutTo, settings, warningsKept } from './set-out/closeness.ts'
import type { Closeness } from './set-out/closeness.ts'
import { drawingKey } from './set-out/drawing-key.ts'
import { drawingHeightPt, page } from './set-out/drawing-scale.ts'
import { bitsInWords, holeColumns, holeTable } from './set-out/hole-table.ts'
import type { SetOutSheetView, SetOutSheetWords, SetOutView } from './set-out-view.ts'

const black = '#000000'

/** Where to drill: one page a swap, black on white, to be read at arm's length. */
export function setOutDocument(view: SetOutView): TDocumentDefinitions {
  const { reference, madeOn, firmName, customerName, sheets } = view
  const foot = `Set-out ${cutTo(reference, 30)}  ·  ${cutTo(customerName, 34)}  ·  ${dayInWords(madeOn)}`
  const made = paper({
    title: `Set-out ${reference}`,
    author: firmName,
    foot,
    fontSize: 11,
    sidePt: page.sidePt,
    colour: black,
    content: sheets.map((sheet, index) => sheetContent(sheet, { view, index })),
  })
  return {
    ...made,
    pageMargins: [page.sidePt, page.topPt, page.sidePt, page.bottomPt],
    footer: (number: number, count: number): Content => ({
      margin: [page.sidePt, 12, page.sidePt, 0],
      columns: [foot, { text: `Page ${number} of ${count}`, alignment: 'right', width: 90 }],
    }),
  }
}

/** A sheet's words and how closely they are set: the place in `settings`, 0 at first. */
export type SheetToFit = { readonly words: SetOutSheetWords; readonly setting: number }

type BeforeDrawing = Omit<SetOutView, 'sheets'> & { readonly sheets: readonly SheetToFit[] }

/** How high a sheet's drawing may be; `fits` when its words leave that much at their setting. */
export type Room = { readonly heightPt: number; readonly fits: boolean }

/**
 * The document with an empty place for each drawing, and what its layout tells: once it is printed, `rooms` says how high each
 * sheet's drawing may be for the sheet to fill one page, and whether its words must be set closer.
 */
export function setOutWithoutDrawings(view: BeforeDrawing) {
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"></svg>'
  const blank = { svg, widthPt: 10, heightPt: 10, scale: 1000, whole: true }
  const ends = new Map<string, { readonly page: number; readonly topPt: number }>()
  const sheets = view.sheets.map(({ words, setting }) => ({ ...words, setting, drawing: blank }))
  const definition = setOutDocument({ ...view, sheets })
  const roomOf = ({ setting }: SheetToFit, index: number): Room => {
    const end = ends.get(endOf(index))
    if (end === undefined) throw new Error('The set-out was not laid out')
    const before = index === 0 ? 0 : (ends.get(endOf(index - 1))?.page ?? 0)
    const underWords =
      end.page === before + 1 ? page.heightPt - page.bottomPt - end.topPt - 6 : -blank.heightPt
    const leftPt = blank.heightPt + underWords
    return { heightPt: drawingHeightPt(leftPt), fits: leftPt >= settingAt(setting).leastDrawingPt }
  }
  return {
    definition: {
      ...definition,
      pageBreakBefore: ({ id, startPosition }: Node) => {
        if (id !== undefined) ends.set(id, { page: startPosition.pageNumber, topPt: startPosition.top })
        return false
      },
    },
    rooms: () => view.sheets.map(roomOf),
  }
}

function settingAt(nth: number): Closeness {
  const setting = settings[nth]
  if (setting === undefined) throw new Error(`There is no setting ${nth}`)
  return setting
}

function endOf(index: number): string {
  return `end-of-sheet-${index}`
}

type Place = { readonly view: SetOutView; readonly index: number }

function sheetContent(sheet: SetOutSheetView, { view, index }: Place): Content {
  const set = settingAt(sheet.setting)
  const { drawing } = sheet
  const address = [view.customerName, ...view.siteLines].join(', ')
  return {
    ...(index > 0 ? { pageBreak: 'before' as const } : {}),
    lineHeight: set.lineHeight,
    stack: [
      {
        text: cutTo(`${sheet.roomName}: ${sheet.emitterName}`, set.titleLetters),
        fontSize: 14.5,
        bold: true,
      },
      {
        text: cutTo(`${sheet.wallName}, ${sheet.wallBuild}. ${address}`, set.placeLetters),
        margin: [0, 2, 0, set.gapPt],
      },
      ...boxed('Stop and look', warningsKept(sheet.warnings, set), set),
      { ...pictured(drawing), alignment: 'center' },
      drawingKey(drawing),
      ...holesAndPipes(sheet, set),
      ...numbered('Order of work', sheet.steps, set),
      ...cautions('Take care', sheet.cautions, set),
      { text: ' ', id: endOf(index), fontSize: 1, lineHeight: 1 },
    ],
  }
}

function pictured({ svg, widthPt, heightPt }: SetOutSheetView['drawing']) {
  return { svg, width: widthPt, height: heightPt, font: typeface }
}

/** A short table has the fixing and the pipes beside it; a longer one takes the width, and they stand under it. */
function holesAndPipes(sheet: SetOutSheetView, { gapPt }: Closeness): Content[] {
  const margin: [number, number, number, number] = [0, gapPt, 0, 0]
  if (holeColumns(sheet.holes) > 1) {
    const bits = pair(['Bit and depth', bitsInWords(sheet.holes)])
    return [{ stack: [holeTable(sheet), { stack: [bits, ...pairs(sheet)], margin: [0, 3, 0, 0] }], margin }]
  }
  const columns = [
    { width: 337, stack: [holeTable(sheet)] },
    { width: '*', stack: pairs(sheet) },
  ]
  return [{ columns, columnGap: 14, margin }]
}

type Pair = readonly [label: string, says: string]

function pairs({ fixing, pipes }: Pick<SetOutSheetView, 'fixing' | 'pipes'>): Content[] {
  const use = `${Math.round(fixing.useRatio * 100)}%`
  const holds = fixing.holds
    ? `Carries ${use} of what it may.`
    : `Does not hold: ${use} of what it may carry. Do not hang it so.`
  const plug: Pair = ['Plug and screw', `${fixing.name}. ${holds}`]
  return [plug, ...pipes.map((pipe): Pair => [pipe.label, pipe.says])].map(pair)
}

function pair([label, says]: Pair): Content {
  return { text: [{ text: `${label}: `, bold: true }, says], margin: [0, 0, 0, 2] }
}

/** Warnings in a heavy frame, so that they are seen without colour. */
function boxed(title: string, sentences: readonly string[], { gapPt }: Closeness): Content[] {
  if (sentences.length === 0) return []
  const text = [{ text: `${title}. `, bold: true }, sentences.join(' ')]
  return [
    {
      table: { widths: ['*'], body: [[{ text }]] },
      layout: {
        ...plain,
        hLineWidth: () => 1.5,
        vLineWidth: () => 1.5,
        paddingLeft: () => 6,
        paddingRight: () => 6,
      },
      margin: [0, 0, 0, gapPt],
    },
  ]
}

function numbered(title: string, sentences: readonly string[], { gapPt }: Closeness): Content[] {
  if (sentences.length === 0) return []
  return [{ text: title, bold: true, margin: [0, gapPt, 0, 1] }, { ol: [...sentences] }]
}

/** In two columns, or one after another where the sheet is set close. */
function cautions(
  title: string,
  sentences: readonly string[],
  { gapPt, cautionsRunOn }: Closeness,
): Content[] {
  if (sentences.length === 0) return []
  const margin: [number, number, number, number] = [0, gapPt, 0, 0]
  if (cautionsRunOn) return [{ text: [{ text: `${title}. `, bold: true }, sentences.join(' ')], margin }]
  const half = Math.ceil(sentences.length / 2)
  const column = (some: readonly string[]): Content => ({ ul: [...some] })
  return [
    { text: title, bold: true, margin },
    { columns: [column(sentences.slice(0, half)), column(sentences.slice(half))], columnGap: 18 },
  ]
}
