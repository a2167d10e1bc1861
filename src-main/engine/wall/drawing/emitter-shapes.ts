import type { Pipe } from '../../../domain/wall.ts'
import type { ValvePlace } from '../place-emitter.ts'
import { drawBox, drawLine, stroke } from './sheet.ts'
import type { Box, Sheet, WallView } from './sheet.ts'
import { element, short } from './svg.ts'

/**
 * The emitter on the wall with its centre line, pipes and valves; the old emitter dashed.
 * @param sheet the frame
 * @param view what is drawn
 * @param centreTop where the centre line starts in the picture, above the emitter
 * @source practice, no published source
 * @example drawEmitter({ unit: 20, wall: { x: 0, y: -2400, width: 1800, height: 2400 } }, { wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }, -1600).length // => 2
 */
export function drawEmitter(sheet: Sheet, view: WallView, centreTop: number): readonly string[] {
  const { setOut, old, pipes } = view
  const box = emitterBox(view)
  const oldBox = old === undefined ? [] : drawOld(sheet, old)
  return [
    ...oldBox,
    drawLine(sheet, [setOut.centreMm, centreTop, setOut.centreMm, 0], { thick: 0.22, dash: [5, 1, 1, 1] }),
    drawBox(sheet, box, { thick: 0.7 }),
    ...pipes.map((pipe) => drawPipe(sheet, pipe, setOut.valves)),
    ...setOut.valves.flatMap((valve) => drawValve(sheet, valve, box)),
  ]
}

/** The old emitter dashed, with a small ring at each hole that it leaves. */
function drawOld(sheet: Sheet, old: NonNullable<WallView['old']>): readonly string[] {
  const pen = { thick: 0.3, dash: [1.5, 1] }
  const rings = (old.holes ?? []).map(({ xMm, yMm }) =>
    element('circle', {
      cx: xMm,
      cy: -yMm,
      r: 0.7 * sheet.unit,
      fill: 'none',
      ...stroke(sheet, { thick: 0.25, dash: [0.5, 0.4] }),
    }),
  )
  return [drawBox(sheet, oldEmitterBox(old), pen), ...rings]
}

/**
 * A ring with a cross at every bracket hole.
 * @param sheet the frame
 * @param holes to drill
 * @source practice, no published source
 * @example drawHoles({ unit: 20 }, []) // => []
 */
export function drawHoles(sheet: Sheet, holes: Holes): readonly string[] {
  const size = holeSize(sheet, holes)
  return holes.flatMap((hole) => drawHole(sheet, hole, size))
}

type Holes = WallView['setOut']['holes']

/**
 * The radius of a hole's ring and the reach of its cross, in millimetres on the wall: smaller where two holes stand so close that
 * their rings would meet.
 * @param sheet the frame
 * @param holes to drill
 * @source practice, no published source
 * @example holeSize({ unit: 20 }, [{ xMm: 0, yMm: 0 }, { xMm: 40, yMm: 0 }]) // => { radius: 16, arm: 20.8 }
 */
