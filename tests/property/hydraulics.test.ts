import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as contract from '../../src-main/contract/heating/hydraulics.ts'
import { balanceHouse } from '../../src-main/engine/water/balance-house.ts'
import type { BalanceInput } from '../../src-main/engine/water/balance-input.ts'
import { doseInContainers } from '../../src-main/engine/water/dose-containers.ts'
import { valveKv, valveLoss, valveLossPa } from '../../src-main/engine/water/valve-loss.ts'
import { valveOpening } from '../../src-main/engine/water/valve-opening.ts'
import { waterProperties } from '../../src-main/engine/water/water-properties.ts'
import type { Outcome } from '../../src-main/domain/outcome.ts'
import { answered, nonFiniteIn } from '../answered.ts'
import { defaultFigures } from '../figures-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const runs = { numRuns: 300 }
const from = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const above0 = (max: number) => from(Number.MIN_VALUE, max)
const waterC = from(1, 110)

function soundly(outcome: Outcome<unknown>) {
  if (outcome.ok) return expect(nonFiniteIn(outcome.value)).toEqual([])
  expect(outcome.problems.length).toBeGreaterThan(0)
  for (const { message } of outcome.problems) expect(message).toMatch(/^[A-Z].*\.$/)
}

const risingTable = fc
  .array(fc.record({ turns: from(0.1, 1), kv: from(0.01, 0.4) }), { minLength: 1, maxLength: 8 })
  .map((steps) => {
    let [turns, kvM3PerH] = [0, 0]
    return steps.map((step) => {
      turns += step.turns
      kvM3PerH += step.kv
      return { turns, kvM3PerH }
    })
  })

/** A tree: each leg comes from the pump or from one before it. */
const house: fc.Arbitrary<BalanceInput> = fc
  .record({
    legs: fc.array(
      fc.record({
        feed: fc.nat(),
        insideMm: from(6, 30),
        lengthM: from(0.5, 40),
        zetas: fc.array(from(0, 5), { maxLength: 3 }),
      }),
      { minLength: 1, maxLength: 8 },
    ),
    circuits: fc.array(
      fc.record({
        leg: fc.nat(),
        watts: from(100, 4000),
        emitterLossPa: from(0, 3000),
        trv: fc.option(from(0.1, 1.5), { nil: undefined }),
        table: fc.option(risingTable, { nil: undefined }),
      }),
      { minLength: 1, maxLength: 8 },
    ),
    returnC: from(20, 60),
    dropK: from(4, 25),
    availablePa: fc.option(from(100, 60_000), { nil: undefined }),
  })
  .map(({ legs, circuits, returnC, dropK, availablePa }) => ({
    legs: legs.map(({ feed, insideMm, lengthM, zetas }, index) => ({
      id: `leg${index}`,
      from: feed % (index + 1) === index ? null : `leg${feed % (index + 1)}`,
      pipe: { insideMm, lengthM, roughnessMm: 0.0015 },
      zetas,
    })),
    circuits: circuits.map(({ leg, watts, emitterLossPa, trv, table }, index) => ({
      id: `circuit${index}`,
      legId: `leg${leg % legs.length}`,
      watts,
      emitterLossPa,
      ...(trv === undefined ? {} : { valveKvM3PerH: trv }),
      ...(table === undefined ? {} : { lockshield: { table } }),
    })),
    flowC: returnC + dropK,
    returnC,
    ...(availablePa === undefined ? {} : { availablePa }),
  }))

