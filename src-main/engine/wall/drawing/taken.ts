import { boxAt, edgesOf, grown } from './boxes.ts'
import { emitterBox, floorPipeBox, holeSize, oldEmitterBox, pipeEndMm, valveBox } from './emitter-shapes.ts'
import type { Taken } from './labels.ts'
import type { Box, Ends, Sheet, WallView } from './sheet.ts'
import { planBoxes } from './marks/plan.ts'
import { onWall } from './wall-shapes.ts'

/** An obstacle's part on the wall, and what its name stands on by right. */
export type Named = { readonly name: string; readonly box: Box; readonly of: string }

/**
 * The obstacles that lie on the wall, at least in part.
 * @param view what is drawn
 * @source geometry
 * @example namedObstacles({ wall: { widthMm: 900, heightMm: 2400, obstacles: [{ name: 'Mirror', xMm: 100, yMm: 1000, widthMm: 400, heightMm: 600 }] } })[0].box.y // => -1600
 */
export function namedObstacles({ wall }: Pick<WallView, 'wall'>): readonly Named[] {
  const outline: Box = { x: 0, y: -wall.heightMm, width: wall.widthMm, height: wall.heightMm }
  return (wall.obstacles ?? []).flatMap((obstacle, nth) => {
    const box = onWall(obstacle, outline)
    return box === null ? [] : [{ name: obstacle.name, box, of: `obstacle ${nth}` }]
  })
}

/**
 * What labels must keep clear of, and how much: rings most, then valves, edges and other things, then lines, and the margins, where
 * the dimensions stand.
 * @param sheet the frame
 * @param view what is drawn
 * @param faints faint lines of the dimensions
 * @source practice, no published source
 * @example takenIn({ unit: 20, wall: { x: 0, y: -2400, width: 1800, height: 2400 }, whole: { x: -660, y: -2740, width: 3120, height: 3500 } }, { wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }, []).length // => 11
 */
export function takenIn(sheet: Sheet, view: WallView, faints: readonly Ends[]): readonly Taken[] {
  const { unit, whole } = sheet
  const { centreMm, holes, valves } = view.setOut
  const emitter = emitterBox(view)
  const { arm } = holeSize(sheet, holes)
  const foot = emitter.y + emitter.height
  const middle = { x: centreMm - unit / 4, width: unit / 2 }
  return [
    ...holes.map((hole) => ({ box: boxAt(hole.xMm, -hole.yMm, 2 * arm + 0.3 * unit), weight: 30 })),
    ...valves.map((valve) => ({ box: grown(valveBox(sheet, valve, emitter), 0.4 * unit), weight: 10 })),
    ...view.pipes.map((pipe) => {
      const box =
        pipe.from === 'floor'
          ? floorPipeBox(sheet, pipe, valves)
          : boxAt(pipe.xMm, -pipeEndMm(pipe, valves), 2.4 * unit)
      return { box: grown(box, 0.3 * unit), weight: 8 }
    }),
    { of: 'centre', weight: 3, box: { ...middle, y: emitter.y, height: emitter.height } },
    { of: 'centre', weight: 2, box: { ...middle, y: foot, height: whole.y + whole.height - foot } },
    { of: 'emitter', weight: 5, box: emitter },
    ...edgesOf(emitter, 0.8 * unit).map((box) => ({ box, weight: 25 })),
    ...(view.old === undefined
      ? []
      : edgesOf(oldEmitterBox(view.old), unit).map((box) => ({ box, weight: 2 }))),
    ...namedObstacles(view).map(({ box, of }) => ({ of, weight: 20, box: grown(box, 0.4 * unit) })),
    ...planBoxes(view).map((box) => ({ box: grown(box, 0.4 * unit), weight: 20 })),
    ...faints.map((line) => ({ box: aboutLine(line, 0.5 * unit), weight: 0.4 })),
    ...margins(sheet, view.zoom === undefined ? 15 : 100),
  ]
}

/** Outside the wall the dimensions stand. */
function margins({ whole, wall, unit }: Sheet, weight: number): readonly Taken[] {
  const foot = wall.y + wall.height
  const right = wall.x + wall.width
  return [
    { x: whole.x, y: foot - 0.2 * unit, width: whole.width, height: whole.y + whole.height - foot },
    { x: whole.x, y: whole.y, width: whole.width, height: wall.y - whole.y },
    { x: whole.x, y: whole.y, width: wall.x - whole.x, height: whole.height },
    { x: right, y: whole.y, width: whole.x + whole.width - right, height: whole.height },
  ].map((box) => ({ box, weight }))
}

function aboutLine([x1, y1, x2, y2]: Ends, thick: number): Box {
  const box = {
    x: Math.min(x1, x2),
    y: Math.min(y1, y2),
    width: Math.abs(x2 - x1),
    height: Math.abs(y2 - y1),
  }
  return grown(box, thick / 2)
}
