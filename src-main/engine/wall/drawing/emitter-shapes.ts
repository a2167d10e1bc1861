import type { Pipe } from '../../../domain/wall.ts'
import type { ValvePlace } from '../place-emitter.ts'
import { drawBox, drawLine, stroke } from './sheet.ts'
import type { Box, Sheet, WallView } from './sheet.ts'
import { element, short } from './svg.ts'

/**
 * The emitter on the wall with its centre line, pipes, valves and bracket holes; the old emitter dashed.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawEmitter({ unit: 20 }, { wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).length // => 2
 */
export function drawEmitter(sheet: Sheet, view: WallView): readonly string[] {
  const { setOut, old, pipes } = view
  const box = emitterBox(view)
  const oldBox = old === undefined ? [] : [drawBox(sheet, oldEmitterBox(old), { thick: 0.3, dash: [1.5, 1] })]
  const reach = 5 * sheet.unit
  return [
    ...oldBox,
    drawBox(sheet, box, { thick: 0.7 }),
    drawLine(sheet, [setOut.centreMm, box.y - reach, setOut.centreMm, sheet.unit * 6], {
      thick: 0.22,
      dash: [5, 1, 1, 1],
    }),
    ...pipes.map((pipe) => drawPipe(sheet, pipe, setOut.valves)),
    ...setOut.valves.flatMap((valve) => drawValve(sheet, valve, box)),
    ...setOut.holes.flatMap((hole) => drawHole(sheet, hole.xMm, -hole.yMm)),
  ]
}

/**
 * The emitter's own rectangle in the picture, without its valves.
 * @param view what is drawn
 * @source geometry
 * @example emitterBox({ emitter: { widthMm: 500, heightMm: 1200 }, setOut: { centreMm: 900, bottomMm: 300 } }) // => { x: 650, y: -1500, width: 500, height: 1200 }
 */
export function emitterBox({ emitter, setOut }: WallView): Box {
  const { widthMm, heightMm } = emitter
  return {
    x: setOut.centreMm - widthMm / 2,
    y: -setOut.bottomMm - heightMm,
    width: widthMm,
    height: heightMm,
  }
}

/**
 * The old emitter's rectangle in the picture.
 * @param old its place in mm from the wall's left end and the floor
 * @source geometry
 * @example oldEmitterBox({ leftMm: 400, bottomMm: 150, widthMm: 500, heightMm: 600 }) // => { x: 400, y: -750, width: 500, height: 600 }
 */
export function oldEmitterBox(old: NonNullable<WallView['old']>): Box {
  return { x: old.leftMm, y: -old.bottomMm - old.heightMm, width: old.widthMm, height: old.heightMm }
}

/** Size of a hole's circle and of a valve, in millimetres of paper. */
export const holeRadius = 1
const valveHalf = 1.3

function drawHole(sheet: Sheet, x: number, y: number): readonly string[] {
  const arm = 1.8 * sheet.unit
  const pen = { thick: 0.25 }
  return [
    element('circle', {
      cx: x,
      cy: y,
      r: holeRadius * sheet.unit,
      fill: '#fff',
      ...stroke(sheet, { thick: 0.35 }),
    }),
    drawLine(sheet, [x - arm, y, x + arm, y], pen),
    drawLine(sheet, [x, y - arm, x, y + arm], pen),
  ]
}

/** Two triangles point to point, and a line to the emitter. */
function drawValve(sheet: Sheet, { xMm: x, yMm }: ValvePlace, box: Box): readonly string[] {
  const y = -yMm
  const half = valveHalf * sheet.unit
  const foot = box.y + box.height
  const nearest = Math.min(Math.max(x, box.x), box.x + box.width)
  const wings = [x - half, y - half, x + half, y + half, x + half, y - half, x - half, y + half].map(short)
  const [x1, y1, x2, y2, x3, y3, x4, y4] = wings
  return [
    drawLine(sheet, [x, y, x, Math.min(y, foot)], { thick: 0.5 }),
    ...(nearest === x
      ? []
      : [drawLine(sheet, [x, Math.min(y, foot), nearest, Math.min(y, foot)], { thick: 0.5 })]),
    element('path', {
      d: `M${x1} ${y1} L${x3} ${y3} L${x4} ${y4} L${x2} ${y2} Z`,
      fill: '#000',
      ...stroke(sheet, { thick: 0.2 }),
    }),
  ]
}

/** A pipe from the floor as a pair of lines up to its end; one from the wall as a ring where it comes out. */
function drawPipe(sheet: Sheet, pipe: Pipe, valves: readonly ValvePlace[]): string {
  const endMm = pipe.yMm ?? valves.find((valve) => valve.side === pipe.side)?.yMm ?? 0
  if (pipe.from === 'wall') {
    return element('circle', {
      cx: pipe.xMm,
      cy: -endMm,
      r: 1.2 * sheet.unit,
      fill: 'none',
      ...stroke(sheet, { thick: 0.5 }),
    })
  }
  const width = Math.max(pipe.outsideMm, 0.8 * sheet.unit)
  return drawBox(
    sheet,
    { x: pipe.xMm - width / 2, y: -Math.max(0, endMm), width, height: Math.max(0, endMm) },
    { thick: 0.25, fill: '#fff' },
  )
}
