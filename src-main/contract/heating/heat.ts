import { z } from 'zod'
import { derivation } from '../../domain/derivation.ts'
import { exponent, rating, ratedW, roomHeat } from '../../domain/room-heat.ts'
import { heatW, line, list, ratio, record, temperatureC } from '../../domain/schema.ts'
import { query } from '../request.ts'

const finite = z.number()
export const meanKind = z.enum(['logarithmic', 'arithmetic'])

export const emitterOutput = query('emitter.output', {
  doc: 'What an emitter gives at the temperatures the system runs at.',
  input: record({
    ratedW,
    rating: rating.optional(),
    exponent,
    flowC: temperatureC,
    returnC: temperatureC,
    roomC: temperatureC,
    mean: meanKind.optional(),
    factors: list(record({ name: line, value: z.number().gt(0).lte(1.5) }), 10).optional(),
  }),
  output: record({ watts: finite, btuPerHour: finite, excessK: finite, mean: meanKind, why: derivation }),
})

export const heatLoad = query('heat.load', {
  doc: 'The heat a room needs, element by element, or a rough guess by volume.',
  input: record({ room: roomHeat }),
  output: record({
    watts: finite,
    btuPerHour: finite,
    transmissionW: finite,
    ventilationW: finite,
    reheatW: finite,
    elements: list(record({ name: line, netAreaM2: finite, watts: finite })),
    rough: z.boolean(),
    why: derivation,
  }),
})

const thicknessMm = z.number().gt(0).lte(5000)
const conductivityWPerMK = z.number().gt(0).lte(500)
export const layer = z.union([
  record({ name: line, thicknessMm, conductivityWPerMK }),
  record({ name: line, resistanceM2KPerW: z.number().gt(0).lte(100) }),
  record({
    name: line,
    thicknessMm,
    conductivityWPerMK,
    bridge: record({ fraction: ratio, conductivityWPerMK }),
  }),
])
export type Layer = z.infer<typeof layer>

export const uvalueLayers = query('uvalue.layers', {
  doc: 'The U-value of a construction from its layers, with timber bridging by upper and lower limit.',
  input: record({
    rsi: z.number().gte(0).lte(1),
    rse: z.number().gte(0).lte(1),
    layers: list(layer, 50, 1),
  }),
  output: record({
    uWPerM2K: finite,
    resistanceM2KPerW: finite,
    upperM2KPerW: finite.optional(),
    lowerM2KPerW: finite.optional(),
    why: derivation,
  }),
})

export const flowLowest = query('flow.lowest', {
  doc: 'The lowest flow temperature at which a room is still warm.',
  input: record({
    loadW: heatW,
    roomC: temperatureC,
    spreadK: z.number().gt(0).lte(50),
    maxFlowC: temperatureC.optional(),
    emitters: list(record({ ratedW, rating: rating.optional(), exponent }), 100, 1),
  }),
  output: record({
    reachable: z.boolean(),
    flowC: finite.optional(),
    returnC: finite.optional(),
    outputAtMaxW: finite,
    why: derivation,
  }),
})
