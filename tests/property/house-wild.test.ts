import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import * as contract from '../../src-main/contract/heating/house.ts'
import type { Outcome } from '../../src-main/domain/outcome.ts'
import { ageBandUValue } from '../../src-main/engine/heat/age-band-u-value.ts'
import { houseFlow } from '../../src-main/engine/heat/house-flow.ts'
import { houseHeat } from '../../src-main/engine/heat/house-heat.ts'
import { houseSwapEffects } from '../../src-main/engine/heat/house-swap-effects.ts'
import { nonFiniteIn } from '../answered.ts'
import { heatTablesOnDisk } from '../heat-tables-for-tests.ts'

const runs = { numRuns: 200 }
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const above0 = (max: number) => within(Number.MIN_VALUE, max)
const wildC = fc.oneof(within(-60, 130), fc.integer({ min: -60, max: 130 }))
const name = fc.constantFrom('Hall', 'Bath')

const boundary = fc.oneof(
  fc.constant({ kind: 'outside' as const }),
  fc.record({ kind: fc.constant('room' as const), roomC: wildC }),
  fc.record({ kind: fc.constant('unheated' as const), factor: within(0, 1) }),
  fc.record({ kind: fc.constant('ground' as const), meanOutsideC: wildC }),
)
const surface = { name, areaM2: above0(10_000), uWPerM2K: above0(20) }
const openings = fc.array(fc.record(surface), { maxLength: 2 })
const element = fc.record(
  { ...surface, boundary, openings },
  { requiredKeys: ['name', 'areaM2', 'uWPerM2K', 'boundary'] },
)
const whose = { name, roomC: wildC, outsideC: wildC, volumeM3: above0(100_000) }
const room = fc.oneof(
  fc.record({
    ...whose,
    floorAreaM2: above0(10_000),
    airChangesPerHour: within(0, 30),
    elements: fc.array(element, { maxLength: 4 }),
  }),
  fc.record({ ...whose, roughWPerM3: above0(300) }),
)
const rating = fc.record({ flowC: wildC, returnC: wildC, roomC: wildC })
const emitter = fc.record(
  { ratedW: above0(1e6), exponent: within(1, 2), rating },
  { requiredKeys: ['ratedW', 'exponent'] },
)
const emitters = fc.array(emitter, { maxLength: 3 })
const flowRoom = fc.oneof(
  fc.record({ room, emitters }),
  fc.record(
    { name, loadW: above0(1e6), roomC: wildC, rough: fc.boolean(), emitters },
    { requiredKeys: ['name', 'loadW', 'roomC', 'emitters'] },
  ),
)
const flow = fc.record(
  {
    rooms: fc.array(flowRoom, { minLength: 1, maxLength: 5 }),
    spreadK: within(0.01, 50),
    maxFlowC: wildC,
  },
  { requiredKeys: ['rooms', 'spreadK'] },
)
const candidate = fc.record(
  {
    name,
    roomIndex: fc.nat(5),
    roomName: name,
    remove: fc.array(fc.nat(2), { maxLength: 2 }),
    add: emitters,
  },
  { requiredKeys: ['name', 'remove', 'add'] },
)

type Asked = { readonly input: z.ZodType; readonly output: z.ZodType }

/** An input that the request lets through is answered in finite numbers, as promised, or refused in a sentence. */
function soundly(request: Asked, input: unknown, outcome: Outcome<unknown>) {
  expect(request.input.safeParse(input).success).toBe(true)
  if (outcome.ok) {
    expect(nonFiniteIn(outcome.value)).toEqual([])
    expect(request.output.safeParse(outcome.value).success).toBe(true)
    return
  }
  expect(outcome.problems.length).toBeGreaterThan(0)
  for (const { message } of outcome.problems) expect(message).toMatch(/^[A-Z].*\.$/)
}

describe('any input that a request lets through is answered in finite numbers, or refused in a sentence', () => {
  it('house.heat', () => {
    const input = fc.record(
      { rooms: fc.array(room, { minLength: 1, maxLength: 5 }), ventilationRatio: within(0, 1) },
      { requiredKeys: ['rooms'] },
    )
    fc.assert(
      fc.property(input, (one) => soundly(contract.houseHeat, one, houseHeat(one))),
      runs,
    )
  })

  it('house.flow', () => {
    fc.assert(
      fc.property(flow, (one) => soundly(contract.houseFlow, one, houseFlow(one))),
      runs,
    )
  })

  it('house.swapEffects', () => {
    const input = fc
      .tuple(flow, fc.array(candidate, { minLength: 1, maxLength: 4 }))
      .map(([house, candidates]) => ({ ...house, candidates }))
    fc.assert(
      fc.property(input, (one) => soundly(contract.houseSwapEffects, one, houseSwapEffects(one))),
      runs,
    )
  })

  it('uvalue.ageBand', () => {
    const known = heatTablesOnDisk.uValues.flatMap(({ rows }) => rows.map((row) => row.construction))
    const input = fc.record(
      {
        element: fc.constantFrom(...contract.uValueElement.options),
        construction: fc.constantFrom(...known),
        ageBand: fc.constantFrom(...contract.ageBand.options),
        builtYear: fc.integer({ min: 1000, max: 2100 }),
        insulationMm: within(0, 2000),
        country: fc.constantFrom(...contract.ukCountry.options),
      },
      { requiredKeys: ['element', 'construction'] },
    )
    fc.assert(
      fc.property(input, (one) => soundly(contract.uvalueAgeBand, one, ageBandUValue(one, heatTablesOnDisk))),
      { numRuns: 1000 },
    )
  })
})
