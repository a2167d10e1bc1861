import { standsOnWall } from '../../../src-main/engine/wall/doors/door-swing.ts'
import { emitterBox, oldEmitterBox } from '../../../src-main/engine/wall/drawing/emitter-shapes.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import type { Handle } from './handles.tsx'
import { mm } from './in-words.ts'

const keys = 'arrow keys move it'

/** All that can be moved on a wall, the emitter first, each with the name by which it is read out. */
export function handlesOf(view: WallView): readonly Handle[] {
  const { wall, setOut, emitter, old } = view
  const { centreMm, bottomMm } = setOut
  const obstacles = (wall.obstacles ?? []).filter(standsOnWall).map((one): Handle => ({
    key: one.obstacleId,
    thing: { obstacleId: one.obstacleId },
    name: `${one.name}, ${mm(one.xMm)} from the left, ${mm(one.yMm)} above the floor, ${mm(one.widthMm)} wide, ${mm(one.heightMm)} high; ${keys}`,
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
            name: `Old: ${old.name}, left edge ${mm(old.leftMm)}, bottom ${mm(old.bottomMm)}; ${keys}`,
            box: oldEmitterBox(old),
            place: { xMm: old.leftMm, yMm: old.bottomMm },
          },
        ]),
    {
      key: 'emitter',
      thing: 'emitter' as const,
      name: `${emitter.name}, centre ${mm(centreMm)} from the left, bottom ${mm(bottomMm)}; ${keys}`,
      box: emitterBox(view),
      place: { xMm: centreMm, yMm: bottomMm },
    },
    ...obstacles,
  ]
}
