import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { figure, figureWhy } from '../../../domain/figures.ts'
import type { Figures } from '../../../domain/figures.ts'
import type { DoorLeaf, Obstacle } from '../../../domain/wall.ts'
import type { Clearance } from '../clashes.ts'
import { mmInWords } from '../in-words.ts'
import { leafMeets } from './leaf-sweep.ts'
import type { Meeting, Sweep } from './leaf-sweep.ts'
import type { Envelope, Placed } from '../place-emitter.ts'

type Door = Pick<Obstacle, 'name' | 'xMm' | 'yMm' | 'widthMm' | 'heightMm' | 'clearanceMm' | 'leaf'>

/** How far a leaf opens where nobody measured it. */
const quarterDeg = 90

/**
 * The way a leaf turns in plan: in this wall about an end of its rectangle, x or x + width; in the wall at a corner about
 * the upright of its frame, jamb or jamb + leaf from this wall. Null for a door without a leaf, and for one that opens away from the room.
 *
 * @param door its rectangle and leaf, mm
 * @param wallWidthMm width of this wall, mm, above 0
 * @source plane geometry
 * @example sweepOf({ xMm: 900, widthMm: 800, leaf: { in: 'thisWall', hinge: 'right', leafMm: 762, opensIntoRoom: true } }, 2400).hinge.xMm // => 1700
 */
export function sweepOf(
  { xMm, widthMm, leaf }: Pick<Door, 'xMm' | 'widthMm' | 'leaf'>,
  wallWidthMm: number,
): Sweep | null {
  if (leaf === undefined || !leaf.opensIntoRoom) return null
  const { leafMm, opensDeg = quarterDeg } = leaf
  if (leaf.in === 'thisWall') {
    return leaf.hinge === 'left'
      ? { hinge: { xMm, outMm: 0 }, leafMm, closedDeg: 0, turnDeg: opensDeg }
      : { hinge: { xMm: xMm + widthMm, outMm: 0 }, leafMm, closedDeg: 180, turnDeg: -opensDeg }
  }
  const hinge = {
    xMm: leaf.corner === 'left' ? 0 : wallWidthMm,
    outMm: leaf.hinge === 'near' ? leaf.jambMm : leaf.jambMm + leafMm,
  }
  // Closed it lies in its own wall: away from this one on the near hinge, towards it on the far one. It turns into the room.
  const closedDeg = leaf.hinge === 'near' ? 90 : 270
  const turnsOn = (leaf.corner === 'left') === (leaf.hinge === 'far')
  return { hinge, leafMm, closedDeg, turnDeg: turnsOn ? opensDeg : -opensDeg }
}

/**
 * Whether an obstacle stands on this wall: a door in the wall at a corner does not, and a leaf that is known takes the place of the
 * rectangle that was drawn for its swing.
 * @param obstacle its kind and its leaf, if it has one
 * @source practice, no published source
 * @example standsOnWall({ kind: 'door' }) // => true
 */
export function standsOnWall({ kind, leaf }: Pick<Obstacle, 'kind' | 'leaf'>): boolean {
  return leaf === undefined || (leaf.in === 'thisWall' && kind !== 'doorSwing')
}

/**
 * What a door's leaf leaves of the emitter: have = the least distance between the emitter in plan and all that the leaf sweeps, the
 * larger of that and the gap in height; where the leaf meets it, have = distance of its nearest part from the hinge - leaf. None for a
 * door whose leaf does not come into the room. Valves count as part of the emitter, as far out as its front.
 *
 * @param door with its leaf
 * @param at where the emitter goes, and the width of the wall, mm
 * @param figures the firm's figures: wall.clearDoorSwingMm
 * @source plane geometry; practice, no published source
 * @example swingClearances({ name: 'Door' }, { wallWidthMm: 1800 }, { settings: {} }) // => []
 */