export function holeSize({ unit }: Pick<Sheet, 'unit'>, holes: Holes): { radius: number; arm: number } {
  const gaps = holes.flatMap((one, nth) =>
    holes.slice(nth + 1).map((other) => Math.hypot(one.xMm - other.xMm, one.yMm - other.yMm)),
  )
  const radius = Math.min(unit, Math.max(0.3 * unit, 0.4 * Math.min(Infinity, ...gaps)))
  return { radius, arm: 1.3 * radius }
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

function drawHole(
  sheet: Sheet,
  { xMm: x, yMm }: Holes[number],
  { radius, arm }: { readonly radius: number; readonly arm: number },
): readonly string[] {
  const y = -yMm
  const small = radius / sheet.unit
  const pen = { thick: 0.22 * small }
  return [
    element('circle', { cx: x, cy: y, r: radius, fill: '#fff', ...stroke(sheet, { thick: 0.35 * small }) }),
    drawLine(sheet, [x - arm, y, x + arm, y], pen),
    drawLine(sheet, [x, y - arm, x, y + arm], pen),
  ]
}

/**
 * The square a valve's sign takes: between the pipe entry and the emitter's lower edge where they leave it room, never on the floor.
 * @param sheet the frame
 * @param valve its pipe entry
 * @param emitter its rectangle in the picture
 * @source practice, no published source
 * @example valveBox({ unit: 10 }, { xMm: 100, yMm: 135 }, { x: 80, y: -900, width: 500, height: 740 }) // => { x: 87.5, y: -160, width: 25, height: 25 }
 */
export function valveBox(
  { unit }: Pick<Sheet, 'unit'>,
  { xMm, yMm }: Pick<ValvePlace, 'xMm' | 'yMm'>,
  emitter: Box,
): Box {
  const isUnder = xMm > emitter.x && xMm < emitter.x + emitter.width
  const gap = isUnder ? -emitter.y - emitter.height - yMm : Infinity
  const side = Math.min(2.6 * unit, Math.max(1.4 * unit, gap))
  return { x: xMm - side / 2, y: -yMm - side, width: side, height: side }
}

/** Two triangles point to point, and a line to the emitter. */
function drawValve(sheet: Sheet, valve: ValvePlace, emitter: Box): readonly string[] {
  const box = valveBox(sheet, valve, emitter)
  const { x: left, y: top } = box
  const [right, low] = [left + box.width, top + box.height]
  const foot = emitter.y + emitter.height
  const x = valve.xMm
  const nearest = Math.min(Math.max(x, emitter.x), emitter.x + emitter.width)
  const level = Math.min(top + box.height / 2, foot)
  const pen = { thick: 0.5 }
  const [x1, y1, x2, y2] = [left, top, right, low].map(short)
  return [
    ...(nearest === x
      ? top > foot
        ? [drawLine(sheet, [x, top, x, foot], pen)]
        : []
      : [drawLine(sheet, [x, level, nearest, level], pen)]),
    element('path', {
      d: `M${x1} ${y1} L${x2} ${y1} L${x1} ${y2} L${x2} ${y2} Z`,
      fill: '#000',
      ...stroke(sheet, { thick: 0.2 }),
    }),
  ]
}

/**
 * The height at which a pipe ends: as measured, else its valve's entry.
 * @param pipe as found
 * @param valves of the new emitter
 * @source practice, no published source
 * @example pipeEndMm({ side: 'left' }, [{ side: 'left', xMm: 0, yMm: 135 }]) // => 135
 */
export function pipeEndMm(pipe: Pipe, valves: readonly ValvePlace[]): number {
  return pipe.yMm ?? valves.find((valve) => valve.side === pipe.side)?.yMm ?? 0
}

/**
 * The rectangle of a pipe that rises from the floor; drawn wide enough to see.
 * @param sheet the frame
 * @param pipe as found
 * @param valves of the new emitter
 * @source practice, no published source
 * @example floorPipeBox({ unit: 10 }, { xMm: 100, yMm: 135, outsideMm: 15 }, []) // => { x: 92.5, y: -135, width: 15, height: 135 }
 */
export function floorPipeBox({ unit }: Pick<Sheet, 'unit'>, pipe: Pipe, valves: readonly ValvePlace[]): Box {
  const width = Math.max(pipe.outsideMm, 0.8 * unit)
  const height = Math.max(0, pipeEndMm(pipe, valves))
  return { x: pipe.xMm - width / 2, y: -height, width, height }
}

/** A pipe from the floor as a pair of lines up to its end; one from the wall as a ring where it comes out. */
function drawPipe(sheet: Sheet, pipe: Pipe, valves: readonly ValvePlace[]): string {
  if (pipe.from === 'floor')
    return drawBox(sheet, floorPipeBox(sheet, pipe, valves), { thick: 0.25, fill: '#fff' })
  return element('circle', {
    cx: pipe.xMm,
    cy: -pipeEndMm(pipe, valves),
    r: 1.2 * sheet.unit,
    fill: 'none',
    ...stroke(sheet, { thick: 0.5 }),
  })
}
