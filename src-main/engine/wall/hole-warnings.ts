import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Obstacle, Wall } from '../../domain/wall.ts'
import type { BracketHole } from './bracket-holes.ts'
import { clearOf, shows } from './clashes.ts'
import { standsOnWall } from './doors/door-swing.ts'
import { listInWords, mmInWords } from './in-words.ts'
import { studPlace } from './on-stud.ts'

/**
 * What to look out for before drilling: holes off the wall or on an obstacle, in a cable safe zone (near a corner or the ceiling, or in
 * the bands up, down and across from a socket or switch, also of one on the other side of a thin wall), or near a cable or pipe that is
 * known to be in the wall.
 *
 * @param holes on the wall, mm
 * @param wall with its obstacles
 * @param figures the firm's figures: wall.cableZoneMm, wall.cableBandHalfMm, wall.thinWallMm, wall.clearCableMm, wall.clearPipeInWallMm
 * @source BS 7671 regulation 522.6.202 for the zones, as summarised by trade pages; the rest practice, no published source
 * @example holeWarnings([{ id: 'A1', xMm: 100, yMm: 1000 }], { widthMm: 1800, heightMm: 2400 }, { settings: { 'wall.cableZoneMm': { value: 150 } } }).length // => 1
 */
export function holeWarnings(holes: readonly BracketHole[], wall: Wall, figures: Figures): readonly string[] {
  const obstacles = wall.obstacles ?? []
  return [
    ...offWall(holes, wall),
    ...obstacles.filter(solid).flatMap((obstacle) => onObstacle(holes, obstacle)),
    ...zones(wall, figures).flatMap((zone) => inZone(holes, zone)),
    ...obstacles
      .filter((obstacle) => !shows(obstacle))
      .flatMap((obstacle) => nearHidden(holes, obstacle, figures)),
    ...(holes.length === 0 ? [] : otherSide(wall, figures)),
  ]
}

/**
 * What to mind about the studs of a board wall, once its fixing is known: nothing where a backing board goes up, for it spans them.
 *
 * @param holes on the wall, mm
 * @param wall with its studs, if surveyed
 * @param choice whether the fixing goes into studs; the firm's figures: wall.studEdgeMm
 * @source practice, no published source
 * @example studWarnings([{ id: 'A1', xMm: 400 }], { build: 'boardOnStuds', studs: { firstMm: 200, spacingMm: 400, widthMm: 47 } }, { intoStud: false, figures: { settings: { 'wall.studEdgeMm': { value: 10 } } } }).length // => 1
 */
export function studWarnings(
  holes: readonly BracketHole[],
  wall: Wall,
  { intoStud, figures }: { readonly intoStud: boolean; readonly figures: Figures },
): readonly string[] {
  const { studs } = wall
  if (wall.build !== 'boardOnStuds') return []
  if (studs === undefined)
    return [
      'The studs were not surveyed: find them before drilling, for an anchor does not go where a stud stands.',
    ]
  if (intoStud) return []
  const at = (place: string) => holes.filter((hole) => studPlace(hole.xMm, studs, figures) === place)
  const timber = at('stud')
  const edge = at('edge')
  const missed = at('clear')
  return [
    ...(missed.length === 0
      ? []
      : [
          `${holesInWords(missed)} ${missed.length === 1 ? 'misses' : 'miss'} the studs and ${missed.length === 1 ? 'is' : 'are'} held by the board alone.`,
        ]),
    ...(timber.length === 0
      ? []
      : [
          `${holesInWords(timber)} ${timber.length === 1 ? 'falls' : 'fall'} on a stud: there a screw into the timber takes the place of the anchor.`,
        ]),
    ...(edge.length === 0
      ? []
      : [
          `${holesInWords(edge)} ${edge.length === 1 ? 'falls' : 'fall'} at the edge of a stud, where neither an anchor nor a screw is sure: move the emitter a little or fit a backing board.`,
        ]),
  ]
}

type Zone = { readonly says: string; readonly holds: (hole: BracketHole) => boolean }

