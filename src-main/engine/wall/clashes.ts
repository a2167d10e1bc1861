import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Fit } from '../../domain/set-out.ts'
import type { Obstacle, ObstacleKind } from '../../domain/wall.ts'
import { standsOnWall, swingClearances } from './doors/door-swing.ts'
import { mmInWords } from './in-words.ts'
import type { Envelope, Placed } from './place-emitter.ts'
import type { PlaceInput } from './wall-input.ts'

export type Clash = Fit['clashes'][number]

/** One clearance that was looked at: what is needed and what there is. */
export type Clearance = Omit<Clash, 'says'> & { readonly says: string; readonly why: Derivation }

const clearIds = {
  window: 'wall.clearWindowMm',
  windowBoard: 'wall.clearWindowBoardMm',
  door: 'wall.clearDoorMm',
  doorSwing: 'wall.clearDoorSwingMm',
  socket: 'wall.clearSocketMm',
  switch: 'wall.clearSwitchMm',
  mirror: 'wall.clearMirrorMm',
  basin: 'wall.clearBasinMm',
  bath: 'wall.clearBathMm',
  shelf: 'wall.clearShelfMm',
  cable: 'wall.clearCableMm',
  pipeInWall: 'wall.clearPipeInWallMm',
  other: 'wall.clearOtherMm',
} as const satisfies Record<ObstacleKind, string>

/**
 * Every clearance of a placed emitter: floor, skirting, ceiling, both ends of the wall, and each obstacle that shows, with the
 * leaf of a door. The gap to an obstacle is the larger of the gaps across and up, negative where they overlap, so that it asks its clear space all round.
 * Cables and pipes in the wall hinder drilling, not hanging, and are left out.
 *
 * @param input the wall and the emitter
 * @param placed where the emitter goes
 * @param figures the firm's figures: wall.clear…Mm
 * @source practice, no published source
 * @example clearances({ wall: { widthMm: 900, heightMm: 2400 }, emitter: { heightMm: 600 }, bottomMm: 150 }, { envelope: { leftMm: 200, rightMm: 700, topMm: 750 }, dropMm: 20, whys: {} }, { settings: { 'wall.clearFloorMm': { value: 100 }, 'wall.clearCeilingMm': { value: 100 }, 'wall.clearSideMm': { value: 50 } } }).map((one) => one.haveMm) // => [150, 1650, 200, 200]
 */
export function clearances(input: PlaceInput, placed: Placed, figures: Figures): readonly Clearance[] {
  return [
    ...upAndDown(input, placed, figures),
    ...ends(input, placed.envelope, figures),
    ...(input.wall.obstacles ?? [])
      .filter(shows)
      .flatMap((obstacle) => [
        ...(standsOnWall(obstacle) ? [besideObstacle(obstacle, placed, figures)] : []),
        ...swingClearances(obstacle, { ...placed, wallWidthMm: input.wall.widthMm }, figures),
      ]),
  ]
}

/**
 * Whether there is too little room: have < need.
 * @param clearance need and have, mm
 * @source arithmetic
 * @example isClash({ needMm: 50, haveMm: 49 }) // => true
 */
export function isClash({ needMm, haveMm }: Pick<Clearance, 'needMm' | 'haveMm'>): boolean {
  return haveMm < needMm
}

/**
 * The clear space an obstacle asks: its own, or the firm's figure for its kind, as a reason.
 * @param obstacle on or in the wall
 * @param figures the firm's figures: wall.clear…Mm
 * @source practice, no published source
 * @example clearOf({ name: 'Shelf', kind: 'shelf', clearanceMm: 80 }, { settings: {}, tasks: {}, fixings: [] }).value // => 80
 */
export function clearOf(
  obstacle: Pick<Obstacle, 'name' | 'kind' | 'clearanceMm'>,
  figures: Figures,
): { readonly value: number; readonly why: Derivation } {
  if (obstacle.clearanceMm !== undefined) {
    const why = given(`Clear space asked round ${obstacle.name}`, obstacle.clearanceMm, 'mm', 'survey')
    return { value: obstacle.clearanceMm, why }
  }
  const id = clearIds[obstacle.kind]
  return { value: figure(figures, id), why: figureWhy(figures, id) }
}

/**
 * Whether an obstacle stands on the wall's face, rather than hidden in it.
 * @param obstacle on or in the wall
 * @source practice, no published source
 * @example shows({ kind: 'cable' }) // => false
 */
