import { standsOnWall } from './doors/door-swing.ts'
import { drawEmitter, drawHoles } from './drawing/emitter-shapes.ts'
import { sheetOf } from './drawing/frame.ts'
import { drawAsked, drawClashes, drawZones } from './drawing/marks/draw-marks.ts'
import { drawPlan } from './drawing/marks/plan.ts'
import { drawTileJoints } from './drawing/marks/tile-joints.ts'
import { drawNames } from './drawing/names.ts'
import { drawDimensions } from './drawing/rows.ts'
import type { Sheet, WallView } from './drawing/sheet.ts'
import { element, holding, short } from './drawing/svg.ts'
import { drawWall } from './drawing/wall-shapes.ts'

/**
 * A set-out drawn to scale in black and white, as SVG whose units are millimetres on the wall; for the window and for paper.
 * Text and lines keep their size on the paper that the view names, whatever the wall's size.
 * What does not stand on this wall (a door round the corner) is left out.
 * @param asked wall, emitter, its envelope and set-out, pipes, and the old emitter where its place is known
 * @source practice, no published source
 * @example wallDrawing({ wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).includes('width="1800" height="2400"') // => true
 */
export function wallDrawing(asked: WallView): string {
  const view = standing(asked)
  const sheet = sheetOf(view)
  const { x, y, width, height } = sheet.whole
  const dimensions = drawDimensions(sheet, view)
  const names = drawNames(sheet, view, dimensions.faints)
  const seen = (marks: readonly string[]) => (view.zoom === undefined ? marks : cutTo(sheet, marks))
  const marks = [
    element('rect', { x, y, width, height, fill: '#fff' }),
    ...seen([...drawZones(sheet, view), ...drawTileJoints(sheet, view)]),
    ...dimensions.lines,
    ...seen([
      ...drawWall(sheet, view),
      ...drawAsked(sheet, view),
      ...drawEmitter(sheet, view, names.centreTop),
      ...drawClashes(sheet, view),
      ...drawPlan(sheet, view),
    ]),
    ...dimensions.numbers,
    ...names.under,
    ...seen(drawHoles(sheet, view.setOut.holes)),
    ...names.texts,
  ]
  const frame = [x, y, width, height].map(short).join(' ')
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${frame}">${marks.join('')}</svg>`
}

/**
 * The frame of the same drawing: where in the picture the wall is, and how long a millimetre of paper is on it.
 * @param asked as for `wallDrawing`
 * @source practice, no published source
 * @example wallFrame({ wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).wall // => { x: 0, y: -2400, width: 1800, height: 2400 }
 */
export function wallFrame(asked: WallView): Sheet {
  return sheetOf(standing(asked))
}

function standing(asked: WallView): WallView {
  const obstacles = asked.wall.obstacles ?? []
  return { ...asked, leaves: obstacles, wall: { ...asked.wall, obstacles: obstacles.filter(standsOnWall) } }
}

/** Nothing is drawn outside the part of the wall that a sheet shows. */
function cutTo({ wall: { x, y, width, height } }: Sheet, marks: readonly string[]): readonly string[] {
  const viewBox = [x, y, width, height].map(short).join(' ')
  return [holding('svg', { x, y, width, height, viewBox }, marks)]
}
