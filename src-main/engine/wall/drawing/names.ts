import type { Obstacle, Pipe } from '../../../domain/wall.ts'
import { emitterBox, oldEmitterBox } from './emitter-shapes.ts'
import { brokenInto, drawLabels, placesAt } from './labels.ts'
import type { Label, Taken } from './labels.ts'
import { textSize, textWidth } from './sheet.ts'
import type { Box, Sheet, WallView } from './sheet.ts'
import { smallSize } from './dimensions.ts'
import { onWall } from './wall-shapes.ts'

type Middles = readonly (readonly [x: number, y: number])[]

/**
 * The names in a drawing: holes, obstacles, emitters, pipes and the centre line, placed so that none covers another.
 * @param sheet the frame
 * @param view what is drawn
 * @source practice, no published source
 * @example drawNames({ unit: 20, wall: { x: 0, y: -2400, width: 1800, height: 2400 }, whole: { x: -660, y: -2740, width: 3120, height: 3500 } }, { wall: { widthMm: 1800, heightMm: 2400 }, emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, envelope: { leftMm: 650, rightMm: 1150, bottomMm: 235, topMm: 1500 }, setOut: { centreMm: 900, bottomMm: 300, holes: [], valves: [] }, pipes: [] }).length // => 4
 */
export function drawNames(sheet: Sheet, view: WallView): readonly string[] {
  const outline: Box = { x: 0, y: -view.wall.heightMm, width: view.wall.widthMm, height: view.wall.heightMm }
  const obstacles = (view.wall.obstacles ?? []).flatMap((obstacle) => {
    const box = onWall(obstacle, outline)
    return box === null ? [] : [{ obstacle, box }]
  })
  const labels = [
    ...view.setOut.holes.map((hole) => holeLabel(sheet, hole, view.setOut.holes)),
    ...obstacles.map(({ obstacle, box }) => obstacleLabel(sheet, obstacle, box)),
    ...view.pipes.map((pipe) => pipeLabel(sheet, pipe)),
    emitterLabel(sheet, view),
    centreLabel(sheet, view),
    ...oldLabel(sheet, view),
    ...studsLabel(sheet, view),
  ]
  return drawLabels(sheet, labels, [
    ...marks(sheet, view),
    ...obstacles.map(({ box }) => ({ box, weight: 0.2 })),
  ])
}

function marks({ unit, whole, wall }: Sheet, view: WallView): readonly Taken[] {
  const { holes, valves, centreMm } = view.setOut
  const about = (x: number, y: number, half: number): Box => ({
    x: x - half * unit,
    y: y - half * unit,
    width: 2 * half * unit,
    height: 2 * half * unit,
  })
  const emitter = emitterBox(view)
  const old = view.old === undefined ? [] : edges(oldEmitterBox(view.old), unit)
  return [
    ...holes.map((hole) => ({ box: about(hole.xMm, -hole.yMm, 1.9), weight: 20 })),
    ...valves.map((valve) => ({ box: about(valve.xMm, -valve.yMm, 1.6), weight: 10 })),
    ...view.pipes.map((pipe) => ({
      box: {
        x: pipe.xMm - unit,
        y: -(pipe.yMm ?? 0) - unit,
        width: 2 * unit,
        height: (pipe.yMm ?? 0) + unit,
      },
      weight: 5,
    })),
    { box: { x: centreMm - unit / 4, y: whole.y, width: unit / 2, height: whole.height }, weight: 2 },
    ...edges(emitter, unit).map((box) => ({ box, weight: 8 })),
    ...old.map((box) => ({ box, weight: 2 })),
    // Outside the wall the dimensions stand.
    { box: { x: whole.x, y: 0, width: whole.width, height: whole.height }, weight: 10 },
    { box: { x: whole.x, y: whole.y, width: whole.width, height: wall.y - whole.y }, weight: 10 },
    { box: { x: whole.x, y: whole.y, width: wall.x - whole.x, height: whole.height }, weight: 10 },
    { box: { x: wall.x + wall.width, y: whole.y, width: whole.width, height: whole.height }, weight: 10 },
  ]
}

