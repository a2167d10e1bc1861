import { z } from 'zod'
import { derivation } from '../../domain/derivation.ts'
import { heatW, list, record } from '../../domain/schema.ts'
import { query } from '../request.ts'

const finite = z.number()
/** Water in a wet system stays liquid: 1 to 110 degrees. */
const waterC = z.number().gte(1).lte(110)

export const waterFlow = query('water.flow', {
  doc: 'The water flow that carries so many watts.',
  input: record({ watts: heatW, flowC: waterC, returnC: waterC }),
  output: record({
    kgPerS: finite,
    litresPerMinute: finite,
    densityKgPerM3: finite,
    heatCapacityJPerKgK: finite,
    why: derivation,
  }),
})

export const pipeLoss = query('pipe.loss', {
  doc: 'The pressure that a length of pipe and its fittings take.',
  input: record({
    insideMm: z.number().gt(0).lte(500),
    lengthM: z.number().gt(0).lte(10_000),
    roughnessMm: z.number().gte(0).lte(10),
    meanC: waterC,
    litresPerMinute: z.number().gt(0).lte(10_000),
    zetas: list(z.number().gte(0).lte(1000), 200).optional(),
  }),
  output: record({
    totalPa: finite,
    perMetrePa: finite,
    velocityMPerS: finite,
    reynolds: finite,
    frictionFactor: finite,
    regime: z.enum(['laminar', 'transition', 'turbulent']),
    why: derivation,
  }),
})