function zones(wall: Wall, figures: Figures): readonly Zone[] {
  const zoneMm = figure(figures, 'wall.cableZoneMm')
  const within = `within ${mmInWords(zoneMm)} of`
  const accessories = (wall.obstacles ?? []).filter(({ kind }) => kind === 'socket' || kind === 'switch')
  return [
    { says: `${within} the ceiling`, holds: (hole) => hole.yMm >= wall.heightMm - zoneMm },
    { says: `${within} the left corner`, holds: (hole) => hole.xMm <= zoneMm },
    { says: `${within} the right corner`, holds: (hole) => hole.xMm >= wall.widthMm - zoneMm },
    ...accessories.flatMap((accessory) => bands(accessory, figures)),
  ]
}

function bands({ name, xMm, yMm, widthMm, heightMm }: Obstacle, figures: Figures): readonly Zone[] {
  const least = figure(figures, 'wall.cableBandHalfMm')
  const across = Math.max(widthMm / 2, least)
  const up = Math.max(heightMm / 2, least)
  return [
    {
      says: `straight above or below ${name}`,
      holds: (hole) => Math.abs(hole.xMm - xMm - widthMm / 2) <= across,
    },
    { says: `level with ${name}`, holds: (hole) => Math.abs(hole.yMm - yMm - heightMm / 2) <= up },
  ]
}

function inZone(holes: readonly BracketHole[], { says, holds }: Zone): readonly string[] {
  const inside = holes.filter(holds)
  if (inside.length === 0) return []
  return [
    `${holesInWords(inside)} ${inside.length === 1 ? 'is' : 'are'} ${says}, where cables may run in the wall (BS 7671, 522.6.202): look for cables before drilling.`,
  ]
}

function offWall(holes: readonly BracketHole[], { widthMm, heightMm }: Wall): readonly string[] {
  const off = holes.filter(({ xMm, yMm }) => xMm < 0 || xMm > widthMm || yMm < 0 || yMm > heightMm)
  return off.length === 0 ? [] : [`${holesInWords(off)} ${off.length === 1 ? 'lies' : 'lie'} off the wall.`]
}

function solid(obstacle: Obstacle): boolean {
  return shows(obstacle) && obstacle.kind !== 'doorSwing' && standsOnWall(obstacle)
}

function onObstacle(holes: readonly BracketHole[], obstacle: Obstacle): readonly string[] {
  const on = holes.filter((hole) => distanceTo(obstacle, hole) === 0)
  return on.length === 0
    ? []
    : [`${holesInWords(on)} ${on.length === 1 ? 'falls' : 'fall'} on ${obstacle.name}.`]
}

function nearHidden(holes: readonly BracketHole[], obstacle: Obstacle, figures: Figures): readonly string[] {
  const clear = clearOf(obstacle, figures).value
  const near = holes.filter((hole) => distanceTo(obstacle, hole) <= clear)
  if (near.length === 0) return []
  const what = obstacle.kind === 'cable' ? 'a cable' : 'a pipe'
  return [
    `${holesInWords(near)} ${near.length === 1 ? 'is' : 'are'} within ${mmInWords(clear)} of ${obstacle.name}, ${what} in the wall: do not drill there until it is traced.`,
  ]
}

/** Through a thin wall the zones of what is seen on its other side count here too. */
function otherSide({ thicknessMm }: Wall, figures: Figures): readonly string[] {
  if (thicknessMm === undefined || thicknessMm > figure(figures, 'wall.thinWallMm')) return []
  return [
    `The wall is ${mmInWords(thicknessMm)} thick: cables may also run in it to sockets and switches on its other side (BS 7671, 522.6.202): look there too.`,
  ]
}

/** From a point to a rectangle, mm; 0 inside it. */
function distanceTo({ xMm, yMm, widthMm, heightMm }: Obstacle, hole: BracketHole): number {
  const across = Math.max(xMm - hole.xMm, 0, hole.xMm - xMm - widthMm)
  const up = Math.max(yMm - hole.yMm, 0, hole.yMm - yMm - heightMm)
  return Math.hypot(across, up)
}

function holesInWords(holes: readonly BracketHole[]): string {
  return `${holes.length === 1 ? 'Hole' : 'Holes'} ${listInWords(holes.map((hole) => hole.id))}`
}
