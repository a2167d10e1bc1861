import type { EmitterShape } from '../../../../src-main/domain/item.ts'
import type { Obstacle } from '../../../../src-main/domain/wall.ts'
import type { WallView } from '../../../../src-main/engine/wall/drawing/sheet.ts'
import { fitWall } from '../../../../src-main/engine/wall/fit-wall.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { doublePanel, floorPipe, panelInput, railInput, studWall } from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')

export function viewOf(input: SetOutInput, more: Partial<WallView> = {}): WallView {
  const fit = fitWall(input, figures)
  const out = setOutWall(input, figures)
  if (!fit.ok || !out.ok) throw new Error('The test wall does not work')
  const { widthMm, heightMm } = input.emitter
  const emitter = { name: 'Towel rail', widthMm, heightMm }
  return {
    wall: input.wall,
    emitter,
    envelope: fit.value.envelope,
    setOut: out.value,
    pipes: input.pipes,
    ...more,
  }
}

type Rectangle = readonly [Obstacle['kind'], string, number, number, number, number]

/** Obstacles of invented sizes: kind, name, left, bottom, width, height. */
function obstaclesOf(rectangles: readonly Rectangle[]): readonly Obstacle[] {
  return rectangles.map(([kind, name, xMm, yMm, widthMm, heightMm], nth) => ({
    obstacleId: `obstacle${nth}`,
    kind,
    name,
    xMm,
    yMm,
    widthMm,
    heightMm,
  }))
}

/** A rail on a wall 1200 wide, between a switch and a basin. */
export function narrowInput(): SetOutInput {
  const obstacles = obstaclesOf([
    ['basin', 'Basin', 700, 0, 500, 850],
    ['mirror', 'Mirror', 750, 1050, 400, 700],
    ['socket', 'Shaver point', 1080, 1800, 86, 86],
    ['switch', 'Switch', 20, 1350, 46, 86],
  ])
  const input = railInput()
  return {
    ...input,
    wall: { ...input.wall, widthMm: 1200, obstacles: [...obstacles] },
    pipes: [floorPipe('left', 125, 135), floorPipe('right', 590, 100)],
    bottomMm: 200,
  }
}

/** Brackets at places across a panel, each with holes at some places beside its middle and two heights. */
function panelOf(widthMm: number, across: readonly number[], beside: readonly number[]): EmitterShape {
  const brackets = across.map((middle, nth) => ({
    name: `Bracket ${nth + 1}`,
    upper: true,
    holes: beside.flatMap((by) => [480, 110].map((upMm) => ({ acrossMm: middle + by, upMm }))),
  }))
  return { ...doublePanel, widthMm, pipeCentresMm: widthMm + 90, brackets }
}

/** A panel 2000 wide under a window on a wall 5000 wide, with sockets, a door and its swing. */
export function longInput(): SetOutInput {
  const obstacles = obstaclesOf([
    ['window', 'Window', 1200, 1000, 2400, 1100],
    ['windowBoard', 'Window board', 1150, 960, 2500, 40],
    ['socket', 'Double socket', 300, 400, 146, 86],
    ['socket', 'Socket by the door', 3800, 400, 86, 86],
    ['door', 'Door', 4100, 0, 762, 1981],
    ['doorSwing', 'Door swing', 3950, 0, 912, 1981],
  ])
  return panelInput({
    wall: { ...studWall, widthMm: 5000, obstacles: [...obstacles] },
    emitter: panelOf(2000, [-880, 0, 880], [0]),
    pipes: [floorPipe('left', 1360, 130), floorPipe('right', 3430, 130)],
    centre: { kind: 'at', xMm: 2400 },
  })
}

/** Twelve holes, in pairs that stand 34 mm apart. */
function twelveHoles(): SetOutInput {
  return panelInput({
    emitter: panelOf(1600, [-700, 0, 700], [-17, 17]),
    pipes: [floorPipe('left', 900, 130), floorPipe('right', 2700, 130)],
    centre: { kind: 'at', xMm: 1800 },
  })
}

/** On a sheet, which leaves a drawing this room or more, and on a screen. */
const papers = [undefined, { widthMm: 150, heightMm: 105 }, { widthMm: 175, heightMm: 125 }]

/** Every wall on every paper. */
export function everyView(): readonly WallView[] {
  return [railInput(), panelInput(), narrowInput(), longInput(), twelveHoles()].flatMap((input) =>
    papers.map((paper) => viewOf(input, { paper })),
  )
}
