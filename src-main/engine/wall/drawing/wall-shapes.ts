import type { Obstacle, Studs } from '../../../domain/wall.ts'
import { shows } from '../clashes.ts'
import { drawBox, drawLine } from './sheet.ts'
import type { Box, Sheet, WallView } from './sheet.ts'

/**
 * The wall: outline, floor, skirting, studs and obstacles, each hatched where it shows and dashed where it is hidden in the wall.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawWall({ unit: 20 }, { wall: { widthMm: 1800, heightMm: 2400 } }).length // => 2
 */
export function drawWall(sheet: Sheet, { wall }: WallView): readonly string[] {
  const outline: Box = { x: 0, y: -wall.heightMm, width: wall.widthMm, height: wall.heightMm }
  const over = 1.5 * sheet.unit
  const skirtingMm = wall.skirtingHeightMm ?? 0
  return [
    ...(wall.studs === undefined ? [] : drawStuds(sheet, wall.studs, outline)),
    ...(skirtingMm === 0
      ? []
      : [drawLine(sheet, [0, -skirtingMm, wall.widthMm, -skirtingMm], { thick: 0.2 })]),
    ...(wall.obstacles ?? []).flatMap((obstacle) => drawObstacle(sheet, obstacle, outline)),
    drawBox(sheet, outline, { thick: 0.4 }),
    // Its upper edge is the floor.
    drawLine(sheet, [-over, sheet.unit / 2, wall.widthMm + over, sheet.unit / 2], { thick: 1 }),
  ]
}

/**
 * The part of an obstacle that lies on the wall; null when none does.
 * @param obstacle in mm from the wall's left end and the floor
 * @param outline the wall in the picture
 * @source geometry
 * @example onWall({ xMm: -50, yMm: 0, widthMm: 100, heightMm: 10 }, { x: 0, y: -100, width: 200, height: 100 }).width // => 50
 */
export function onWall(
  obstacle: Pick<Obstacle, 'xMm' | 'yMm' | 'widthMm' | 'heightMm'>,
  outline: Box,
): Box | null {
  const x = Math.max(outline.x, obstacle.xMm)
  const y = Math.max(outline.y, -obstacle.yMm - obstacle.heightMm)
  const width = Math.min(outline.x + outline.width, obstacle.xMm + obstacle.widthMm) - x
  const height = Math.min(outline.y + outline.height, -obstacle.yMm) - y
  return width < 0 || height < 0 ? null : { x, y, width, height }
}

function drawObstacle(sheet: Sheet, obstacle: Obstacle, outline: Box): readonly string[] {
  const box = onWall(obstacle, outline)
  if (box === null) return []
  if (!shows(obstacle)) return [drawBox(sheet, box, { thick: 0.3, dash: [1, 1] })]
  return [
    ...hatch(box, 2.2 * sheet.unit).map((ends) => drawLine(sheet, ends, { thick: 0.1, colour: '#555' })),
    drawBox(sheet, box, { thick: 0.3 }),
  ]
}

/**
 * Slanted lines across a rectangle.
 * @param box in the picture
 * @param stepMm between lines along either edge, mm, above 0
 * @source geometry
 * @example hatch({ x: 0, y: 0, width: 10, height: 10 }, 10) // => [[0, 10, 10, 0]]
 */
export function hatch(
  { x, y, width, height }: Box,
  stepMm: number,
): readonly (readonly [number, number, number, number])[] {
  const count = Math.max(0, Math.ceil((width + height) / stepMm) - 1)
  return Array.from({ length: count }, (_, nth) => {
    const from = (nth + 1) * stepMm
    const low = Math.max(0, from - height)
    const high = Math.min(width, from)
    return [x + low, y + from - low, x + high, y + from - high] as const
  })
}

/** Studs by the middle of each; a drawing cannot show more than so many. */
function drawStuds(sheet: Sheet, { firstMm, spacingMm, widthMm }: Studs, outline: Box): readonly string[] {
  const count = Math.max(0, Math.floor((outline.width - firstMm) / spacingMm) + 1)
  if (count > 200) return []
  const edges = Array.from({ length: count }, (_, nth) => firstMm + nth * spacingMm).flatMap((middle) => [
    middle - widthMm / 2,
    middle + widthMm / 2,
  ])
  return edges
    .filter((edge) => edge > 0 && edge < outline.width)
    .map((edge) =>
      drawLine(sheet, [edge, outline.y, edge, 0], { thick: 0.12, dash: [2, 1.2], colour: '#777' }),
    )
}
