import type { Column, Content } from 'pdfmake/interfaces'
import type { ScaledDrawing } from './drawing-scale.ts'

const ptPerMm = 72 / 25.4

/** The bar that a reader lays a rule on, in millimetres of paper. */
const barMm = 30

/** How long a sample of a line is, in points. */
const samplePt = 27

/** What each broken line in a drawing means, told by its dashes alone: as the drawing dashes it, in parts of its own step. */
const dashes = [
  { says: 'centre line', steps: [5, 1, 1, 1] },
  { says: 'stud', steps: [2, 1.2] },
  { says: 'hidden', steps: [1, 1] },
] as const

/** Under a drawing: its scale with a bar to check the print by, and a sample of each broken line that it has. */
export function drawingKey({ svg, scale, whole }: Omit<ScaledDrawing, 'widthPt' | 'heightPt'>): Content {
  const drawn = dashesIn(svg)
  const named = dashes.filter(({ steps }) => drawn.some((dash) => isSame(dash, steps)))
  const barPt = barMm * ptPerMm
  return {
    columns: [
      {
        width: 'auto',
        text: `${whole ? 'Scale' : 'Part of the wall,'} 1:${scale}. This bar is ${barMm} mm:`,
        noWrap: true,
      },
      { width: barPt, stack: [{ svg: barSvg(barPt) }] },
      ...named.flatMap(({ says, steps }): Column[] => [
        { width: samplePt, stack: [{ svg: sampleSvg(steps) }] },
        { width: 'auto', text: says, noWrap: true },
      ]),
      { width: '*', text: '' },
    ],
    columnGap: 6,
    margin: [0, 2, 0, 0],
    lineHeight: 1,
  }
}

function dashesIn(svg: string): readonly (readonly number[])[] {
  return [...svg.matchAll(/stroke-dasharray="([^"]+)"/g)].map(([, steps = '']) =>
    steps.split(' ').map(Number),
  )
}

/** Of the same shape, whatever their size: the drawing rounds its dashes to a tenth of a millimetre. */
function isSame(drawn: readonly number[], steps: readonly number[]): boolean {
  const [first = 0] = drawn
  const [firstStep = 1] = steps
  return (
    drawn.length === steps.length &&
    steps.every((step, nth) => Math.abs((drawn[nth] ?? 0) / first - step / firstStep) < 0.05)
  )
}

function barSvg(widthPt: number): string {
  const d = `M0.5 2 V12 M0.5 7 H${widthPt - 0.5} M${widthPt - 0.5} 2 V12`
  return picture(widthPt, `<path d="${d}" fill="none" stroke="#000" stroke-width="1"/>`)
}

function sampleSvg(steps: readonly number[]): string {
  const dash = steps.map((step) => step * (steps.length > 2 ? 2.4 : 4)).join(' ')
  return picture(
    samplePt,
    `<line x1="0" y1="8" x2="${samplePt}" y2="8" stroke="#000" stroke-width="1" stroke-dasharray="${dash}"/>`,
  )
}

function picture(widthPt: number, marks: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPt}" height="14" viewBox="0 0 ${widthPt} 14">${marks}</svg>`
}
