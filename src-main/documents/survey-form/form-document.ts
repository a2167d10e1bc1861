import type { CanvasElement, Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { ink, paper, softInk } from '../look.ts'
import type { FormField, FormPage, FormPart, SurveyFormView } from './form-view.ts'
import type { WallFormView } from './wall-parts.ts'

const sidePt = 40
const widthPt = 595.28 - 2 * sidePt
const boxPt = 30
const lineColour = '#6c7780'
const squarePt = (5 * 72) / 25.4

/** The survey form: A4, boxes wide enough for a pencil, each wall with squares of 5 mm to sketch on. */
export function surveyFormDocument(view: SurveyFormView): TDocumentDefinitions {
  const made = paper({
    title: view.title,
    author: view.firmName,
    foot: view.title,
    fontSize: 10.5,
    sidePt,
    content: view.pages.map(pageContent),
  })
  return { ...made, pageMargins: [sidePt, 30, sidePt, 46] }
}

function pageContent(page: FormPage, index: number): Content {
  return {
    ...(index > 0 ? { pageBreak: 'before' as const } : {}),
    stack: [
      { text: page.title, fontSize: 16, bold: true, margin: [0, 0, 0, 2] },
      ...page.parts.flatMap(partContent),
      ...(page.wall === undefined ? [] : wallContent(page.wall)),
    ],
  }
}

function partContent({ title, fields }: FormPart): Content[] {
  return [{ text: title, bold: true, fontSize: 12, margin: [0, 6, 0, 2] }, ...rowsOf(fields).map(rowContent)]
}

/** Boxes three in a row, or four where there are just four; a wide one and a row of squares have the width to themselves. */
function rowsOf(fields: readonly FormField[]): readonly (readonly FormField[])[] {
  const runs: FormField[][] = []
  for (const field of fields) {
    const last = runs.at(-1)
    if (last !== undefined && isSmall(field) && last.every(isSmall)) last.push(field)
    else runs.push([field])
  }
  return runs.flatMap((run) => {
    const across = acrossFor(run.length)
    return Array.from({ length: Math.ceil(run.length / across) }, (_, nth) =>
      run.slice(nth * across, (nth + 1) * across),
    )
  })
}

function acrossFor(count: number): number {
  return count === 4 ? 4 : 3
}

function isSmall(field: FormField): boolean {
  return field.kind === 'box' && field.wide !== true
}

function rowContent(fields: readonly FormField[]): Content {
  const [first] = fields
  if (first?.kind === 'ticks') return tickRow(first)
  const heightPt = first?.kind === 'lines' ? 14 + first.lines * 18 : boxPt
  const cells = fields.map((field): TableCell => boxCell(field, fields.length))
  const across = first !== undefined && isSmall(first) ? acrossFor(cells.length) : 1
  const rest = Array.from({ length: across - cells.length })
  const widths = [...cells, ...rest].map(() => '*')
  const blank: TableCell[] = rest.map(() => ({ text: '', border: [false, false, false, false] }))
  return {
    table: { widths, heights: heightPt, body: [[...cells, ...blank]], dontBreakRows: true },
    layout: boxed,
    margin: [0, 0, 0, 3],
  }
}

const boxed = {
  hLineWidth: () => 0.75,
  vLineWidth: () => 0.75,
  hLineColor: () => lineColour,
  vLineColor: () => lineColour,
  paddingLeft: () => 4,
  paddingRight: () => 4,
  paddingTop: () => 1.5,
  paddingBottom: () => 1,
}

/** With four in a row the questions are a little smaller, so that each has one line. */
function boxCell(field: FormField, across: number): TableCell {
  const value = field.kind === 'ticks' ? '' : field.value
  return {
    stack: [
      { text: field.label, fontSize: across === 4 ? 8.4 : 9, color: softInk, lineHeight: 1.1 },
      ...(value === '' ? [] : [{ text: value, bold: true, fontSize: 11, lineHeight: 1.15 }]),
    ],
  }
}

type Ticks = Extract<FormField, { readonly kind: 'ticks' }>

function tickRow({ label, choices }: Ticks): Content {
  const across = squaresAcross(choices)
  const lines = Array.from({ length: Math.ceil(choices.length / across) }, (_, nth) =>
    choices.slice(nth * across, (nth + 1) * across),
  )
  const body = lines.map((line) => Array.from({ length: across }, (_, at) => choiceCell(line[at])))
  return {
    columns: [
      {
        width: choices.length === 2 && label.length > 20 ? 340 : 122,
        text: label,
        fontSize: 10,
        color: softInk,
        margin: [4, 3, 6, 0],
        lineHeight: 1.1,
      },
      {
        width: '*',
        table: { widths: Array.from({ length: across }, () => '*'), body },
        layout: { ...boxed, hLineWidth: () => 0, vLineWidth: () => 0, paddingLeft: () => 0 },
      },
    ],
    margin: [0, 0, 0, 2],
  }
}

/** As many squares in a line as their words leave room for. */
function squaresAcross(choices: Ticks['choices']): number {
  const longest = Math.max(...choices.map(({ says }) => says.length))
  if (longest > 20) return 2
  if (choices.length === 4 && longest > 14) return 2
  if (longest > 12) return Math.min(4, Math.max(3, Math.ceil(choices.length / 3)))
  return choices.length > 6 ? 4 : Math.max(2, Math.min(5, choices.length))
}

function choiceCell(choice: Ticks['choices'][number] | undefined): TableCell {
  if (choice === undefined) return { text: '' }
  return {
    columns: [
      { width: 16, canvas: square(choice.ticked) },
      { width: '*', text: choice.says, fontSize: 10, bold: choice.ticked, lineHeight: 1.1 },
    ],
  }
}

/** A square to tick; crossed where the job already says so. */
function square(ticked: boolean): CanvasElement[] {
  const sizePt = 10
  const stroke = { lineWidth: 1.4, lineColor: ink }
  const frame: CanvasElement = {
    type: 'rect',
    x: 0,
    y: 1,
    w: sizePt,
    h: sizePt,
    lineWidth: 0.9,
    lineColor: ink,
  }
  if (!ticked) return [frame]
  return [
    frame,
    { type: 'line', x1: 1.5, y1: 2.5, x2: 8.5, y2: 9.5, ...stroke },
    { type: 'line', x1: 8.5, y1: 2.5, x2: 1.5, y2: 9.5, ...stroke },
  ]
}

function wallContent({ columns, rows }: WallFormView): Content[] {
  return [
    {
      text: 'Sketch it as you look at it: from its left end and from finished floor. One square is ……… mm.',
      fontSize: 10,
      color: softInk,
      margin: [0, 6, 0, 3],
    },
    { canvas: gridLines(widthPt, sketchRows(rows.length)) },
    { text: 'In the way on this wall', bold: true, fontSize: 12, margin: [0, 8, 0, 2] },
    {
      table: {
        widths: ['*', 92, 66, 66, 60, 60],
        headerRows: 1,
        heights: (row: number) => (row === 0 ? 24 : 20),
        body: [
          columns.map((text): TableCell => ({ text, fontSize: 9, color: softInk, lineHeight: 1.1 })),
          ...rows.map((row) => row.map((text): TableCell => ({ text, bold: true, lineHeight: 1.1 }))),
        ],
      },
      layout: boxed,
    },
  ]
}

/** How many rows of squares leave room for the list below on one page. */
function sketchRows(listRows: number): number {
  return Math.max(10, 22 - Math.ceil(Math.max(0, listRows - 6) * 1.6))
}

function gridLines(acrossPt: number, down: number): CanvasElement[] {
  const across = Math.floor(acrossPt / squarePt)
  const [w, h] = [across * squarePt, down * squarePt]
  const look = (nth: number) =>
    nth % 5 === 0 ? { lineWidth: 0.8, lineColor: '#98a3ab' } : { lineWidth: 0.4, lineColor: '#c3cad0' }
  const upright = Array.from({ length: across + 1 }, (_, nth): CanvasElement => {
    const x = nth * squarePt
    return { type: 'line', x1: x, y1: 0, x2: x, y2: h, ...look(nth) }
  })
  const level = Array.from({ length: down + 1 }, (_, nth): CanvasElement => {
    const y = nth * squarePt
    return { type: 'line', x1: 0, y1: y, x2: w, y2: y, ...look(down - nth) }
  })
  return [...upright, ...level]
}
