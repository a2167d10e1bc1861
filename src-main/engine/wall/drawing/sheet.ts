import type { Emitter } from '../../../domain/item.ts'
import type { SetOut } from '../../../domain/set-out.ts'
import type { Obstacle, Pipe, Wall } from '../../../domain/wall.ts'
import { element } from './svg.ts'
import type { Envelope } from '../place-emitter.ts'
import type { Marks } from './marks/marks.ts'

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
  /** A part of the picture drawn larger on the same paper; absent: all of it. */
  readonly zoom?: Zoom | undefined
  /** Every obstacle, with doors round the corner, whose leaves are seen from above; absent: those of the wall. */
  readonly leaves?: readonly Obstacle[] | undefined
  /** What is drawn besides, for whoever places the emitter; absent: nothing, as on the sheet for the wall. */
  readonly marks?: Marks | undefined
}

/** So many times larger than the whole, about a place on the wall that comes to the middle. */
export type Zoom = { readonly times: number; readonly xMm: number; readonly yMm: number }

export type OldEmitter = {
  readonly name: string
  readonly leftMm: number
  readonly bottomMm: number
  readonly widthMm: number
  readonly heightMm: number
  /** The holes it leaves, where they were measured. */
  readonly holes?: readonly { readonly xMm: number; readonly yMm: number }[]
}

/** A rectangle in the picture: millimetres on the wall, y downwards from finished floor. */
export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/**
 * The picture's frame: `unit` is one millimetre of paper, in millimetres on the wall; `titleLines` is how many lines the titles of
 * the dimension rows take.
 */
export type Sheet = {
  readonly unit: number
  readonly wall: Box
  readonly whole: Box
  readonly titleLines: 1 | 2
}

/** The two sizes of text, in millimetres of paper. */
export const textSize = 3.2
export const smallSize = 2.6

/** How a line is drawn: thickness and dashes in millimetres of paper. */
export type Pen = { readonly thick: number; readonly dash?: readonly number[]; readonly colour?: string }

/** Both ends of a straight line in the picture: x1, y1, x2, y2. */
export type Ends = readonly [x1: number, y1: number, x2: number, y2: number]

/**
 * A straight line.
 * @param sheet the frame
 * @param ends x1, y1, x2, y2 in the picture
 * @param pen thickness and dashes in millimetres of paper
 * @source practice, no published source
 * @example drawLine({ unit: 10 }, [0, 0, 5, 0], { thick: 0.5 }) // => '<line x1="0" y1="0" x2="5" y2="0" stroke="#000" stroke-width="5"/>'
 */
export function drawLine(sheet: Sheet, [x1, y1, x2, y2]: Ends, pen: Pen): string {
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
  return element('text', { ...where, 'font-family': 'Inter, sans-serif', fill: '#000' }, text)
}

/**
 * How wide a text comes out, in millimetres on the wall; a little generous.
 * @param sheet the frame
 * @param text one line
 * @param size in millimetres of paper
 * @source advance widths of the typeface Inter, the widest letter of each group
 * @example textWidth({ unit: 10 }, '2400', 3) // => 78
 */
export function textWidth({ unit }: Pick<Sheet, 'unit'>, text: string, size: number = textSize): number {
  return Array.from(text).reduce((sum, sign) => sum + (widths.get(sign) ?? 1), 0) * size * unit
}

/** Shares of the text's height; other signs are taken to be as wide as they are high. */
const widths: ReadonlyMap<string, number> = new Map(
  (
    [
      ["ijlI.,:;'|! ", 0.3],
      ['frt()/', 0.38],
      ['1-', 0.46],
      ['ackvxyzs', 0.57],
      ['bdeghnopqu', 0.61],
      ['023456789EFJL', 0.65],
      ['AVXYBKPRSTZ&×', 0.69],
      ['CDGHNOQU', 0.76],
      ['mwM…', 0.9],
    ] as const
  ).flatMap(([signs, width]) => Array.from(signs, (sign) => [sign, width] as const)),
)
