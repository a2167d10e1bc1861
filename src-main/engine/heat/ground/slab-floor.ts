import { because, given } from '../../../domain/derivation.ts'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { characteristicM, equivalentThicknessM, groundPathWPerM2K } from './ground-floor-paths.ts'
import type { Told } from './ground-floor-paths.ts'

/** Insulation along the edge only: lying under or on the slab, or standing down the footing. */
export type EdgeInsulation = {
  readonly lies: 'flat' | 'upright'
  /** How far in from the edge it reaches, or how far down. */
  readonly reachMm: number
  readonly thicknessMm: number
  readonly conductivityWPerMK: number
}
export type SlabInput = {
  readonly areaM2: number
  readonly perimeterM: number
  readonly wallMm: Told
  readonly groundWPerMK: Told
  /** Of the insulation over the whole slab, and of coverings; dense concrete counts for nothing. */
  readonly insulation: Told
  readonly edge?: EdgeInsulation | undefined
}
export type SlabAnswer = {
  readonly u: Told
  readonly characteristicM: number
  readonly equivalentThicknessM: number
  /** What the strip along the edge saves for each metre of it: below 0. */
  readonly edgeWPerMK?: number
}

/**
 * The U-value of a slab on the ground, W/m2K. The slab with the ground under it by `groundPathWPerM2K`. Edge insulation adds 2 psi / B', psi = -lambda / pi (ln(D / d + 1) - ln(D / (d + d') + 1)), D its reach (twice its depth
 * where upright), d' = lambda (R - thickness / lambda), for the ground it takes the place of.
 * Refuses edge insulation that insulates no better than the ground, and one that reaches past half of B'.
 *
 * @param input area in m2, exposed edge in m, wall in mm, ground in W/mK, insulation in m2K/W, and the strip along the edge
 * @source ISO 13370, slab on ground, and its annex on edge insulation
 * @example slabFloor({ areaM2: 100, perimeterM: 40, wallMm: { value: 300 }, groundWPerMK: { value: 1.5 }, insulation: { value: 0 } }).value.u.value // => 0.6026
 */
export function slabFloor(input: SlabInput): Outcome<SlabAnswer> {
  const characteristic = characteristicM(input.areaM2, input.perimeterM)
  const thickness = equivalentThicknessM(input)
  const whole = groundPathWPerM2K({ characteristic, thickness, groundWPerMK: input.groundWPerMK })
  const found = { characteristicM: characteristic.value, equivalentThicknessM: thickness.value }
  if (input.edge === undefined) return accept({ u: whole, ...found })
  const edge = edgeOf(input.edge, { characteristic, thickness, groundWPerMK: input.groundWPerMK })
  if (!edge.ok) return edge
  const value = whole.value + (2 * edge.value.value) / characteristic.value
  const why = because("With the insulated edge: the slab + 2 × the edge's saving / B'", value, {
    unit: 'W/m²K',
    source: 'ISO 13370',
    from: [whole.why, edge.value.why, characteristic.why],
  })
  return accept({ u: { value, why }, ...found, edgeWPerMK: edge.value.value })
}

type Under = { readonly characteristic: Told; readonly thickness: Told; readonly groundWPerMK: Told }

function edgeOf(edge: EdgeInsulation, { characteristic, thickness, groundWPerMK }: Under): Outcome<Told> {
  const { lies, reachMm, thicknessMm, conductivityWPerMK } = edge
  const ground = groundWPerMK.value
  if (conductivityWPerMK >= ground) {
    const message = `Edge insulation must conduct less than the ground, which has ${ground} W/mK; it was ${conductivityWPerMK}.`
    return refuse('invalid', message, 'edge.conductivityWPerMK')
  }
  const mostMm = Math.floor(characteristic.value * 500)
  if (reachMm / 1000 > characteristic.value / 2) {
    const message = `Edge insulation may reach ${mostMm} mm here, half of the floor's characteristic dimension; it was ${reachMm}. Past that, give it as insulation of the whole floor.`
    return refuse('invalid', message, 'edge.reachMm')
  }
  const thick = thicknessMm / 1000
  const extraM = ground * (thick / conductivityWPerMK - thick / ground)
  const reachM = ((lies === 'upright' ? 2 : 1) * reachMm) / 1000
  const d = thickness.value
  const value = (-ground / Math.PI) * (Math.log(reachM / d + 1) - Math.log(reachM / (d + extraM) + 1))
  const reach = lies === 'upright' ? 'twice its depth' : 'its width'
  const says = `Edge insulation saves: conductivity / π × (ln(D / (d + d') + 1) - ln(D / d + 1)), D ${reach}, d' the ground it stands for`
  const from = [
    groundWPerMK.why,
    thickness.why,
    given(
      lies === 'upright' ? 'Depth of the edge insulation' : 'Width of the edge insulation',
      reachMm,
      'mm',
    ),
    given('Thickness of the edge insulation', thicknessMm, 'mm'),
    given('Conductivity of the edge insulation', conductivityWPerMK, 'W/mK'),
  ]
  return accept({ value, why: because(says, value, { unit: 'W/mK', source: 'ISO 13370', from }) })
}
