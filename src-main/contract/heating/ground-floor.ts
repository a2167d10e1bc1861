import { z } from 'zod'
import { derivation } from '../../domain/derivation.ts'
import { areaM2, list, record } from '../../domain/schema.ts'
import { query } from '../request.ts'

const finite = z.number()
const conductivityWPerMK = z.number().gte(0.001).lte(500)
const resistanceM2KPerW = z.number().gte(0).lte(100)
/** What both kinds of floor are asked; what is absent is assumed and named in the answer. */
const both = {
  areaM2: areaM2.gte(0.01),
  /** The edge that is exposed to outside or to unheated space. */
  perimeterM: z.number().gte(0.01).lte(10_000),
  wallMm: z.number().gte(0).lte(5000).optional(),
  groundConductivityWPerMK: z.number().gte(0.05).lte(20).optional(),
  insulationM2KPerW: resistanceM2KPerW.optional(),
}

export const uvalueGroundFloor = query('uvalue.groundFloor', {
  doc: 'The U-value of a slab on the ground, or of a floor over an aired space, from its area and its exposed edge.',
  input: z.discriminatedUnion('kind', [
    record({
      kind: z.literal('slab'),
      ...both,
      edge: record({
        lies: z.enum(['flat', 'upright']),
        reachMm: z.number().gt(0).lte(5000),
        thicknessMm: z.number().gt(0).lte(1000),
        conductivityWPerMK,
      }).optional(),
    }),
    record({
      kind: z.literal('suspended'),
      ...both,
      deckM2KPerW: resistanceM2KPerW.optional(),
      baseM2KPerW: resistanceM2KPerW.optional(),
      heightMm: z.number().gte(0).lte(3000).optional(),
      wallUWPerM2K: z.number().gte(0).lte(20).optional(),
      openingsM2PerM: z.number().gte(0).lte(1).optional(),
      windMPerS: z.number().gte(0).lte(50).optional(),
      place: z.enum(['sheltered', 'average', 'exposed']).optional(),
    }),
  ]),
  output: record({
    kind: z.enum(['slab', 'suspended']),
    uWPerM2K: finite,
    characteristicM: finite,
    equivalentThicknessM: finite,
    edgeWPerMK: finite.optional(),
    groundWPerM2K: finite.optional(),
    spaceWPerM2K: finite.optional(),
    assumed: list(z.string()),
    why: derivation,
  }),
})
