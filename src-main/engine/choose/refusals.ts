import type { Emitter } from '../../domain/item.ts'
import type { ObstacleKind } from '../../domain/wall.ts'
import { mmInWords } from '../wall/in-words.ts'
import type { Screen } from './screen-emitters.ts'
import { dropMm, gapToMm, leafGapMm, leftEndMm, rightEndMm } from './wall-limits.ts'
import type { LeafLimit, ObstacleLimit, OnWall, WallLimits } from './wall-limits.ts'

/** Why an emitter is not offered, in words, and what it is about. */
export type Refusal = {
  readonly about: 'heat' | 'wall' | 'obstacle' | 'wanted' | 'price' | 'listing'
  readonly says: string
}

const formWords: Readonly<Record<Emitter['form']['kind'], string>> = {
  panel: 'panel radiator',
  column: 'column radiator',
  towelRail: 'towel rail',
}

const obstacleWords: Readonly<Record<ObstacleKind, string>> = {
  window: 'window',
  windowBoard: 'window board',
  door: 'door',
  doorSwing: 'swing of the door',
  socket: 'socket',
  switch: 'switch',
  mirror: 'mirror',
  basin: 'basin',
  bath: 'bath',
  shelf: 'shelf',
  cable: 'cable',
  pipeInWall: 'pipe in the wall',
  other: 'obstacle',
}

/**
 * Every reason why an emitter does not suit: what was wanted, the heat, the wall, what stands on it, its listing, its price. None when
 * it suits; as many as `screenEmitters` counts.
 * @param emitter of the catalogue
 * @param one its sizes as the wall sees them (mm), what it gives (W), the least that it costs (pence; less than 0 where nobody sells it)
 * @param screen the wall's limits, the need and what was wanted
 * @source practice, no published source; heat by EN 442-2
 * @example refusalsOf({ widthMm: 600, heightMm: 600, brackets: [{ holes: [{}] }], form: { kind: 'panel' }, finish: 'white' }, { widthMm: 600, heightMm: 600, pipeCentresMm: 550, valveSides: 3, givesW: 410, packPence: 900 }, { at: { flowC: 55, returnC: 45 }, needW: 500, othersW: 0, want: {}, limits: { centreMm: 900, centrePerPipeCentres: 0, valveBodyHalfMm: 20, bottomMm: 150, widthMm: 1800, heightMm: 2400, skirtingMm: 0, needSideMm: 50, needFloorMm: 100, needCeilingMm: 100, dropUnderMm: 60, obstacles: [] } })[0].says // => "90 W short at 55/45"
 */
export function refusalsOf(
  emitter: Pick<Emitter, 'widthMm' | 'heightMm' | 'brackets' | 'form' | 'finish'>,
  one: OnWall & { readonly givesW: number; readonly packPence: number },
  screen: Screen,
): readonly Refusal[] {
  return [
    ...wantedRefusals(emitter, screen),
    ...heatRefusals(one.givesW, screen),
    ...wallRefusals(one, screen.limits),
    ...screen.limits.obstacles.flatMap((obstacle) => obstacleRefusals(one, obstacle, screen.limits)),
    ...(screen.limits.leaves ?? []).flatMap((leaf) => leafRefusals(one, leaf, screen.limits)),
    ...(emitter.brackets.some((bracket) => bracket.holes.length > 0)
      ? []
      : [{ about: 'listing' as const, says: 'its bracket holes are not listed, so it cannot be set out' }]),
    ...(one.packPence < 0 ? [{ about: 'price' as const, says: 'nobody asks a price for it today' }] : []),
  ]
}

