import type { Content, CustomTableLayout, StyleDictionary, TDocumentDefinitions } from 'pdfmake/interfaces'

/** How our papers look: one typeface, dark ink, thin rules and room to breathe. */
export const typeface = 'Inter'
export const ink = '#16202a'
export const softInk = '#4b5863'
export const rule = '#c3cad0'
const accent = '#1d4a55'

/** A4 in points, and the margins of our papers: left, top, right, bottom. */
export const pageWidthPt = 595.28
export const margins = { side: 54, top: 48, bottom: 62 } as const
export const textWidthPt = pageWidthPt - 2 * margins.side

const styles: StyleDictionary = {
  firmName: { fontSize: 17, bold: true, color: accent, lineHeight: 1.1 },
  paperName: { fontSize: 24, bold: true, lineHeight: 1.1 },
  heading: { fontSize: 14, bold: true, color: accent, lineHeight: 1.15 },
  subheading: { fontSize: 11, bold: true },
  label: { fontSize: 10, color: softInk },
  soft: { color: softInk },
  head: { fontSize: 10, bold: true, color: softInk },
  amount: { alignment: 'right', fontFeatures: ['tnum'] },
  big: { fontSize: 16, bold: true, fontFeatures: ['tnum'], lineHeight: 1.15 },
}

/** Rules between rows only: a firm one under the head, thin ones below, none at the edges. */
export const ruledRows: CustomTableLayout = {
  hLineWidth: (row, node) => (row === 0 ? 0 : row === (node.table.headerRows ?? 0) ? 1 : 0.5),
  hLineColor: (row, node) => (row === (node.table.headerRows ?? 0) ? ink : rule),
  vLineWidth: () => 0,
  paddingLeft: (column) => (column === 0 ? 0 : 6),
  paddingRight: (column, node) => (column === (node.table.widths?.length ?? 0) - 1 ? 0 : 6),
  paddingTop: () => 3,
  paddingBottom: () => 1.5,
}

/** No rules at all, for blocks set side by side. */
export const plain: CustomTableLayout = {
  hLineWidth: () => 0,
  vLineWidth: () => 0,
  paddingLeft: (column) => (column === 0 ? 0 : 8),
  paddingRight: () => 0,
  paddingTop: () => 1.5,
  paddingBottom: () => 1.5,
}

type Paper = {
  readonly title: string
  readonly author: string
  /** Stands at the foot of every page, beside the page number. */
  readonly foot: string
  readonly content: Content[]
  readonly fontSize?: number
  /** Left and right margins; absent: the usual ones. */
  readonly sidePt?: number
  readonly colour?: string
}

/** A paper of ours: A4, its name at the foot of each page with `Page n of m`. */
export function paper({
  title,
  author,
  foot,
  content,
  fontSize,
  sidePt,
  colour,
}: Paper): TDocumentDefinitions {
  const side = sidePt ?? margins.side
  return {
    pageSize: 'A4',
    pageMargins: [side, margins.top, side, margins.bottom],
    info: { title, author, creator: 'Tailpiece', producer: 'Tailpiece' },
    language: 'en-GB',
    version: '1.7',
    displayTitle: true,
    defaultStyle: { font: typeface, fontSize: fontSize ?? 10.5, lineHeight: 1.2, color: colour ?? ink },
    styles: { ...styles },
    content,
    // A heading whose table begins on the next page goes there too.
    pageBreakBefore: (node, around) =>
      node.headlineLevel === 1 && around.getFollowingNodesOnPage().length === 0,
    footer: (page: number, pages: number): Content => ({
      margin: [side, 18, side, 0],
      columns: [
        { text: foot, fontSize: 10, color: softInk },
        { text: `Page ${page} of ${pages}`, fontSize: 10, color: softInk, alignment: 'right', width: 90 },
      ],
    }),
  }
}

/** A heading that stays with the first thing under it. Nothing where there is nothing under it. */
export function section(title: string, blocks: readonly Content[]): Content[] {
  const [first, ...rest] = blocks
  if (first === undefined) return []
  const head: Content = { text: title, style: 'heading', margin: [0, 14, 0, 4] }
  if (isSmall(first)) return [{ unbreakable: true, stack: [head, first] }, ...rest]
  return [{ ...head, headlineLevel: 1 }, ...blocks]
}

/** What is kept together must fit on one page, or it is not printed at all: so a table never is. */
function isSmall(block: Content): boolean {
  if (typeof block !== 'object' || Array.isArray(block)) return false
  return 'text' in block || ('unbreakable' in block && block.unbreakable === true)
}

/** Sentences one under the other, each with a dot before it. */
export function points(sentences: readonly string[]): Content[] {
  return sentences.map((sentence) => ({
    unbreakable: true,
    stack: [{ ul: [sentence], margin: [0, 0, 0, 2], markerColor: softInk }],
  }))
}

/** An empty square to tick with a pen. */
export function tickBox(sizePt = 11): Content {
  return { canvas: [{ type: 'rect', x: 0, y: 1.5, w: sizePt, h: sizePt, lineWidth: 1, lineColor: ink }] }
}

/** A thin line across the page. */
export function acrossLine(above: number, below: number, widthPt: number = textWidthPt): Content {
  const line = {
    type: 'line',
    x1: 0,
    y1: 0,
    x2: widthPt,
    y2: 0,
    lineWidth: 0.5,
    lineColor: rule,
  } as const
  return { canvas: [line], margin: [0, above, 0, below] }
}
