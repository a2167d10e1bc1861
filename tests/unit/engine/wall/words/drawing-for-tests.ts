import type { Obstacle } from '../../../../../src-main/domain/wall.ts'
import type { Sheet, WallView } from '../../../../../src-main/engine/wall/drawing/sheet.ts'
import { bathroomWall } from '../walls-for-tests.ts'

export const box = (x: number, y: number, width: number, height: number) => ({ x, y, width, height })

/** A millimetre of paper is ten on the wall. */
export const sheet: Sheet = {
  unit: 10,
  wall: box(0, -2400, 1800, 2400),
  whole: box(-500, -2600, 2800, 3200),
  titleLines: 1,
}

export const hole = (id: string, xMm: number, yMm: number) => ({
  id,
  bracket: 'Top',
  upper: true,
  xMm,
  yMm,
  fromCentreMm: xMm - 900,
  drillMm: 8,
  depthMm: 60,
})

export const view = (more: Partial<WallView> = {}): WallView => ({
  wall: { ...bathroomWall, obstacles: [] },
  emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 },
  envelope: { leftMm: 640, rightMm: 1160, bottomMm: 235, topMm: 1500, frontMm: 100 },
  setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] },
  pipes: [],
  ...more,
})

export const obstacle = (name: string, xMm: number, yMm: number, more: Partial<Obstacle> = {}): Obstacle => ({
  obstacleId: name,
  name,
  kind: 'shelf',
  xMm,
  yMm,
  widthMm: 100,
  heightMm: 100,
  ...more,
})
