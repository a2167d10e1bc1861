import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as contract from '../../src-main/contract/heating/heat.ts'
import { exponentFromTwoRatings } from '../../src-main/engine/heat/emitter-exponent.ts'
import { emitterOutput } from '../../src-main/engine/heat/emitter-output.ts'
import { heatLoad } from '../../src-main/engine/heat/heat-load.ts'
import { lowestFlow } from '../../src-main/engine/heat/lowest-flow.ts'
import { layersUValue } from '../../src-main/engine/heat/u-value.ts'
import type { Outcome } from '../../src-main/domain/outcome.ts'
import { answered, nonFiniteIn } from '../answered.ts'

const runs = { numRuns: 500 }
/** Any number the schema lets through: both ends, and the smallest there is above an open lower end. */
const from = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const above0 = (max: number) => from(Number.MIN_VALUE, max)
const wildC = fc.oneof(from(-60, 130), fc.integer({ min: -60, max: 130 }))
const wildRating = fc.record({ flowC: wildC, returnC: wildC, roomC: wildC })
const name = fc.constantFrom('Wall', 'Window')

/** An answer without a number that is not finite and as the request promises, or a refusal in a sentence. */
function soundly(outcome: Outcome<unknown>, output: { safeParse: (value: unknown) => { success: boolean } }) {
  if (outcome.ok) {
    expect(nonFiniteIn(outcome.value)).toEqual([])
    expect(output.safeParse(outcome.value).success).toBe(true)
  } else {
    expect(outcome.problems.length).toBeGreaterThan(0)
    for (const { message } of outcome.problems) expect(message).toMatch(/^[A-Z].*\.$/)
  }
}

describe('any input that a request lets through is answered in finite numbers, or refused in a sentence', () => {
  it('emitter.output', () => {
    const factor = fc.record({ name, value: above0(1.5) })
    const input = fc.record(
      {
        ratedW: above0(1e6),
        rating: wildRating,
        exponent: from(1, 2),
        flowC: wildC,
        returnC: wildC,
        roomC: wildC,
        mean: fc.constantFrom('logarithmic' as const, 'arithmetic' as const),
        factors: fc.array(factor, { maxLength: 10 }),
      },
      { requiredKeys: ['ratedW', 'exponent', 'flowC', 'returnC', 'roomC'] },
    )
    const sorted = input.map((one) => {
      const [roomC = 0, returnC = 0, flowC = 0] = [one.roomC, one.returnC, one.flowC].toSorted(
        (a, b) => a - b,
      )
      return { ...one, roomC, returnC, flowC }
    })
    fc.assert(
      fc.property(fc.oneof(input, sorted), (one) => {
        expect(contract.emitterOutput.input.safeParse(one).success).toBe(true)
        soundly(emitterOutput(one), contract.emitterOutput.output)
      }),
      runs,
    )
  })

  it('heat.load, measured', () => {
    const boundary = fc.oneof(
      fc.constant({ kind: 'outside' as const }),
      fc.record({ kind: fc.constant('room' as const), roomC: wildC }),
      fc.record({ kind: fc.constant('unheated' as const), factor: from(0, 1) }),
      fc.record({ kind: fc.constant('ground' as const), meanOutsideC: wildC }),
    )
    const surface = { name, areaM2: above0(10_000), uWPerM2K: above0(20) }
    const openings = fc.array(fc.record(surface), { maxLength: 3 })
    const element = fc.record(
      { ...surface, boundary, openings },
      { requiredKeys: ['name', 'areaM2', 'uWPerM2K', 'boundary'] },
    )
    const room = fc.record(
      {
        name,
        roomC: wildC,
        outsideC: wildC,
        volumeM3: above0(100_000),
        floorAreaM2: above0(10_000),
        airChangesPerHour: from(0, 30),
        thermalBridgeWPerM2K: from(0, 2),
        reheatWPerM2: from(0, 200),
        elements: fc.array(element, { maxLength: 6 }),
      },
      {
        requiredKeys: [
          'name',
          'roomC',
          'outsideC',
          'volumeM3',
          'floorAreaM2',
          'airChangesPerHour',
          'elements',
        ],
      },
    )
    fc.assert(
      fc.property(room, (one) => {
        expect(contract.heatLoad.input.safeParse({ room: one }).success).toBe(true)
        const outcome = heatLoad({ room: one })
        soundly(outcome, contract.heatLoad.output)
        if (!outcome.ok) return
        const { watts, transmissionW, ventilationW, reheatW, elements } = outcome.value
        const sum = elements.reduce((total, each) => total + each.watts, 0)
        expect(transmissionW).toBeCloseTo(sum, 6)
        expect(watts).toBeCloseTo(transmissionW + ventilationW + reheatW, 6)
        expect(elements.every((each) => each.netAreaM2 >= 0)).toBe(true)
      }),
      runs,
    )
  })

  it('heat.load, rough', () => {
    const room = fc.record({
      name,
      roomC: wildC,
      outsideC: wildC,
      volumeM3: above0(100_000),
      roughWPerM3: above0(300),
    })
    fc.assert(
      fc.property(room, (one) => {
        expect(contract.heatLoad.input.safeParse({ room: one }).success).toBe(true)
        soundly(heatLoad({ room: one }), contract.heatLoad.output)
      }),
      runs,
    )
  })

  it('uvalue.layers', () => {
    const solid = { name, thicknessMm: above0(5000), conductivityWPerMK: above0(500) }
    const layer = fc.oneof(
      fc.record(solid),
      fc.record({ name, resistanceM2KPerW: above0(100) }),
      fc.record({ ...solid, bridge: fc.record({ fraction: from(0, 1), conductivityWPerMK: above0(500) }) }),
    )
    const input = fc.record({
      rsi: from(0, 1),
      rse: from(0, 1),
      layers: fc.array(layer, { minLength: 1, maxLength: 8 }),
    })
    fc.assert(
      fc.property(input, (one) => {
        expect(contract.uvalueLayers.input.safeParse(one).success).toBe(true)
        soundly(layersUValue(one), contract.uvalueLayers.output)
      }),
      runs,
    )
  })

  it('flow.lowest', () => {
    const emitter = fc.record(
      { ratedW: above0(1e6), rating: wildRating, exponent: from(1, 2) },
      { requiredKeys: ['ratedW', 'exponent'] },
    )
    const input = fc.record(
      {
        loadW: above0(1e6),
        roomC: wildC,
        spreadK: above0(50),
        maxFlowC: wildC,
        emitters: fc.array(emitter, { minLength: 1, maxLength: 4 }),
      },
      { requiredKeys: ['loadW', 'roomC', 'spreadK', 'emitters'] },
    )
    fc.assert(
      fc.property(input, (one) => {
        expect(contract.flowLowest.input.safeParse(one).success).toBe(true)
        const outcome = lowestFlow(one)
        soundly(outcome, contract.flowLowest.output)
        if (!outcome.ok) return
        const { reachable, flowC, outputAtMaxW } = outcome.value
        expect(reachable).toBe(outputAtMaxW >= one.loadW)
        expect(flowC !== undefined).toBe(reachable)
        if (flowC !== undefined) expect(flowC).toBeLessThanOrEqual(one.maxFlowC ?? 75)
      }),
      runs,
    )
  })
})

