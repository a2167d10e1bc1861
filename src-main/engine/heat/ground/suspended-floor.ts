import { because, given } from '../../../domain/derivation.ts'
import { characteristicM, equivalentThicknessM, groundPathWPerM2K } from './ground-floor-paths.ts'
import type { Told } from './ground-floor-paths.ts'

export type SuspendedInput = {
  readonly areaM2: number
  readonly perimeterM: number
  readonly wallMm: Told
  readonly groundWPerMK: Told
  /** Of deck and insulation, without its surfaces. */
  readonly deck: Told
  /** Of insulation laid on the ground below. */
  readonly base: Told
  readonly heightMm: Told
  readonly wallUWPerM2K: Told
  readonly openingsM2PerM: Told
  readonly windMPerS: Told
  readonly shielding: Told
}
export type SuspendedAnswer = {
  readonly u: Told
  readonly characteristicM: number
  readonly equivalentThicknessM: number
  readonly groundWPerM2K: number
  readonly spaceWPerM2K: number
}

/** ISO 6946: heat going down; a suspended floor has the air of the room above it and that of the space below. */
const rsiM2KPerW = 0.17
/** The standard's own figure, for air through openings of so many m2 a metre of edge at so many m/s. */
const airFigure = 1450

/**
 * The U-value of a suspended floor over a space that is aired from outside, W/m2K: U = 1 / (2 Rsi + R + 1 / (Ug + Ux)).
 * Ug is the ground below, by `groundPathWPerM2K`; Ux is what leaves the space by its walls and its air
 * bricks, 2 h Uw / B' + 1450 epsilon v f / B'. Fit where the space's floor is no more than 0.5 m below the ground outside.
 * @param input area in m2, exposed edge in m, wall in mm, ground in W/mK, deck and base in m2K/W, height of the floor above the ground outside in mm, the space's walls in W/m2K, openings in m2 for each m of edge, wind in m/s and how far it is felt, each with its reason
 * @source ISO 13370, suspended floor with a naturally ventilated underfloor space
 * @example suspendedFloor({ areaM2: 100, perimeterM: 40, wallMm: { value: 300 }, groundWPerMK: { value: 1.5 }, deck: { value: 0.2 }, base: { value: 0 }, heightMm: { value: 300 }, wallUWPerM2K: { value: 1.7 }, openingsM2PerM: { value: 0.003 }, windMPerS: { value: 3 }, shielding: { value: 0.05 } }).u.value // => 0.6222
 */
export function suspendedFloor(input: SuspendedInput): SuspendedAnswer {
  const characteristic = characteristicM(input.areaM2, input.perimeterM)
  const thickness = equivalentThicknessM({ ...input, insulation: input.base })
  const ground = groundPathWPerM2K({ characteristic, thickness, groundWPerMK: input.groundWPerMK })
  const space = spaceWPerM2K(input, characteristic)
  const resistanceM2KPerW = 2 * rsiM2KPerW + input.deck.value
  const value = 1 / (resistanceM2KPerW + 1 / (ground.value + space.value))
  const why = because('U-value: 1 / (2 surfaces + deck + 1 / (ground + underfloor space))', value, {
    unit: 'W/m²K',
    source: 'ISO 13370',
    from: [
      given('Surface above, and below, a floor', rsiM2KPerW, 'm²K/W', 'ISO 6946'),
      input.deck.why,
      ground.why,
      space.why,
    ],
  })
  return {
    u: { value, why },
    characteristicM: characteristic.value,
    equivalentThicknessM: thickness.value,
    groundWPerM2K: ground.value,
    spaceWPerM2K: space.value,
  }
}

function spaceWPerM2K(input: SuspendedInput, characteristic: Told): Told {
  const { heightMm, wallUWPerM2K, openingsM2PerM, windMPerS, shielding } = input
  const walls = (2 * (heightMm.value / 1000) * wallUWPerM2K.value) / characteristic.value
  const air = (airFigure * openingsM2PerM.value * windMPerS.value * shielding.value) / characteristic.value
  const value = walls + air
  const says =
    "Out of the underfloor space: 2 × height × U of its walls / B' + 1450 × openings × wind × felt / B'"
  const from = [
    heightMm.why,
    wallUWPerM2K.why,
    openingsM2PerM.why,
    windMPerS.why,
    shielding.why,
    characteristic.why,
  ]
  return { value, why: because(says, value, { unit: 'W/m²K', source: 'ISO 13370', from }) }
}
