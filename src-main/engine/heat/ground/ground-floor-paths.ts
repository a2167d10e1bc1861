import { because, given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'

/** A figure with its reason. */
export type Told = { readonly value: number; readonly why: Derivation }

/** ISO 6946: heat going down into a floor, and the surface outside. */
const rsiM2KPerW = 0.17
const rseM2KPerW = 0.04

/**
 * The characteristic dimension of a floor, m: B' = A / (0.5 P), with P the edge that is exposed to outside or to unheated space.
 * @param areaM2 floor area inside the walls, m2, above 0
 * @param perimeterM exposed edge, m, above 0
 * @source ISO 13370, characteristic dimension of a floor
 * @example characteristicM(100, 40).value // => 5
 */
export function characteristicM(areaM2: number, perimeterM: number): Told {
  const value = areaM2 / (0.5 * perimeterM)
  const why = because('Characteristic dimension: floor area / half of the exposed edge', value, {
    unit: 'm',
    source: 'ISO 13370',
    from: [given('Floor area', areaM2, 'm²'), given('Exposed edge', perimeterM, 'm')],
  })
  return { value, why }
}

export type ThicknessInput = {
  readonly wallMm: Told
  readonly groundWPerMK: Told
  readonly insulation: Told
}

/**
 * The thickness of ground that resists as much as wall, surfaces and insulation together, m: d = w + lambda (Rsi + R + Rse).
 * @param input wall thickness in mm, conductivity of the ground in W/mK, resistance of the insulation in m2K/W, each with its reason
 * @source ISO 13370, total equivalent thickness; surface resistances 0.17 and 0.04 m2K/W from ISO 6946
 * @example equivalentThicknessM({ wallMm: { value: 300 }, groundWPerMK: { value: 1.5 }, insulation: { value: 0 } }).value // => 0.615
 */
export function equivalentThicknessM({ wallMm, groundWPerMK, insulation }: ThicknessInput): Told {
  const resistanceM2KPerW = rsiM2KPerW + insulation.value + rseM2KPerW
  const value = wallMm.value / 1000 + groundWPerMK.value * resistanceM2KPerW
  const why = because('Equivalent thickness: wall + ground conductivity × (surfaces + insulation)', value, {
    unit: 'm',
    source: 'ISO 13370',
    from: [
      wallMm.why,
      groundWPerMK.why,
      insulation.why,
      given('Inside surface of a floor', rsiM2KPerW, 'm²K/W', 'ISO 6946'),
      given('Outside surface', rseM2KPerW, 'm²K/W', 'ISO 6946'),
    ],
  })
  return { value, why }
}

export type GroundPathInput = {
  readonly characteristic: Told
  readonly thickness: Told
  readonly groundWPerMK: Told
}

/**
 * What passes through the ground under a floor that is not, or not much, insulated, W/m2K:
 * U = 2 lambda / (pi B' + d) ln(pi B' / d + 1).
 * @param input characteristic dimension B' in m, equivalent thickness d in m, ground conductivity in W/mK, each with its reason
 * @source ISO 13370, slab on ground with d under B'; the same form for the ground below a suspended floor
 * @example curvedPathWPerM2K({ characteristic: { value: 5 }, thickness: { value: 0.615 }, groundWPerMK: { value: 1.5 } }).value // => 0.6026
 */
export function curvedPathWPerM2K({ characteristic, thickness, groundWPerMK }: GroundPathInput): Told {
  const spread = Math.PI * characteristic.value
  const value =
    ((2 * groundWPerMK.value) / (spread + thickness.value)) * Math.log(spread / thickness.value + 1)
  const says =
    "Through the ground: 2 × conductivity / (π × B' + d) × ln(π × B' / d + 1), B' the characteristic dimension, d the equivalent thickness"
  const from = [groundWPerMK.why, characteristic.why, thickness.why]
  return { value, why: because(says, value, { unit: 'W/m²K', source: 'ISO 13370', from }) }
}

/**
 * What passes through a well insulated slab and the ground under it, W/m2K: U = lambda / (0.457 B' + d).
 * @param input characteristic dimension B' in m, equivalent thickness d in m, ground conductivity in W/mK, each with its reason
 * @source ISO 13370, slab on ground with d of B' or more
 * @example straightPathWPerM2K({ characteristic: { value: 2 }, thickness: { value: 3.615 }, groundWPerMK: { value: 1.5 } }).value // => 0.3312
 */
export function straightPathWPerM2K({ characteristic, thickness, groundWPerMK }: GroundPathInput): Told {
  const value = groundWPerMK.value / (0.457 * characteristic.value + thickness.value)
  const says =
    "Well insulated, so conductivity / (0.457 × B' + d), B' the characteristic dimension, d the equivalent thickness"
  const from = [groundWPerMK.why, characteristic.why, thickness.why]
  return { value, why: because(says, value, { unit: 'W/m²K', source: 'ISO 13370', from }) }
}

/**
 * What passes through the ground under a floor, W/m2K: by the curved path while the equivalent thickness is under the
 * characteristic dimension, by the straight one from there. The standard prints the curved form alone for the ground below a
 * suspended floor; for floors narrower than about half their thickness that form would fall again, so the slab's rule holds there too.
 * @param input as the two paths take it
 * @source ISO 13370, slab on ground; its use below a suspended floor with d of B' or more: practice, no published source
 * @example groundPathWPerM2K({ characteristic: { value: 5 }, thickness: { value: 0.615 }, groundWPerMK: { value: 1.5 } }).value // => 0.6026
 */
export function groundPathWPerM2K(input: GroundPathInput): Told {
  return input.thickness.value < input.characteristic.value
    ? curvedPathWPerM2K(input)
    : straightPathWPerM2K(input)
}