const radiator = fc.record({ ratedW: from(50, 5000), exponent: from(1.05, 1.6) })
/** Temperatures that a heating system runs at, in order. */
const running = fc
  .record({ roomC: from(5, 28), overReturnK: from(1, 50), dropK: from(0.5, 40) })
  .map(({ roomC, overReturnK, dropK }) => ({
    roomC,
    returnC: roomC + overReturnK,
    flowC: roomC + overReturnK + dropK,
  }))
const mean = fc.constantFrom('logarithmic' as const, 'arithmetic' as const)

describe('an emitter', () => {
  it('gives more when the flow or the return is warmer, and less in a warmer room', () => {
    fc.assert(
      fc.property(radiator, running, mean, from(0.01, 0.4), (emitter, at, kind, stepK) => {
        const watts = (change: object) =>
          answered(emitterOutput({ ...emitter, ...at, mean: kind, ...change })).watts
        const now = watts({})
        expect(watts({ flowC: at.flowC + stepK })).toBeGreaterThan(now)
        expect(watts({ returnC: at.returnC + stepK })).toBeGreaterThan(now)
        expect(watts({ roomC: at.roomC + stepK })).toBeLessThan(now)
      }),
      runs,
    )
  })

  it('has a logarithmic excess between the geometric and the arithmetic one', () => {
    fc.assert(
      fc.property(radiator, running, (emitter, at) => {
        const excess = (kind: 'logarithmic' | 'arithmetic') =>
          answered(emitterOutput({ ...emitter, ...at, mean: kind })).excessK
        const geometric = Math.sqrt((at.flowC - at.roomC) * (at.returnC - at.roomC))
        expect(excess('logarithmic')).toBeLessThanOrEqual(excess('arithmetic') * (1 + 1e-12))
        expect(excess('logarithmic')).toBeGreaterThanOrEqual(geometric * (1 - 1e-12))
      }),
      runs,
    )
  })

  it('gives what it was rated at, whatever the rating’s temperatures', () => {
    fc.assert(
      fc.property(radiator, running, mean, (emitter, rating, kind) => {
        const output = answered(emitterOutput({ ...emitter, rating, ...rating, mean: kind }))
        expect(output.watts).toBeCloseTo(emitter.ratedW, 6)
      }),
      runs,
    )
  })

  it('gives back its exponent from any two of its outputs', () => {
    fc.assert(
      fc.property(radiator, running, running, mean, (emitter, one, two, kind) => {
        const point = (rating: typeof one) => {
          const { watts: ratedW, excessK } = answered(emitterOutput({ ...emitter, ...rating, mean: kind }))
          return { ratedW, rating, excessK }
        }
        const [first, second] = [point(one), point(two)]
        fc.pre(Math.abs(first.excessK - second.excessK) > 2 && Math.min(first.excessK, second.excessK) > 1.5)
        const { exponent } = answered(exponentFromTwoRatings({ first, second, mean: kind }))
        expect(exponent).toBeCloseTo(emitter.exponent, 6)
      }),
      runs,
    )
  })
})

