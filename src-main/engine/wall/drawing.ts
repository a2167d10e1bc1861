import { drawEmitter, drawHoles } from './drawing/emitter-shapes.ts'
import { sheetOf } from './drawing/frame.ts'
import { drawNames } from './drawing/names.ts'
import { drawDimensions } from './drawing/rows.ts'
import type { WallView } from './drawing/sheet.ts'
import { element, short } from './drawing/svg.ts'
import { drawWall } from './drawing/wall-shapes.ts'

/**
 * A set-out drawn to scale in black and white, as SVG whose units are millimetres on the wall; for the window and for paper.
 * Text and lines keep their size on the paper that the view names, whatever the wall's size.
 * @param view wall, emitter, its envelope and set-out, pipes, and the old emitter where its place is known
 * @source practice, no published source
 * @example wallDrawing({ wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).includes('width="1800" height="2400"') // => true
 */
export function wallDrawing(view: WallView): string {
  const sheet = sheetOf(view)
  const { x, y, width, height } = sheet.whole
  const dimensions = drawDimensions(sheet, view)
  const names = drawNames(sheet, view, dimensions.faints)
  const marks = [
    element('rect', { x, y, width, height, fill: '#fff' }),
    ...dimensions.lines,
    ...drawWall(sheet, view),
    ...drawEmitter(sheet, view, names.centreTop),
    ...dimensions.numbers,
    ...names.under,
    ...drawHoles(sheet, view.setOut.holes),
    ...names.texts,
  ]
  const frame = [x, y, width, height].map(short).join(' ')
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${frame}">${marks.join('')}</svg>`
}