function edges({ x, y, width, height }: Box, unit: number): readonly Box[] {
  const thick = unit / 2
  const half = thick / 2
  return [
    { x, y: y - half, width, height: thick },
    { x, y: y + height - half, width, height: thick },
    { x: x - half, y, width: thick, height },
    { x: x + width - half, y, width: thick, height },
  ]
}

type Hole = WallView['setOut']['holes'][number]

/** Beside its hole, and away from another hole close by, so that nobody takes one for the other. */
function holeLabel(sheet: Sheet, hole: Hole, holes: readonly Hole[]): Label {
  const { id, xMm: x } = hole
  const y = -hole.yMm
  const across = 2.4 * sheet.unit + textWidth(sheet, id) / 2
  const up = (1.2 + textSize / 2) * sheet.unit
  const far = up + textSize * sheet.unit
  const middles: Middles = [
    [x + across, y - up],
    [x - across, y - up],
    [x + across, y + up],
    [x - across, y + up],
    [x + across, y],
    [x - across, y],
    [x, y - up * 1.3],
    [x, y + up * 1.3],
    [x + across, y - far],
    [x + across, y + far],
    [x - across, y - far],
    [x - across, y + far],
  ]
  const towards = sideOfNeighbour(sheet, hole, holes)
  const places = placesAt([id], middles).map((place) =>
    Math.sign(place.x - x) === -towards || towards === 0 ? place : { ...place, cost: 15 },
  )
  return { places }
}

/** 1 where another hole stands close on the right, -1 on the left, 0 where none does. */
function sideOfNeighbour({ unit }: Sheet, { id, xMm, yMm }: Hole, holes: readonly Hole[]): number {
  const close = holes
    .filter((other) => other.id !== id && Math.hypot(other.xMm - xMm, other.yMm - yMm) < 6 * unit)
    .toSorted((a, b) => Math.abs(a.xMm - xMm) - Math.abs(b.xMm - xMm))
  return Math.sign((close[0]?.xMm ?? xMm) - xMm)
}

function obstacleLabel(sheet: Sheet, { name }: Obstacle, box: Box): Label {
  const { unit } = sheet
  const inside = brokenInto(sheet, name, { widthMm: box.width - 2 * unit })
  const widest = Math.max(...inside.map((line) => textWidth(sheet, line)))
  const fits = widest <= box.width - unit && inside.length * textSize * 1.25 * unit <= box.height - unit
  const middle = [box.x + box.width / 2, box.y + box.height / 2] as const
  return fits
    ? { places: placesAt(inside, [middle]) }
    : { places: placesAt([name], round(sheet, name, box)), size: smallSize }
}

/** Places just outside a rectangle. */
function round(sheet: Sheet, name: string, { x, y, width, height }: Box): Middles {
  const half = textWidth(sheet, name, smallSize) / 2 + sheet.unit
  const high = (smallSize * 0.65 + 0.6) * sheet.unit
  const [middleX, middleY] = [x + width / 2, y + height / 2]
  return [
    [middleX, y - high],
    [middleX, y + height + high],
    [x + width + half, middleY],
    [x - half, middleY],
    [x + half, y - high],
    [x + width - half, y - high],
    [x + half, y + height + high],
    [x + width - half, y + height + high],
  ]
}

function pipeLabel(sheet: Sheet, { carries, side, xMm, yMm, from }: Pipe): Label {
  const name = carries === 'unknown' ? `${side} pipe` : carries
  const { unit } = sheet
  const across = textWidth(sheet, name, smallSize) / 2 + 2 * unit
  const heights = from === 'floor' ? [2.3, 5, 8, 11] : [0, -4, 4].map((by) => (yMm ?? 0) / unit + by)
  const outwards = side === 'left' ? -1 : 1
  const middles = heights.flatMap((high) =>
    [across, -across, across + 6 * unit, -across - 6 * unit].map(
      (by) => [xMm + outwards * by, -high * unit] as const,
    ),
  )
  return { places: placesAt([name], middles), size: smallSize }
}

