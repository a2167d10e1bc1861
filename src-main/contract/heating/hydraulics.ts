import { z } from 'zod'
import { derivation } from '../../domain/derivation.ts'
import {
  count,
  heatW,
  key,
  line,
  list,
  litres,
  pence,
  pricePence,
  ratio,
  record,
} from '../../domain/schema.ts'
import { query } from '../request.ts'

const finite = z.number()
/** Water in a wet system stays liquid: 1 to 110 degrees. */
const waterC = z.number().gte(1).lte(110)
const litresPerMinute = z.number().gt(0).lte(10_000)
const kvM3PerH = z.number().gte(0.0001).lte(10_000)
const pressurePa = z.number().gt(0).lte(10_000_000)

export const valveLoss = query('valve.loss', {
  doc: 'The pressure that a valve of a known Kv takes at a flow.',
  input: record({ kvM3PerH, litresPerMinute, meanC: waterC }),
  output: record({ pa: finite, densityKgPerM3: finite, why: derivation }),
})

export const valveKv = query('valve.kv', {
  doc: 'The Kv that a valve must have to take so much pressure at a flow.',
  input: record({ litresPerMinute, pa: pressurePa, meanC: waterC }),
  output: record({ kvM3PerH: finite, densityKgPerM3: finite, why: derivation }),
})

/** A pipe that carries all that hangs on it; its length is flow and return together. */
const leg = record({
  id: key,
  from: key.nullable(),
  pipe: record({
    insideMm: z.number().gt(0).lte(500),
    lengthM: z.number().gt(0).lte(10_000),
    roughnessMm: z.number().gte(0).lte(10),
  }),
  zetas: list(z.number().gte(0).lte(1000), 200).optional(),
})
const row = record({ turns: z.number().gte(0).lte(1000), kvM3PerH: z.number().gte(0).lte(10_000) })
const circuit = record({
  id: key,
  legId: key,
  watts: heatW,
  emitterLossPa: z.number().gte(0).lte(1_000_000).optional(),
  valveKvM3PerH: kvM3PerH.optional(),
  lockshield: record({ table: list(row, 50, 1).optional(), unit: line.optional() }).optional(),
})

export const houseBalance = query('house.balance', {
  doc: 'A house in balance: flow in each pipe, the index circuit, the pump head, and the Kv of each lockshield.',
  input: record({
    legs: list(leg, 200, 1),
    circuits: list(circuit, 200, 1),
    flowC: waterC,
    returnC: waterC,
    availablePa: pressurePa.optional(),
  }),
  output: record({
    indexCircuitId: key,
    litresPerMinute: finite,
    headPa: finite,
    headM: finite,
    sparePa: finite.optional(),
    legs: list(
      record({
        id: key,
        litresPerMinute: finite,
        velocityMPerS: finite,
        perMetrePa: finite,
        lossPa: finite,
      }),
    ),
    circuits: list(
      record({
        id: key,
        index: z.boolean(),
        litresPerMinute: finite,
        pathPa: finite,
        emitterPa: finite,
        valvePa: finite,
        lockshieldPa: finite,
        lossPa: finite,
        kvM3PerH: finite.nullable(),
        opening: record({ at: finite, unit: line }).nullable(),
        why: derivation,
      }),
    ),
    warnings: list(
      record({
        kind: z.enum(['noise', 'air', 'idle', 'short', 'tight', 'uncounted']),
        path: z.string(),
        message: z.string(),
      }),
    ),
    why: derivation,
  }),
})

const pipeMaterial = z.enum(['copper', 'plastic', 'steel'])
const boreMm = z.number().gt(0).lte(500)
/** The bores of pipe sizes, by material. */
export const pipeBores = list(
  record({
    material: pipeMaterial,
    source: line,
    sizes: list(record({ outsideMm: boreMm, insideMm: boreMm }), 50, 1),
  }),
  10,
)
const lengthM = z.number().gte(0).lte(10_000)

export const systemContent = query('system.content', {
  doc: 'The water in a heating system: as surveyed, its parts added up, and an allowance by boiler output for the rest, marked so.',
  input: record({
    surveyedLitres: litres.optional(),
    /** Every emitter of the system, from the catalogue or by its water. */
    emitters: list(
      z.union([
        record({ itemId: key, count: count.optional() }),
        record({ name: line, waterLitres: litres, count: count.optional() }),
      ]),
      500,
    ).optional(),
    /** Every run of pipe, flow and return together, by its bore or by its size. */
    pipes: list(
      z.union([
        record({ insideMm: boreMm, lengthM }),
        record({ material: pipeMaterial, outsideMm: boreMm, lengthM }),
      ]),
      500,
    ).optional(),
    /** The boiler or heat pump itself. */
    boilerLitres: litres.optional(),
    boilerKW: z.number().gt(0).lte(1000).optional(),
    /** The firm's own allowance when absent. */
    litresPerKW: z.number().gt(0).lte(100).optional(),
  }),
  output: record({
    litres: finite,
    surveyed: z.boolean(),
    /** Where the water was surveyed part by part. */
    parts: list(
      record({
        what: z.enum(['emitters', 'pipes', 'boiler', 'allowance']),
        litres: finite,
        surveyed: z.boolean(),
      }),
    ).optional(),
    says: z.string().optional(),
    why: derivation,
  }),
})

export const waterDose = query('water.dose', {
  doc: 'The inhibitor or cleaner a system takes, and the whole containers that cover it.',
  input: record({
    product: z.enum(['inhibitor', 'cleaner']),
    contentLitres: litres,
    /** The catalogue's product: it says what a litre treats, and which containers there are at what price. */
    itemId: key.optional(),
    /** The share of the water that is let out; all of it when absent. */
    drainedShare: ratio.optional(),
    /** The firm's own figure for the product when absent. */
    treatedLitresPerLitre: z.number().gt(0).lte(10_000).optional(),
    packs: list(
      record({ id: line, holds: z.number().gt(0).lte(1_000_000), pence: pricePence }),
      50,
      1,
    ).optional(),
  }),
  output: record({
    litres: finite,
    containers: record({ picks: list(record({ id: line, count })), pence, leftover: finite }).nullable(),
    /** Who sells the containers, where they come from the catalogue. */
    supplier: record({ supplierId: key, name: line }).optional(),
    why: derivation,
  }),
})
