import type { Obstacle } from '../../../../domain/wall.ts'
import { sweepOf } from '../../doors/door-swing.ts'
import type { Sweep } from '../../doors/leaf-sweep.ts'
import type { Label } from '../labels.ts'
import { placesApart, placesBeside } from '../places.ts'
import { drawBox, drawLine, smallSize, stroke } from '../sheet.ts'
import type { Box, Sheet, WallView } from '../sheet.ts'
import { element, short } from '../svg.ts'
import { alongWall } from './looked.ts'

/** From the floor line down to the wall seen from above, mm. */
const gapMm = 220

/**
 * How deep the picture goes below the floor line for what is seen from above, mm: the emitter's front or the farthest leaf; 0 where
 * that is not asked for or no door opens into the room.
 * @param view what is drawn
 * @source plane geometry
 * @example planDepthMm({ wall: { widthMm: 1800, heightMm: 2400 }, envelope: { frontMm: 100 }, marks: { showsPlan: true } }) // => 0
 */
export function planDepthMm({ wall, envelope, marks, leaves }: Planned): number {
  const sweeps = sweepsOf({ wall, leaves })
  if (marks?.showsPlan !== true || sweeps.length === 0) return 0
  const outs = sweeps.map((sweep) => alongWall(sweep).outMm)
  return gapMm + Math.max(envelope.frontMm, ...outs) + gapMm / 3
}

type Planned = Pick<WallView, 'wall' | 'envelope' | 'marks' | 'leaves'>

/**
 * The emitter and each door's leaf seen from above, to the same scale, below the floor line: the leaf shut and open with the arc of its
 * edge between.
 * @param sheet the frame
 * @param view what is drawn
 * @source plane geometry; practice, no published source
 * @example drawPlan({ unit: 10 }, { wall: { widthMm: 1800, heightMm: 2400 }, envelope: { frontMm: 100 } }) // => []
 */
export function drawPlan(sheet: Sheet, view: WallView): readonly string[] {
  if (planDepthMm(view) === 0) return []
  const { wall } = view
  const box = emitterPlan(view)
  return [
    drawLine(sheet, [0, gapMm, wall.widthMm, gapMm], { thick: 0.6 }),
    ...sweepsOf(view).flatMap((sweep) => drawLeaf(sheet, sweep)),
    drawBox(sheet, box, { thick: 0.6, fill: '#fff' }),
  ]
}

/**
 * What says that the view under the floor line is from above; none without that view.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example planLabels({ unit: 10 }, { wall: { widthMm: 1800, heightMm: 2400 }, envelope: { frontMm: 100 } }) // => []
 */
export function planLabels(sheet: Sheet, view: WallView): readonly Label[] {
  if (planDepthMm(view) === 0) return []
  const text = { lines: ['seen from above'], size: smallSize }
  const box = emitterPlan(view)
  const below = { ...box, y: box.y + box.height, height: 0 }
  return [
    {
      on: ['centre'],
      places: placesBeside(sheet, text, below),
      apart: (awayMm) => placesApart(sheet, text, { box, awayMm }),
    },
  ]
}

/**
 * The rectangles that the view from above takes in the picture: emitter and leaves, for names to keep clear of.
 * @param view what is drawn
 * @source plane geometry
 * @example planBoxes({ wall: { widthMm: 1800, heightMm: 2400 }, envelope: { frontMm: 100 } }) // => []
 */
export function planBoxes(view: Planned & Pick<WallView, 'emitter' | 'setOut'>): readonly Box[] {
  if (planDepthMm(view) === 0) return []
  const leaves = sweepsOf(view).map((sweep): Box => {
    const { fromMm, toMm, outMm } = alongWall(sweep)
    return { x: fromMm, y: gapMm, width: toMm - fromMm, height: outMm }
  })
  return [emitterPlan(view), ...leaves]
}

function emitterPlan({ envelope, emitter, setOut }: Pick<WallView, 'envelope' | 'emitter' | 'setOut'>): Box {
  const x = setOut.centreMm - emitter.widthMm / 2
  return { x, y: gapMm, width: emitter.widthMm, height: envelope.frontMm }
}

function sweepsOf({ wall, leaves }: Pick<WallView, 'wall' | 'leaves'>): readonly Sweep[] {
  const doors: readonly Obstacle[] = leaves ?? wall.obstacles ?? []
  return doors.flatMap((door) => sweepOf(door, wall.widthMm) ?? [])
}

function drawLeaf(sheet: Sheet, { hinge, leafMm, closedDeg, turnDeg }: Sweep): readonly string[] {
  const at = (deg: number) => {
    const turn = (deg * Math.PI) / 180
    return {
      x: hinge.xMm + leafMm * Math.cos(turn),
      y: gapMm + hinge.outMm + leafMm * Math.sin(turn),
    }
  }
  const [foot, shut, open] = [
    { x: hinge.xMm, y: gapMm + hinge.outMm },
    at(closedDeg),
    at(closedDeg + turnDeg),
  ]
  const [sx, sy, ox, oy, r] = [shut.x, shut.y, open.x, open.y, leafMm].map(short)
  return [
    element('path', {
      class: 'leaf',
      d: `M${sx} ${sy} A${r} ${r} 0 0 ${turnDeg > 0 ? 1 : 0} ${ox} ${oy}`,
      fill: 'none',
      ...stroke(sheet, { thick: 0.3, dash: [1.2, 0.8] }),
    }),
    drawLine(sheet, [foot.x, foot.y, shut.x, shut.y], { thick: 0.3, dash: [1.2, 0.8] }),
    drawLine(sheet, [foot.x, foot.y, open.x, open.y], { thick: 0.6 }),
  ]
}