function centreLabel(sheet: Sheet, view: WallView): Label {
  const box = emitterBox(view)
  const { centreMm } = view.setOut
  const { unit } = sheet
  const across = textWidth(sheet, 'centre line', smallSize) / 2 + unit
  const heights = [
    box.y - 3 * unit,
    box.y + 4 * unit,
    box.y + 8 * unit,
    box.y + box.height / 3,
    box.y + box.height / 2,
  ]
  const middles = heights.flatMap((y) => [[centreMm + across, y] as const, [centreMm - across, y] as const])
  return { places: placesAt(['centre line'], middles), size: smallSize }
}

/** Inside the emitter, in fewer or more lines; else beside it. */
function emitterLabel(sheet: Sheet, view: WallView): Label {
  const box = emitterBox(view)
  const { x, y, width, height } = box
  const { unit } = sheet
  const inside = [6, 10, 14, 20].flatMap((less) => {
    const lines = brokenInto(sheet, view.emitter.name, { widthMm: width - less * unit, size: smallSize })
    const heights = [0.5, 0.4, 0.6, 0.3, 0.7].map((share) => y + share * height)
    return placesAt(
      lines,
      heights.map((middle) => [x + width / 2, middle] as const),
    )
  })
  const lines = brokenInto(sheet, view.emitter.name, { widthMm: 24 * unit, size: smallSize })
  const outside = placesAt(lines, beside(sheet, lines, box)).map((place) => ({ ...place, cost: 80 }))
  return { places: [...inside, ...outside], size: smallSize }
}

/** Places to the right and left of a rectangle, from its middle outwards. */
function beside(sheet: Sheet, lines: readonly string[], { x, y, width, height }: Box): Middles {
  const half = Math.max(...lines.map((line) => textWidth(sheet, line, smallSize))) / 2
  return [3, 7, 12].flatMap((gap) =>
    [0.5, 0.3, 0.7, 0.1, 0.9].flatMap((share) => [
      [x + width + half + gap * sheet.unit, y + share * height] as const,
      [x - half - gap * sheet.unit, y + share * height] as const,
    ]),
  )
}

function oldLabel(sheet: Sheet, view: WallView): readonly Label[] {
  if (view.old === undefined) return []
  const box = oldEmitterBox(view.old)
  const lines = brokenInto(sheet, view.old.name, {
    widthMm: Math.max(box.width / 2, 22 * sheet.unit),
    size: smallSize,
  })
  const half = Math.max(...lines.map((line) => textWidth(sheet, line, smallSize))) / 2 + sheet.unit
  const high = lines.length * smallSize * 0.7 * sheet.unit
  const xs = [
    box.x + half,
    box.x + box.width - half,
    box.x - half,
    box.x + box.width + half,
    box.x + box.width / 2,
  ]
  const ys = [
    box.y + high,
    box.y + box.height - high,
    box.y - high,
    box.y + box.height + high,
    box.y + box.height / 2,
  ]
  const near = ys.flatMap((y) => xs.map((x) => [x, y] as const))
  return [{ places: placesAt(lines, [...near, ...beside(sheet, lines, emitterBox(view))]), size: smallSize }]
}

function studsLabel(sheet: Sheet, { wall }: WallView): readonly Label[] {
  if (wall.studs === undefined) return []
  const { firstMm, spacingMm, widthMm } = wall.studs
  const across = widthMm / 2 + textWidth(sheet, 'stud', smallSize) / 2 + sheet.unit
  const middles = [0, 1, 2].flatMap((nth) =>
    [3, 8].map((down) => [firstMm + nth * spacingMm + across, -wall.heightMm + down * sheet.unit] as const),
  )
  return [{ places: placesAt(['stud'], middles), size: smallSize }]
}