function wantedRefusals(
  emitter: Pick<Emitter, 'widthMm' | 'heightMm' | 'form' | 'finish'>,
  { want }: Screen,
): readonly Refusal[] {
  const refused: string[] = []
  const { kind, finish, maxHeightMm, maxWidthMm } = want
  if (kind !== undefined && emitter.form.kind !== kind) {
    refused.push(`it is a ${formWords[emitter.form.kind]}; a ${formWords[kind]} was asked for`)
  }
  if (finish !== undefined && emitter.finish !== finish) {
    refused.push(`it is ${emitter.finish}; ${finish} was asked for`)
  }
  if (maxHeightMm !== undefined && emitter.heightMm > maxHeightMm) {
    refused.push(`${mmInWords(emitter.heightMm - maxHeightMm)} taller than was asked for`)
  }
  if (maxWidthMm !== undefined && emitter.widthMm > maxWidthMm) {
    refused.push(`${mmInWords(emitter.widthMm - maxWidthMm)} wider than was asked for`)
  }
  return refused.map((says) => ({ about: 'wanted', says }))
}

function heatRefusals(givesW: number, { needW, othersW, at }: Screen): readonly Refusal[] {
  if (givesW === 0) {
    return [
      { about: 'listing', says: 'the temperatures that it was rated at cannot be; correct its listing' },
    ]
  }
  const shortW = Math.round(needW) - Math.round(othersW + givesW)
  return shortW <= 0 ? [] : [{ about: 'heat', says: `${shortW} W short at ${at.flowC}/${at.returnC}` }]
}

function wallRefusals(one: OnWall, limits: WallLimits): readonly Refusal[] {
  const refused = [...endRefusals(one, limits)]
  const tall = limits.needCeilingMm - (limits.heightMm - (limits.bottomMm + one.heightMm))
  if (tall > 0) refused.push(`${mmInWords(tall)} too tall for the wall`)
  const drop = dropMm(limits, one)
  const low = Math.max(limits.needFloorMm, drop) - limits.bottomMm
  if (low > 0) {
    const valves = drop > limits.needFloorMm ? 'its valves need it' : 'the space below needs it'
    refused.push(`hangs ${mmInWords(low)} too low: ${valves}`)
  }
  const skirting = limits.needSkirtingMm - (limits.bottomMm - limits.skirtingMm)
  if (limits.skirtingMm !== 0 && skirting > 0)
    refused.push(`${mmInWords(skirting)} too close to the skirting`)
  return refused.map((says) => ({ about: 'wall', says }))
}

/** An emitter that no centre line would help is too wide; one that is only too far over says to which end. */
function endRefusals(one: OnWall, limits: WallLimits): readonly string[] {
  const left = leftEndMm(limits, one)
  const right = rightEndMm(limits, one)
  const wide = right - left + 2 * limits.needSideMm - limits.widthMm
  if (wide > 0) return [`${mmInWords(wide)} too wide for the wall`]
  const overLeft = limits.needSideMm - left
  const overRight = limits.needSideMm - (limits.widthMm - right)
  return [
    ...(overLeft > 0 ? [`${mmInWords(overLeft)} too close to the left end of the wall`] : []),
    ...(overRight > 0 ? [`${mmInWords(overRight)} too close to the right end of the wall`] : []),
  ]
}

function obstacleRefusals(one: OnWall, obstacle: ObstacleLimit, limits: WallLimits): readonly Refusal[] {
  const gap = gapToMm(limits, one, obstacle)
  if (gap >= obstacle.needMm) return []
  const name = obstacleInWords(obstacle)
  const says =
    gap < 0
      ? `hits the ${name} by ${mmInWords(-gap)}`
      : `${mmInWords(obstacle.needMm - gap)} too close to the ${name}`
  return [{ about: 'obstacle', says }]
}

function leafRefusals(one: OnWall, leaf: LeafLimit, limits: WallLimits): readonly Refusal[] {
  const gap = leafGapMm(limits, one, leaf)
  if (gap >= leaf.needMm) return []
  const says =
    gap < 0
      ? `in the way of the leaf of ${leaf.name.trim()} by ${mmInWords(-gap)}`
      : `${mmInWords(leaf.needMm - gap)} too close to the leaf of ${leaf.name.trim()}`
  return [{ about: 'obstacle', says }]
}

function obstacleInWords({ kind, name }: ObstacleLimit): string {
  const words = obstacleWords[kind]
  return name.trim().toLowerCase() === words ? words : `${words} (${name.trim()})`
}