export function shows({ kind }: Pick<Obstacle, 'kind'>): boolean {
  return kind !== 'cable' && kind !== 'pipeInWall'
}

function upAndDown(input: PlaceInput, placed: Placed, figures: Figures): readonly Clearance[] {
  const { wall, emitter, bottomMm } = input
  const bottom = given('Bottom edge above the floor', bottomMm, 'mm', 'survey')
  const ceiling = [
    bottom,
    given('Height', emitter.heightMm, 'mm', 'catalogue'),
    given('Height of the wall', wall.heightMm, 'mm', 'survey'),
  ]
  const top = looked('ceiling', {
    needMm: figure(figures, 'wall.clearCeilingMm'),
    haveMm: wall.heightMm - placed.envelope.topMm,
    from: [...ceiling, figureWhy(figures, 'wall.clearCeilingMm')],
  })
  const skirtingMm = wall.skirtingHeightMm ?? 0
  if (skirtingMm === 0) return [overFloor(input, placed, figures), top]
  const skirting = looked('skirting', {
    needMm: figure(figures, 'wall.clearSkirtingMm'),
    haveMm: bottomMm - skirtingMm,
    from: [
      bottom,
      given('Height of the skirting', skirtingMm, 'mm', 'survey'),
      figureWhy(figures, 'wall.clearSkirtingMm'),
    ],
  })
  return [overFloor(input, placed, figures), skirting, top]
}

/** The valves must stay above the floor too, where they hang lower than the firm's clear space. */
function overFloor({ bottomMm }: PlaceInput, placed: Placed, figures: Figures): Clearance {
  const bottom = given('Bottom edge above the floor', bottomMm, 'mm', 'survey')
  return looked('floor', {
    needMm: Math.max(figure(figures, 'wall.clearFloorMm'), placed.dropMm),
    haveMm: bottomMm,
    from: [bottom, figureWhy(figures, 'wall.clearFloorMm'), placed.whys.drop],
  })
}

function ends({ wall }: PlaceInput, envelope: Envelope, figures: Figures): readonly Clearance[] {
  const needMm = figure(figures, 'wall.clearSideMm')
  const clear = figureWhy(figures, 'wall.clearSideMm')
  const width = given('Width of the wall', wall.widthMm, 'mm', 'survey')
  return [
    looked('left end of the wall', { needMm, haveMm: envelope.leftMm, from: [clear] }),
    looked('right end of the wall', {
      needMm,
      haveMm: wall.widthMm - envelope.rightMm,
      from: [width, clear],
    }),
  ]
}

function besideObstacle(obstacle: Obstacle, { envelope }: Placed, figures: Figures): Clearance {
  const { xMm, yMm, widthMm, heightMm, name } = obstacle
  const across = Math.max(xMm - envelope.rightMm, envelope.leftMm - (xMm + widthMm))
  const up = Math.max(yMm - envelope.topMm, envelope.bottomMm - (yMm + heightMm))
  const clear = clearOf(obstacle, figures)
  const from = [
    given(`${name}, from the left end of the wall`, xMm, 'mm', 'survey'),
    given(`${name}, from the floor`, yMm, 'mm', 'survey'),
    given(`${name}, width`, widthMm, 'mm', 'survey'),
    given(`${name}, height`, heightMm, 'mm', 'survey'),
    clear.why,
  ]
  return looked(name, { needMm: clear.value, haveMm: Math.max(across, up), from })
}

function looked(
  what: string,
  {
    needMm,
    haveMm,
    from,
  }: { readonly needMm: number; readonly haveMm: number; readonly from: readonly Derivation[] },
): Clearance {
  const says = sentence(what, needMm, haveMm)
  return { with: what, needMm, haveMm, says, why: because(says, haveMm, { unit: 'mm', from }) }
}

const onTheRoom = ['floor', 'skirting', 'ceiling', 'left end of the wall', 'right end of the wall']

function sentence(what: string, needMm: number, haveMm: number): string {
  const name = onTheRoom.includes(what) ? `the ${what}` : what
  const asked = `${mmInWords(needMm)} is needed`
  if (haveMm < 0) return `The emitter overlaps ${name} by ${mmInWords(-haveMm)}; ${asked} clear.`
  return `The emitter has ${mmInWords(haveMm)} to ${name}; ${asked}.`
}
