import { shared } from '../boxes.ts'
import { pipeEndMm } from '../emitter-shapes.ts'
import type { Measure, Stop } from '../dimensions.ts'
import type { Box, Sheet, WallView } from '../sheet.ts'

type Framed = Pick<Sheet, 'wall'>

/**
 * What of a view can be seen on a sheet that shows a part of it: holes, valves and pipes that stand there, and the seen part of each
 * obstacle. A view that is drawn whole is left as it is.
 * @param sheet the frame
 * @param view what is drawn
 * @source geometry
 * @example seenOn({ wall: { x: 0, y: -100, width: 100, height: 100 } }, { zoom: { times: 2 }, wall: { obstacles: [] }, pipes: [], setOut: { holes: [{ xMm: 150, yMm: 50 }], valves: [] } }).setOut.holes // => []
 */
export function seenOn(sheet: Framed, view: WallView): WallView {
  if (view.zoom === undefined) return view
  const { setOut, pipes, wall } = view
  const holds = ({ xMm, yMm }: { readonly xMm: number; readonly yMm: number }) => isIn(sheet.wall, xMm, -yMm)
  const obstacles = (wall.obstacles ?? []).flatMap((one) => {
    const box: Box = { x: one.xMm, y: -one.yMm - one.heightMm, width: one.widthMm, height: one.heightMm }
    const part = shared(box, sheet.wall)
    if (part === null) return []
    const { x, y, width, height } = part
    return [{ ...one, xMm: x, yMm: -y - height, widthMm: width, heightMm: height }]
  })
  return {
    ...view,
    wall: { ...wall, obstacles },
    pipes: pipes.filter((pipe) =>
      holds({ xMm: pipe.xMm, yMm: pipe.from === 'floor' ? 0 : pipeEndMm(pipe, setOut.valves) }),
    ),
    setOut: { ...setOut, holes: setOut.holes.filter(holds), valves: setOut.valves.filter(holds) },
  }
}

/**
 * Whether a point of the picture lies in a rectangle of it.
 * @param box in the picture
 * @param x of the point
 * @param y of the point
 * @source geometry
 * @example isIn({ x: 0, y: 0, width: 2, height: 2 }, 2, 1) // => true
 */
export function isIn(box: Box, x: number, y: number): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height
}

/** The stretch of a dimension row or column that a sheet shows, and how far its faint lines may reach. */
export type Stretch = {
  readonly from: number
  readonly to: number
  readonly reach: readonly [from: number, to: number]
}

/**
 * Lengths cut to the stretch that is shown: those that lie outside are left out, and a cut one keeps its true length in words.
 * @param measures in mm along the row or column
 * @param stretch what is shown; null: all of it
 * @source geometry
 * @example cutMeasures([{ from: 0, to: 900, reach: [0, 0] }], { from: 300, to: 600, reach: [-10, 10] })[0] // => { from: 300, to: 600, reach: [0, 0], trueMm: 900, cut: [true, true] }
 */
export function cutMeasures(measures: readonly Measure[], stretch: Stretch | null): readonly Measure[] {
  if (stretch === null) return measures
  return measures.flatMap(({ from, to, reach }) => {
    const [low, high] = [Math.max(from, stretch.from), Math.min(to, stretch.to)]
    if (high - low <= 0) return []
    const near = [clamped(reach[0], stretch.reach), clamped(reach[1], stretch.reach)] as const
    return [{ from: low, to: high, reach: near, trueMm: to - from, cut: [low > from, high < to] as const }]
  })
}

/**
 * The stops of a running dimension that are shown.
 * @param stops in mm along the row or column
 * @param stretch what is shown; null: all of it
 * @source geometry
 * @example cutStops([{ place: 5, text: 'A1', reach: 0 }], { from: 6, to: 9, reach: [0, 1] }) // => []
 */
export function cutStops(stops: readonly Stop[], stretch: Stretch | null): readonly Stop[] {
  if (stretch === null) return stops
  return stops
    .filter(({ place }) => place >= stretch.from && place <= stretch.to)
    .map((stop) => ({ ...stop, reach: clamped(stop.reach, stretch.reach) }))
}

function clamped(value: number, [low, high]: Stretch['reach']): number {
  return Math.min(Math.max(value, low), high)
}
