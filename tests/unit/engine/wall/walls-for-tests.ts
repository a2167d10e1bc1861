import type { EmitterShape } from '../../../../src-main/domain/item.ts'
import type { Pipe, Wall } from '../../../../src-main/domain/wall.ts'
import type { SetOutInput } from '../../../../src-main/engine/wall/set-out-wall.ts'

/** A curved towel rail, 500 wide and 1200 high, pipe centres 450, sizes invented. */
export const towelRail: EmitterShape = {
  widthMm: 500,
  heightMm: 1200,
  depthMm: 40,
  wallGapMm: 60,
  connectionOffWallMm: 75,
  pipeCentresMm: 450,
  ratedW: 480,
  exponent: 1.25,
  waterLitres: 5,
  dryKg: 9,
  brackets: [
    { name: 'Top left', upper: true, holes: [{ acrossMm: -200, upMm: 1105 }] },
    { name: 'Top right', upper: true, holes: [{ acrossMm: 200, upMm: 1105 }] },
    { name: 'Bottom left', upper: false, holes: [{ acrossMm: -200, upMm: 95 }] },
    { name: 'Bottom right', upper: false, holes: [{ acrossMm: 200, upMm: 95 }] },
  ],
  tappings: [
    { at: 'bottomLeft', thread: 'G1/2', holds: 'valve' },
    { at: 'bottomRight', thread: 'G1/2', holds: 'valve' },
    { at: 'topLeft', thread: 'G1/2', holds: 'vent' },
    { at: 'topRight', thread: 'G1/2', holds: 'blank' },
  ],
  box: [],
}

/** A double panel, 1200 wide and 600 high, valves beside it, two full-height brackets of two holes, sizes invented. */
export const doublePanel: EmitterShape = {
  widthMm: 1200,
  heightMm: 600,
  depthMm: 100,
  wallGapMm: 35,
  connectionOffWallMm: 85,
  pipeCentresMm: 1290,
  ratedW: 1900,
  exponent: 1.3,
  waterLitres: 7.2,
  dryKg: 40,
  brackets: [
    {
      name: 'Left',
      upper: true,
      holes: [
        { acrossMm: -480, upMm: 480 },
        { acrossMm: -480, upMm: 110 },
      ],
    },
    {
      name: 'Right',
      upper: true,
      holes: [
        { acrossMm: 480, upMm: 480 },
        { acrossMm: 480, upMm: 110 },
      ],
    },
  ],
  tappings: [
    { at: 'bottomLeft', thread: 'G1/2', holds: 'valve' },
    { at: 'bottomRight', thread: 'G1/2', holds: 'valve' },
    { at: 'topLeft', thread: 'G1/2', holds: 'vent' },
    { at: 'topRight', thread: 'G1/2', holds: 'blank' },
  ],
  box: [],
}

export const bathroomWall: Wall = {
  wallId: 'bathroom',
  name: 'Bathroom wall',
  widthMm: 1800,
  heightMm: 2400,
  build: 'solidMasonry',
  finish: 'tile',
  obstacles: [
    {
      obstacleId: 'window',
      name: 'Window',
      kind: 'window',
      xMm: 1050,
      yMm: 1200,
      widthMm: 600,
      heightMm: 900,
    },
    {
      obstacleId: 'socket',
      name: 'Shaver socket',
      kind: 'socket',
      xMm: 120,
      yMm: 1450,
      widthMm: 146,
      heightMm: 86,
    },
  ],
}

export const studWall: Wall = {
  wallId: 'bedroom',
  name: 'Bedroom wall',
  widthMm: 3600,
  heightMm: 2400,
  build: 'boardOnStuds',
  finish: 'paint',
  boardMm: 12.5,
  skirtingHeightMm: 120,
  studs: { firstMm: 200, spacingMm: 400, widthMm: 47 },
  obstacles: [
    {
      obstacleId: 'window',
      name: 'Window',
      kind: 'window',
      xMm: 1150,
      yMm: 950,
      widthMm: 1300,
      heightMm: 1100,
    },
    { obstacleId: 'socket', name: 'Socket', kind: 'socket', xMm: 2900, yMm: 400, widthMm: 146, heightMm: 86 },
  ],
}

/** A copper pipe of 15 mm from the floor, its end at the height given. */
export function floorPipe(side: Pipe['side'], xMm: number, yMm: number, more: Partial<Pipe> = {}): Pipe {
  return {
    side,
    xMm,
    yMm,
    from: 'floor',
    material: 'copper',
    outsideMm: 15,
    carries: side === 'left' ? 'flow' : 'return',
    ...more,
  }
}

/** The rail on the bathroom wall, set out from its left pipe; valve entries at 235 above the floor. */
export function railInput(changes: Partial<SetOutInput> = {}): SetOutInput {
  return {
    wall: bathroomWall,
    emitter: towelRail,
    valves: {},
    centre: { kind: 'fromPipe', side: 'left' },
    bottomMm: 300,
    pipes: [floorPipe('left', 420, 235), floorPipe('right', 980, 235)],
    ...changes,
  }
}

/** The panel on the stud wall, between its pipes; valve entries at 130 above the floor. */
export function panelInput(changes: Partial<SetOutInput> = {}): SetOutInput {
  return {
    wall: studWall,
    emitter: doublePanel,
    valves: {},
    centre: { kind: 'betweenPipes' },
    bottomMm: 150,
    pipes: [floorPipe('left', 1265, 130), floorPipe('right', 2335, 130)],
    ...changes,
  }
}
