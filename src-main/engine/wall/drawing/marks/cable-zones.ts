import { figure } from '../../../../domain/figures.ts'
import type { Figures } from '../../../../domain/figures.ts'
import type { Wall } from '../../../../domain/wall.ts'
import type { Area } from './looked.ts'

/** A band of the wall in which cables may run. */
export type CableZone = { readonly says: string; readonly area: Area }

type Zoned = Pick<Wall, 'widthMm' | 'heightMm' | 'obstacles'>

/**
 * The bands in which cables may run in a wall: so far from the ceiling and from both corners, and straight up, down and across from
 * each socket and switch, as wide as it is or as the firm's least band. What a hole is warned of is the same by the same figures.
 *
 * @param wall its size and obstacles, mm
 * @param figures the firm's figures: wall.cableZoneMm, wall.cableBandHalfMm
 * @source BS 7671 regulation 522.6.202, as summarised by trade pages
 * @example cableZones({ widthMm: 1800, heightMm: 2400 }, { settings: { 'wall.cableZoneMm': { value: 150 }, 'wall.cableBandHalfMm': { value: 43 } } })[0].area.bottomMm // => 2250
 */
export function cableZones(wall: Zoned, figures: Figures): readonly CableZone[] {
  const { widthMm, heightMm, obstacles } = wall
  const zoneMm = figure(figures, 'wall.cableZoneMm')
  const whole: Area = { leftMm: 0, rightMm: widthMm, bottomMm: 0, topMm: heightMm }
  const accessories = (obstacles ?? []).filter(({ kind }) => kind === 'socket' || kind === 'switch')
  return [
    { says: 'near the ceiling', area: { ...whole, bottomMm: Math.max(0, heightMm - zoneMm) } },
    { says: 'near the left corner', area: { ...whole, rightMm: Math.min(widthMm, zoneMm) } },
    { says: 'near the right corner', area: { ...whole, leftMm: Math.max(0, widthMm - zoneMm) } },
    ...accessories.flatMap((accessory) => bandsOf(accessory, whole, figures)),
  ]
}

type Accessory = NonNullable<Wall['obstacles']>[number]

function bandsOf(accessory: Accessory, whole: Area, figures: Figures): readonly CableZone[] {
  const { name, xMm, yMm, widthMm, heightMm } = accessory
  const least = figure(figures, 'wall.cableBandHalfMm')
  const [middleX, middleY] = [xMm + widthMm / 2, yMm + heightMm / 2]
  const [across, up] = [Math.max(widthMm / 2, least), Math.max(heightMm / 2, least)]
  const bands: readonly CableZone[] = [
    {
      says: `straight above and below ${name}`,
      area: {
        ...whole,
        leftMm: Math.max(0, middleX - across),
        rightMm: Math.min(whole.rightMm, middleX + across),
      },
    },
    {
      says: `level with ${name}`,
      area: { ...whole, bottomMm: Math.max(0, middleY - up), topMm: Math.min(whole.topMm, middleY + up) },
    },
  ]
  return bands.filter(({ area }) => area.rightMm > area.leftMm && area.topMm > area.bottomMm)
}