describe('the lowest flow', () => {
  const tenths = fc.integer({ min: 320, max: 900 }).map((tenth) => tenth / 10)
  const emitters = fc.array(radiator, { minLength: 1, maxLength: 4 })
  const spread = fc.integer({ min: 3, max: 20 })
  const gives = (list: readonly { ratedW: number; exponent: number }[], flowC: number, returnC: number) =>
    list.reduce((sum, one) => sum + answered(emitterOutput({ ...one, flowC, returnC, roomC: 20 })).watts, 0)

  it('is the inverse of the output, to the tenth', () => {
    fc.assert(
      fc.property(emitters, spread, tenths, (list, spreadK, flowC) => {
        fc.pre(flowC - spreadK > 20.5)
        const returnC = Number((flowC - spreadK).toFixed(1))
        const loadW = gives(list, flowC, returnC)
        fc.pre(loadW <= 1e6)
        const answer = answered(lowestFlow({ loadW, roomC: 20, spreadK, maxFlowC: 90, emitters: list }))
        expect(answer.flowC).toBe(flowC)
      }),
      runs,
    )
  })

  it('is warm at the answer, cold a tenth below, and rises with the load', () => {
    fc.assert(
      fc.property(emitters, spread, from(20, 6000), from(1, 500), (list, spreadK, loadW, moreW) => {
        const base = { roomC: 20, spreadK, maxFlowC: 90, emitters: list }
        const answer = answered(lowestFlow({ ...base, loadW }))
        fc.pre(answer.reachable)
        const { flowC = NaN, returnC = NaN } = answer
        expect(gives(list, flowC, returnC)).toBeGreaterThanOrEqual(loadW)
        if (returnC - 0.1 > 20.01) expect(gives(list, flowC - 0.1, returnC - 0.1)).toBeLessThan(loadW)
        const next = answered(lowestFlow({ ...base, loadW: loadW + moreW }))
        expect(next.flowC ?? Infinity).toBeGreaterThanOrEqual(flowC)
      }),
      runs,
    )
  })
})

describe('a construction', () => {
  const layer = fc.record({ name, thicknessMm: from(1, 500), conductivityWPerMK: from(0.02, 5) })
  const bridged = fc.record({
    name,
    thicknessMm: from(1, 500),
    conductivityWPerMK: from(0.02, 5),
    bridge: fc.record({ fraction: from(0, 1), conductivityWPerMK: from(0.02, 5) }),
  })
  const layers = fc.array(fc.oneof(layer, bridged), { minLength: 1, maxLength: 6 })

  it('resists more with one layer more, and its upper limit is never below its lower', () => {
    fc.assert(
      fc.property(layers, layer, (list, more) => {
        const of = (these: typeof list) => answered(layersUValue({ rsi: 0.13, rse: 0.04, layers: these }))
        const found = of(list)
        expect(of([...list, more]).uWPerM2K).toBeLessThan(found.uWPerM2K)
        if (found.upperM2KPerW === undefined || found.lowerM2KPerW === undefined) return
        expect(found.upperM2KPerW).toBeGreaterThanOrEqual(found.lowerM2KPerW * (1 - 1e-9))
      }),
      runs,
    )
  })

  it('does not mind the order of its layers', () => {
    fc.assert(
      fc.property(layers, (list) => {
        const of = (these: typeof list) =>
          answered(layersUValue({ rsi: 0.13, rse: 0.04, layers: these })).uWPerM2K
        expect(of(list.toReversed()) / of(list)).toBeCloseTo(1, 9)
      }),
      runs,
    )
  })
})
