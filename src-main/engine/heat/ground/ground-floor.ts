import { given } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import { accept, refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../../units/finite.ts'
import type { Told } from './ground-floor-paths.ts'
import { slabFloor } from './slab-floor.ts'
import type { EdgeInsulation } from './slab-floor.ts'
import { suspendedFloor } from './suspended-floor.ts'

type Both = {
  /** Inside the walls. */
  readonly areaM2: number
  /** The edge that is exposed to outside or to unheated space: not the party wall, not an inside wall. */
  readonly perimeterM: number
  readonly wallMm?: number | undefined
  readonly groundConductivityWPerMK?: number | undefined
  /** Of insulation and coverings; dense concrete and hardcore count for nothing. */
  readonly insulationM2KPerW?: number | undefined
}
export type GroundFloorInput =
  | (Both & { readonly kind: 'slab'; readonly edge?: EdgeInsulation | undefined })
  | (Both & {
      readonly kind: 'suspended'
      readonly deckM2KPerW?: number | undefined
      readonly baseM2KPerW?: number | undefined
      readonly heightMm?: number | undefined
      readonly wallUWPerM2K?: number | undefined
      readonly openingsM2PerM?: number | undefined
      readonly windMPerS?: number | undefined
      readonly place?: 'sheltered' | 'average' | 'exposed' | undefined
    })
export type GroundFloorAnswer = {
  readonly kind: 'slab' | 'suspended'
  readonly uWPerM2K: number
  readonly characteristicM: number
  readonly equivalentThicknessM: number
  readonly edgeWPerMK?: number
  readonly groundWPerM2K?: number
  readonly spaceWPerM2K?: number
  /** What nobody measured, with the figure that stood in. */
  readonly assumed: readonly string[]
  readonly why: Derivation
}
type Suspended = Extract<GroundFloorInput, { readonly kind: 'suspended' }>

const rdsap = 'RdSAP 2009 (version 9.90), section S5, generic'
const shielding = 'ISO 13370:2017, table 8'
/** How far the wind is felt under a floor: sheltered, average or exposed place. */
const felt = { sheltered: 0.02, average: 0.05, exposed: 0.1 } as const

/**
 * The U-value of a ground floor from its area and its exposed edge, W/m2K: of a slab by `slabFloor`, of a floor over an aired space
 * by `suspendedFloor`. What is not given is assumed and named in `assumed`: wall 300 mm, clay 1.5 W/mK, deck 0.2 m2K/W, 300 mm
 * above ground, its walls 1.5 W/m2K, openings 0.003 m2/m, wind 5 m/s, average shelter.
 * It goes with the difference to the year's mean outside (the ground's) for a slab; the standard's yearly swing is left out.
 * Refuses figures that must be above 0 and are not, figures below 0, and what `slabFloor` refuses.
 *
 * @param input area in m2, exposed edge in m, insulation 0 or more in m2K/W, and what else was measured
 * @source ISO 13370; assumptions: RdSAP 2009 section S5, wall of 300 mm from Approved Document L1 (2002) appendix C
 * @example groundFloorUValue({ kind: 'slab', areaM2: 100, perimeterM: 40 }).value.uWPerM2K // => 0.6026
 */
export function groundFloorUValue(input: GroundFloorInput): Outcome<GroundFloorAnswer> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const found = input.kind === 'slab' ? ofSlab(input) : accept(ofSuspended(input))
  if (!found.ok) return found
  return acceptFinite(found.value, 'These figures go past what can be reckoned; check area and edge.')
}

type Figure = {
  readonly says: string
  readonly unit: string
  readonly usual: number
  readonly source: string
}

const wall: Figure = {
  says: 'Wall at the edge',
  unit: 'mm',
  usual: 300,
  source: 'Approved Document L1 (2002), appendix C, generic',
}
const ground: Figure = {
  says: 'Conductivity of the ground, clay',
  unit: 'W/mK',
  usual: 1.5,
  source: 'ISO 13370, clay or silt',
}
const deck: Figure = { says: 'Resistance of the deck', unit: 'm²K/W', usual: 0.2, source: rdsap }
const height: Figure = { says: 'Floor above the ground outside', unit: 'mm', usual: 300, source: rdsap }
const wallU: Figure = {
  says: 'U-value of the walls below the floor',
  unit: 'W/m²K',
  usual: 1.5,
  source: rdsap,
}
const openings: Figure = {
  says: 'Air bricks for each metre of edge',
  unit: 'm²/m',
  usual: 0.003,
  source: rdsap,
}
const wind: Figure = { says: 'Wind, a yearly mean', unit: 'm/s', usual: 5, source: rdsap }

