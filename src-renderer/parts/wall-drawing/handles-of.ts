import { standsOnWall } from '../../../src-main/engine/wall/doors/door-swing.ts'
import { emitterBox, oldEmitterBox } from '../../../src-main/engine/wall/drawing/emitter-shapes.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import type { Handle } from './handles.tsx'
import { mm } from './in-words.ts'
import { words } from './wall-drawing.words.ts'

const its = words.handles

/** All that can be moved on a wall, the emitter first, each with the name by which it is read out. */
export function handlesOf(view: WallView): readonly Handle[] {
  const { wall, setOut, emitter, old } = view
  const { centreMm, bottomMm } = setOut
  const obstacles = (wall.obstacles ?? []).filter(standsOnWall).map((one): Handle => ({
    key: one.obstacleId,
    thing: { obstacleId: one.obstacleId },
    name: `${its.obstacle(one.name, { x: mm(one.xMm), y: mm(one.yMm), width: mm(one.widthMm), height: mm(one.heightMm) })}; ${its.keys}`,
    box: { x: one.xMm, y: -one.yMm - one.heightMm, width: one.widthMm, height: one.heightMm },
    place: { xMm: one.xMm, yMm: one.yMm },
  }))
  return [
    ...(old === undefined
      ? []
      : [
          {
            key: 'old',
            thing: 'old' as const,
            name: `${its.old(old.name, mm(old.leftMm), mm(old.bottomMm))}; ${its.keys}`,
            box: oldEmitterBox(old),
            place: { xMm: old.leftMm, yMm: old.bottomMm },
          },
        ]),
    {
      key: 'emitter',
      thing: 'emitter' as const,
      name: `${its.emitter(emitter.name, mm(centreMm), mm(bottomMm))}; ${its.keys}`,
      box: emitterBox(view),
      place: { xMm: centreMm, yMm: bottomMm },
    },
    ...obstacles,
  ]
}
