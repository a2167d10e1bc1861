import type { Emitter } from '../../../domain/item.ts'
import type { SetOut } from '../../../domain/set-out.ts'
import type { Pipe, Wall } from '../../../domain/wall.ts'
import { element } from './svg.ts'
import type { Envelope } from '../place-emitter.ts'

/** What a drawing of a set-out shows. */
export type WallView = {
  readonly wall: Wall
  readonly emitter: Pick<Emitter, 'name' | 'widthMm' | 'heightMm'>
  readonly envelope: Envelope
  readonly setOut: Pick<SetOut, 'centreMm' | 'bottomMm' | 'holes' | 'valves'>
  readonly pipes: readonly Pipe[]
  /** The emitter that hangs there now, where its place is known. */
  readonly old?: OldEmitter | undefined
  /** The paper it must be readable on; absent: 180 by 165 mm. */
  readonly paper?: { readonly widthMm: number; readonly heightMm: number } | undefined
}

export type OldEmitter = {
  readonly name: string
  readonly leftMm: number
  readonly bottomMm: number
  readonly widthMm: number
  readonly heightMm: number
}

/** A rectangle in the picture: millimetres on the wall, y downwards from finished floor. */
export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** The picture's frame: `unit` is one millimetre of paper, in millimetres on the wall. */
export type Sheet = { readonly unit: number; readonly wall: Box; readonly whole: Box }

/** Margins in millimetres of paper: columns left, heights right, rows above and below. */
const margin = { left: 33, right: 35, top: 17, bottom: 38 } as const
export const textSize = 3.2

/**
 * The frame of a drawing: what lies on the wall in true proportion, and round it margins for dimensions that are as wide on paper
 * however large the wall is. unit = the larger of width / (paper width - margins) and height / (paper height - margins).
 * @param view what is drawn
 * @source practice, no published source
 * @example sheetOf({ wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).wall.height // => 2400
 */
export function sheetOf(view: WallView): Sheet {
  const { wall, envelope, setOut } = view
  const xs = [0, wall.widthMm, envelope.leftMm, envelope.rightMm, ...setOut.holes.map((hole) => hole.xMm)]
  const ys = [0, wall.heightMm, envelope.bottomMm, envelope.topMm, ...setOut.holes.map((hole) => hole.yMm)]
  const left = Math.min(...xs)
  const top = Math.max(...ys)
  const shown: Box = { x: left, y: -top, width: Math.max(...xs) - left, height: top - Math.min(...ys) }
  const paper = view.paper ?? { widthMm: 180, heightMm: 165 }
  const room = {
    widthMm: Math.max(20, paper.widthMm - margin.left - margin.right),
    heightMm: Math.max(20, paper.heightMm - margin.top - margin.bottom),
  }
  const unit = Math.max(shown.width / room.widthMm, shown.height / room.heightMm)
  const whole: Box = {
    x: shown.x - margin.left * unit,
    y: shown.y - margin.top * unit,
    width: shown.width + (margin.left + margin.right) * unit,
    height: shown.height + (margin.top + margin.bottom) * unit,
  }
  return { unit, wall: shown, whole }
}

/** How a line is drawn: thickness and dashes in millimetres of paper. */
export type Pen = { readonly thick: number; readonly dash?: readonly number[]; readonly colour?: string }

/**
 * A straight line.
 * @param sheet the frame
 * @param ends x1, y1, x2, y2 in the picture
 * @param pen thickness and dashes in millimetres of paper
 * @source practice, no published source
 * @example drawLine({ unit: 10 }, [0, 0, 5, 0], { thick: 0.5 }) // => '<line x1="0" y1="0" x2="5" y2="0" stroke="#000" stroke-width="5"/>'
 */
export function drawLine(
  sheet: Sheet,
  [x1, y1, x2, y2]: readonly [number, number, number, number],
  pen: Pen,
): string {
  return element('line', { x1, y1, x2, y2, ...stroke(sheet, pen) })
}

/**
 * The outline of a rectangle.
 * @param sheet the frame
 * @param box in the picture
 * @param pen thickness and dashes; `fill` a colour, none when absent
 * @source practice, no published source
 * @example drawBox({ unit: 10 }, { x: 0, y: 0, width: 5, height: 5 }, { thick: 0.5 }).includes('fill="none"') // => true
 */
export function drawBox(
  sheet: Sheet,
  { x, y, width, height }: Box,
  pen: Pen & { readonly fill?: string },
): string {
  return element('rect', { x, y, width, height, fill: pen.fill ?? 'none', ...stroke(sheet, pen) })
}

/**
 * Attributes of a stroke.
 * @param sheet the frame
 * @param pen thickness and dashes in millimetres of paper
 * @source practice, no published source
 * @example stroke({ unit: 10 }, { thick: 0.5 })['stroke-width'] // => 5
 */
export function stroke(
  { unit }: Pick<Sheet, 'unit'>,
  { thick, dash, colour }: Pen,
): Readonly<Record<string, string | number>> {
  const line = { stroke: colour ?? '#000', 'stroke-width': thick * unit }
  return dash === undefined
    ? line
    : { ...line, 'stroke-dasharray': dash.map((length) => (length * unit).toFixed(1)).join(' ') }
}

export type Words = {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly size?: number
  readonly anchor?: 'start' | 'middle' | 'end'
}

/**
 * Text whose middle height is at y.
 * @param sheet the frame
 * @param words text, place, size in millimetres of paper, and which end of it x is
 * @source practice, no published source
 * @example drawText({ unit: 10 }, { text: 'A1', x: 0, y: 0 }).includes('>A1<') // => true
 */
export function drawText({ unit }: Sheet, { text, x, y, size, anchor }: Words): string {
  const high = (size ?? textSize) * unit
  const where = { x, y: y + high * 0.36, 'font-size': high, 'text-anchor': anchor ?? 'middle' }
  return element('text', { ...where, 'font-family': 'Inter', fill: '#000' }, text)
}

/**
 * How wide a text comes out, in millimetres on the wall; a little generous.
 * @param sheet the frame
 * @param text one line
 * @param size in millimetres of paper
 * @source from memory: a letter of a plain typeface is some 0.6 of its height wide
 * @example textWidth({ unit: 10 }, '1200', 3) // => 69.6
 */
export function textWidth({ unit }: Pick<Sheet, 'unit'>, text: string, size: number = textSize): number {
  return Array.from(text).length * size * 0.58 * unit
}