/** The figure that was given, or the usual one, which then is written down as assumed. */
function asking() {
  const assumed: string[] = []
  const figure = ({ says, unit, usual, source }: Figure, value: number | undefined): Told => {
    if (value !== undefined) return { value, why: given(says, value, unit) }
    assumed.push(`${says}: ${usual} ${unit} (${source}).`)
    return { value: usual, why: given(`${says}, assumed`, usual, unit, source) }
  }
  return { assumed, figure }
}

function measured(says: string, value = 0): Told {
  return { value, why: given(says, value, 'm²K/W') }
}

function ofSlab(input: Extract<GroundFloorInput, { readonly kind: 'slab' }>): Outcome<GroundFloorAnswer> {
  const { assumed, figure } = asking()
  const { areaM2, perimeterM, edge } = input
  const slab = slabFloor({
    areaM2,
    perimeterM,
    edge,
    wallMm: figure(wall, input.wallMm),
    groundWPerMK: figure(ground, input.groundConductivityWPerMK),
    insulation: measured('Insulation and coverings of the slab', input.insulationM2KPerW),
  })
  if (!slab.ok) return slab
  const { u, ...rest } = slab.value
  return accept({ kind: 'slab', uWPerM2K: u.value, ...rest, assumed, why: u.why })
}

function ofSuspended(input: Suspended): GroundFloorAnswer {
  const { assumed, figure } = asking()
  const { areaM2, perimeterM } = input
  const wallMm = figure(wall, input.wallMm)
  const groundWPerMK = figure(ground, input.groundConductivityWPerMK)
  const bare = figure(deck, input.deckM2KPerW)
  const { u, ...rest } = suspendedFloor({
    areaM2,
    perimeterM,
    wallMm,
    groundWPerMK,
    deck: insulatedDeck(bare, input.insulationM2KPerW),
    base: measured('Insulation on the ground below', input.baseM2KPerW),
    heightMm: figure(height, input.heightMm),
    wallUWPerM2K: figure(wallU, input.wallUWPerM2K),
    openingsM2PerM: figure(openings, input.openingsM2PerM),
    windMPerS: figure(wind, input.windMPerS),
    shielding: shelter(input.place, assumed),
  })
  return { kind: 'suspended', uWPerM2K: u.value, ...rest, assumed, why: u.why }
}

function insulatedDeck(bare: Told, insulationM2KPerW = 0): Told {
  const insulation = measured('Insulation and coverings of the deck', insulationM2KPerW)
  const value = bare.value + insulation.value
  const why: Derivation = {
    says: 'Deck with its insulation, added',
    value,
    unit: 'm²K/W',
    from: [bare.why, insulation.why],
  }
  return { value, why }
}

function shelter(place: Suspended['place'], assumed: string[]): Told {
  const value = felt[place ?? 'average']
  if (place !== undefined)
    return { value, why: given(`Wind felt under the floor, ${place}`, value, undefined, shielding) }
  assumed.push(`Shelter from the wind: average, ${value} of it felt (${shielding}).`)
  return { value, why: given('Wind felt under the floor, average assumed', value, undefined, shielding) }
}

const aboveNothing = ['areaM2', 'perimeterM', 'groundConductivityWPerMK'] as const
const edgeAboveNothing = ['reachMm', 'thicknessMm', 'conductivityWPerMK'] as const

function problemIn(input: GroundFloorInput): Outcome<never> | null {
  for (const field of aboveNothing) {
    const value = input[field]
    if (value !== undefined && value <= 0) return notAbove(field, value)
  }
  if (input.kind === 'slab' && input.edge !== undefined) {
    for (const field of edgeAboveNothing) {
      if (input.edge[field] <= 0) return notAbove(`edge.${field}`, input.edge[field])
    }
  }
  const below = Object.entries(input).find(([, value]) => typeof value === 'number' && value < 0)
  if (below === undefined) return null
  const [field, value] = below
  return refuse('invalid', `This figure must be 0 or more; it was ${String(value)}.`, field)
}

function notAbove(path: string, value: number): Outcome<never> {
  const edge = path === 'perimeterM' ? ' A floor without an exposed edge loses no heat by this rule.' : ''
  return refuse('invalid', `This figure must be more than 0; it was ${value}.${edge}`, path)
}
