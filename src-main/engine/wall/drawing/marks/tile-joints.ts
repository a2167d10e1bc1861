import type { Tiles } from '../../../../domain/wall.ts'
import { drawLine } from '../sheet.ts'
import type { Ends, Sheet, WallView } from '../sheet.ts'
import { holding } from '../svg.ts'

/**
 * The joints of a tiled wall, as high as it is tiled: one line a row, and uprights between the rows, in half bond every second row half a
 * tile over. None where they would lie closer than the eye can part.
 * @param sheet the frame
 * @param view what is drawn
 * @source plane geometry
 * @example drawTileJoints({ unit: 10 }, { wall: { widthMm: 1800, heightMm: 2400, finish: 'paint' } }) // => []
 */
export function drawTileJoints(
  sheet: Sheet,
  { wall, marks }: Pick<WallView, 'wall' | 'marks'>,
): readonly string[] {
  const { tiles, finish, widthMm, heightMm, tiledToMm } = wall
  if (marks?.showsTiles !== true || tiles === undefined || finish !== 'tile') return []
  const topMm = Math.min(heightMm, tiledToMm ?? heightMm)
  const pen = { thick: 0.12, colour: '#777' }
  const joints = jointsOf(tiles, { widthMm, topMm, leastMm: 1.5 * sheet.unit })
  const edge: Ends = [0, -topMm, widthMm, -topMm]
  return [
    holding('g', { class: 'tiles' }, [
      ...joints.map((ends) => drawLine(sheet, ends, pen)),
      ...(topMm < heightMm ? [drawLine(sheet, edge, { thick: 0.35, colour: '#555' })] : []),
    ]),
  ]
}

type Tiled = { readonly widthMm: number; readonly topMm: number; readonly leastMm: number }

/**
 * The middles of all joints within a wall, as lines in the picture.
 * @param tiles sizes, joint and a crossing, mm
 * @param tiled width and top of the tiling (mm), and the least tile that is worth drawing (mm)
 * @source plane geometry
 * @example jointsOf({ widthMm: 498, heightMm: 298, jointMm: 2, xMm: 0, yMm: 0 }, { widthMm: 1000, topMm: 300, leastMm: 10 }) // => [[500, 0, 500, -300]]
 */
export function jointsOf(tiles: Tiles, { widthMm, topMm, leastMm }: Tiled): readonly Ends[] {
  const across = tiles.widthMm + tiles.jointMm
  const up = tiles.heightMm + tiles.jointMm
  if (across < leastMm || up < leastMm) return []
  const first = Math.floor((0 - tiles.yMm) / up)
  const rows = Array.from({ length: Math.ceil(topMm / up) + 1 }, (_, nth) => first + nth)
  return rows.flatMap((row): readonly Ends[] => {
    const low = Math.max(0, tiles.yMm + row * up)
    const high = Math.min(topMm, tiles.yMm + (row + 1) * up)
    if (high <= low) return []
    const over = tiles.halfBond === true && row % 2 !== 0 ? across / 2 : 0
    const uprights = placesWithin(tiles.xMm + over, across, widthMm).map((x): Ends => [x, 0 - low, x, -high])
    const foot: readonly Ends[] = low > 0 ? [[0, -low, widthMm, -low]] : []
    return [...foot, ...uprights]
  })
}

/** Every place a whole number of steps from a start, strictly between nought and an end. */
function placesWithin(start: number, step: number, end: number): readonly number[] {
  const first = start - Math.floor(start / step) * step
  const count = Math.max(0, Math.ceil((end - first) / step))
  return Array.from({ length: count }, (_, nth) => first + nth * step).filter((x) => x > 0 && x < end)
}