describe('a house in balance', () => {
  it('fits its request both ways, and every number in it is finite', () => {
    fc.assert(
      fc.property(house, (input) => {
        expect(contract.houseBalance.input.safeParse(input).error).toBeUndefined()
        const outcome = balanceHouse(input, figures)
        soundly(outcome)
        expect(contract.houseBalance.output.safeParse(answered(outcome)).error).toBeUndefined()
      }),
      runs,
    )
  })

  it('keeps water: what enters a leg leaves it, into the legs that it feeds and the circuits at its end', () => {
    fc.assert(
      fc.property(house, (input) => {
        const { legs, circuits, litresPerMinute } = answered(balanceHouse(input, figures))
        const flowOf = (id: string) => legs.find((leg) => leg.id === id)?.litresPerMinute ?? 0
        const at = (node: string | null) => {
          const into = input.legs.filter((leg) => leg.from === node).map((leg) => flowOf(leg.id))
          const ends = circuits.filter((_, index) => input.circuits[index]?.legId === node)
          return [...into, ...ends.map((circuit) => circuit.litresPerMinute)].reduce((sum, q) => sum + q, 0)
        }
        expect(at(null)).toBeCloseTo(litresPerMinute, 9)
        for (const { id } of input.legs) expect(at(id)).toBeCloseTo(flowOf(id), 9)
      }),
      runs,
    )
  })

  it('makes every circuit lose what the index circuit loses, within a thousandth', () => {
    fc.assert(
      fc.property(house, (input) => {
        const { circuits, headPa, indexCircuitId } = answered(balanceHouse(input, figures))
        for (const { lossPa } of circuits) expect(Math.abs(lossPa / headPa - 1)).toBeLessThan(0.001001)
        expect(circuits.filter(({ index }) => index).map(({ id }) => id)).toEqual([indexCircuitId])
      }),
      runs,
    )
  })

  it('adds up round each circuit: legs, emitter, valve and lockshield by its Kv', () => {
    fc.assert(
      fc.property(house, (input) => {
        const { circuits, legs } = answered(balanceHouse(input, figures))
        const { densityKgPerM3 } = answered(waterProperties({ waterC: (input.flowC + input.returnC) / 2 }))
        for (const [place, one] of circuits.entries()) {
          let way = 0
          let at: string | null = input.circuits[place]?.legId ?? null
          while (at !== null) {
            const leg: string = at
            way += legs.find(({ id }) => id === leg)?.lossPa ?? 0
            at = input.legs.find(({ id }) => id === leg)?.from ?? null
          }
          const valve =
            one.kvM3PerH === null
              ? 0
              : valveLossPa({
                  kvM3PerH: one.kvM3PerH,
                  litresPerMinute: one.litresPerMinute,
                  densityKgPerM3,
                })
          const parts = way + one.emitterPa + one.valvePa + valve
          expect(Math.abs(parts / one.lossPa - 1)).toBeLessThan(1e-9)
        }
      }),
      runs,
    )
  })

  it('opens no lockshield further than its table, and names an opening only from a table', () => {
    fc.assert(
      fc.property(house, (input) => {
        const { circuits, warnings } = answered(balanceHouse(input, figures))
        for (const [place, { kvM3PerH, opening }] of circuits.entries()) {
          const table = input.circuits[place]?.lockshield?.table
          if (table === undefined) expect(opening).toBeNull()
          else {
            expect(kvM3PerH).toBeLessThanOrEqual(table.at(-1)?.kvM3PerH ?? 0)
            const tight = warnings.some(
              ({ kind, path }) => kind === 'tight' && path.startsWith(`circuits[${place}]`),
            )
            expect(opening === null).toBe(tight)
          }
        }
      }),
      runs,
    )
  })

  it('does not depend on the order in which legs and circuits are named', () => {
    fc.assert(
      fc.property(house, (input) => {
        const one = answered(balanceHouse(input, figures))
        const other = answered(
          balanceHouse(
            { ...input, legs: input.legs.toReversed(), circuits: input.circuits.toReversed() },
            figures,
          ),
        )
        expect(Math.abs(other.headPa / one.headPa - 1)).toBeLessThan(1e-9)
        expect(other.litresPerMinute).toBeCloseTo(one.litresPerMinute, 9)
      }),
      runs,
    )
  })

  it('with legs bent into a ring is refused at a leg', () => {
    fc.assert(
      fc.property(house, fc.nat(), (input, pick) => {
        const bent = pick % input.legs.length
        const legs = input.legs.map((leg, index) => (index === bent ? { ...leg, from: leg.id } : leg))
        const outcome = balanceHouse({ ...input, legs }, figures)
        expect(outcome.ok).toBe(false)
        if (!outcome.ok) expect(outcome.problems[0]?.path).toBe(`legs[${bent}].from`)
      }),
      runs,
    )
  })

  it('answers or refuses whatever its schema lets through', () => {
    const wild = fc.record({
      legs: fc.array(
        fc.record({
          id: fc.constantFrom('a', 'b', 'c'),
          from: fc.constantFrom('a', 'b', 'z', null),
          pipe: fc.record({ insideMm: above0(500), lengthM: above0(10_000), roughnessMm: from(0, 10) }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      circuits: fc.array(
        fc.record({
          id: fc.constantFrom('x', 'y'),
          legId: fc.constantFrom('a', 'b', 'c'),
          watts: above0(1e6),
          valveKvM3PerH: from(0.0001, 10_000),
          lockshield: fc.record({
            table: fc.array(fc.record({ turns: from(0, 1000), kvM3PerH: from(0, 10_000) }), {
              minLength: 1,
              maxLength: 3,
            }),
          }),
        }),
        { minLength: 1, maxLength: 2 },
      ),
      flowC: waterC,
      returnC: waterC,
      availablePa: above0(1e7),
    })
    fc.assert(
      fc.property(wild, (input) => {
        expect(contract.houseBalance.input.safeParse(input).success).toBe(true)
        soundly(balanceHouse(input, figures))
      }),
      { numRuns: 1000 },
    )
  })
})

describe('a valve', () => {
  it('answers or refuses whatever its schemas let through', () => {
    fc.assert(
      fc.property(from(0.0001, 10_000), above0(10_000), above0(1e7), waterC, (kvM3PerH, flow, pa, meanC) => {
        const loss = { kvM3PerH, litresPerMinute: flow, meanC }
        expect(contract.valveLoss.input.safeParse(loss).success).toBe(true)
        soundly(valveLoss(loss))
        const kv = { litresPerMinute: flow, pa, meanC }
        expect(contract.valveKv.input.safeParse(kv).success).toBe(true)
        soundly(valveKv(kv))
      }),
      runs,
    )
  })

  it('of the Kv that was found loses the pressure that was asked', () => {
    fc.assert(
      fc.property(from(0.05, 60), from(10, 100_000), waterC, (litresPerMinute, pa, meanC) => {
        const { kvM3PerH } = answered(valveKv({ litresPerMinute, pa, meanC }))
        const back = answered(valveLoss({ kvM3PerH, litresPerMinute, meanC }))
        expect(Math.abs(back.pa / pa - 1)).toBeLessThan(1e-12)
      }),
      runs,
    )
  })

  it('loses four times as much at twice the flow', () => {
    fc.assert(
      fc.property(from(0.1, 5), from(0.1, 30), waterC, (kvM3PerH, litresPerMinute, meanC) => {
        const at = (flow: number) => answered(valveLoss({ kvM3PerH, litresPerMinute: flow, meanC })).pa
        expect(at(2 * litresPerMinute) / at(litresPerMinute)).toBeCloseTo(4, 9)
      }),
      runs,
    )
  })

  it('is opened further for a greater Kv, and lies between the rows about it', () => {
    fc.assert(
      fc.property(risingTable, from(0, 1), from(0, 1), (table, one, other) => {
        const [first, last] = [table[0]?.kvM3PerH ?? 0, table.at(-1)?.kvM3PerH ?? 0]
        const at = (share: number) =>
          valveOpening({ kvM3PerH: Math.min(last, first + share * (last - first)), table }) ?? Number.NaN
        const [low, high] = [at(Math.min(one, other)), at(Math.max(one, other))]
        expect(low).toBeLessThanOrEqual(high)
        expect(low).toBeGreaterThanOrEqual(table[0]?.turns ?? 0)
        expect(high).toBeLessThanOrEqual(table.at(-1)?.turns ?? 0)
        expect(valveOpening({ kvM3PerH: last * 1.01, table })).toBeNull()
        expect(valveOpening({ kvM3PerH: first * 0.99, table })).toBeNull()
      }),
      runs,
    )
  })
})

describe('a dose in containers', () => {
  it('is covered whole, never by less', () => {
    fc.assert(
      fc.property(
        from(0, 100_000),
        from(0, 1),
        fc.integer({ min: 10, max: 1000 }),
        (contentLitres, drainedShare, treatedLitresPerLitre) => {
          const packs = [
            { id: 'half', holds: 0.5, pence: 900 },
            { id: 'litre', holds: 1, pence: 1500 },
          ]
          const outcome = doseInContainers({ contentLitres, drainedShare, treatedLitresPerLitre, packs })
          soundly(outcome)
          const { litres, containers } = answered(outcome)
          const held = (containers?.picks ?? []).reduce(
            (sum, { id, count }) => sum + count * (id === 'half' ? 0.5 : 1),
            0,
          )
          expect(held).toBeGreaterThanOrEqual(litres - 1e-6)
          expect(held - litres).toBeLessThan(0.5 + 1e-6)
        },
      ),
      runs,
    )
  })
})