export function swingClearances(
  door: Door,
  { wallWidthMm, envelope, whys }: { readonly wallWidthMm: number } & Pick<Placed, 'envelope' | 'whys'>,
  figures: Figures,
): readonly Clearance[] {
  const sweep = sweepOf(door, wallWidthMm)
  if (sweep === null || door.leaf === undefined) return []
  const { meeting, haveMm } = roomOfLeaf({ ...door, sweep }, envelope)
  const needMm = door.clearanceMm ?? figure(figures, 'wall.clearDoorSwingMm')
  const says = sentence(door.name, { meeting, sweep, needMm, haveMm })
  const need =
    door.clearanceMm === undefined
      ? figureWhy(figures, 'wall.clearDoorSwingMm')
      : given(`Clear space asked round ${door.name}`, door.clearanceMm, 'mm', 'survey')
  const from = [...sizesOf(door, door.leaf), ...turnOf(sweep, door), whys.envelope, whys.front, need]
  const why = because(says, haveMm, { unit: 'mm', from })
  return [{ with: `the leaf of ${door.name}`, needMm, haveMm, says, why }]
}

/** A leaf with its height: from yMm above finished floor, heightMm high. */
export type TurningLeaf = Pick<Obstacle, 'yMm' | 'heightMm'> & { readonly sweep: Sweep }

/**
 * The room between an emitter and all that a leaf sweeps, mm: the larger of the gap in plan and the gap in height; where they share a
 * height and the leaf meets the emitter in plan, distance of its nearest part from the hinge - leaf, below 0.
 *
 * @param leaf its sweep, and its height, mm
 * @param envelope what the emitter takes, mm
 * @source plane geometry
 * @example roomOfLeaf({ yMm: 0, heightMm: 2000, sweep: { hinge: { xMm: 0, outMm: 800 }, leafMm: 762, closedDeg: 270, turnDeg: 90 } }, { leftMm: 300, rightMm: 900, bottomMm: 150, topMm: 750, frontMm: 400 }).haveMm // => -262
 */
export function roomOfLeaf(
  { yMm, heightMm, sweep }: TurningLeaf,
  envelope: Envelope,
): { readonly haveMm: number; readonly meeting: Meeting } {
  const meeting = leafMeets(sweep, envelope)
  const acrossMm = meeting.kind === 'clear' ? meeting.clearMm : meeting.reachMm - sweep.leafMm
  const upMm = Math.max(yMm - envelope.topMm, envelope.bottomMm - (yMm + heightMm))
  return { meeting, haveMm: upMm < 0 ? acrossMm : Math.max(upMm, acrossMm) }
}

type Swing = {
  readonly meeting: Meeting
  readonly sweep: Sweep
  readonly needMm: number
  readonly haveMm: number
}

function sentence(name: string, { meeting, sweep, needMm, haveMm }: Swing): string {
  const asked = `${mmInWords(needMm)} is needed`
  if (meeting.kind === 'clear' || haveMm >= 0) {
    return `The leaf of ${name} passes the emitter with ${mmInWords(haveMm)} to spare; ${asked}.`
  }
  const near = `${mmInWords(meeting.reachMm)} from its hinges, ${mmInWords(-haveMm)} too near for its ${mmInWords(sweep.leafMm)}`
  if (meeting.atDeg === 0) return `The emitter stands in the way of the leaf of ${name}: ${near}.`
  return `The leaf of ${name} meets the emitter when ${Math.floor(meeting.atDeg + 1e-6)}° open: ${near}; ${asked} clear.`
}

function sizesOf(door: Door, leaf: DoorLeaf): readonly Derivation[] {
  const { name } = door
  const heights = [
    given(`${name}, from the floor`, door.yMm, 'mm', 'survey'),
    given(`${name}, height`, door.heightMm, 'mm', 'survey'),
    given(`${name}, length of its leaf`, leaf.leafMm, 'mm', 'survey'),
  ]
  if (leaf.in === 'wallAtCorner') {
    return [...heights, given(`${name}, its frame from this wall`, leaf.jambMm, 'mm', 'survey')]
  }
  return [
    ...heights,
    given(`${name}, from the left end of the wall`, door.xMm, 'mm', 'survey'),
    given(`${name}, width`, door.widthMm, 'mm', 'survey'),
  ]
}

function turnOf({ turnDeg }: Sweep, { name, leaf }: Door): readonly Derivation[] {
  const says = `${name}, how far it opens`
  return [
    leaf?.opensDeg === undefined
      ? given(
          `${says}, taken as a quarter circle`,
          Math.abs(turnDeg),
          'degrees',
          'practice, no published source',
        )
      : given(says, leaf.opensDeg, 'degrees', 'survey'),
  ]
}
