import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { uvalueGroundFloor } from '../../../src-main/contract/heating/ground-floor.ts'
import { groundFloorUValue } from '../../../src-main/engine/heat/ground/ground-floor.ts'
import type { GroundFloorInput } from '../../../src-main/engine/heat/ground/ground-floor.ts'
import { answered, nonFiniteIn } from '../../answered.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const both = {
  areaM2: between(1, 500),
  perimeterM: between(1, 200),
  wallMm: between(0, 800),
  groundConductivityWPerMK: between(0.5, 4),
  insulationM2KPerW: between(0, 8),
}
const slab = fc.record({ kind: fc.constant('slab' as const), ...both })
const suspended = fc.record({
  kind: fc.constant('suspended' as const),
  ...both,
  deckM2KPerW: between(0.1, 3),
  baseM2KPerW: between(0, 4),
  heightMm: between(0, 1000),
  wallUWPerM2K: between(0.1, 3),
  openingsM2PerM: between(0, 0.01),
  windMPerS: between(0, 10),
  place: fc.constantFrom('sheltered' as const, 'average' as const, 'exposed' as const),
})
const floor: fc.Arbitrary<GroundFloorInput> = fc.oneof(slab, suspended)
const u = (input: GroundFloorInput) => answered(groundFloorUValue(input)).uWPerM2K
const runs = { numRuns: 500 }
/** Figures that differ only by rounding. */
const hair = 1e-12

describe('a ground floor', () => {
  it('loses less the more it is insulated', () => {
    fc.assert(
      fc.property(floor, between(0.01, 5), (input, more) => {
        expect(u({ ...input, insulationM2KPerW: (input.insulationM2KPerW ?? 0) + more })).toBeLessThan(
          u(input),
        )
      }),
      runs,
    )
  })

  it('loses less for each square metre the less of it is edge, but for the step where the formulas meet', () => {
    // Where the standard's two formulas meet they differ by a hair: 2 ln(pi + 1) / (pi + 1) = 0.68624, 1 / 1.457 = 0.68634.
    fc.assert(
      fc.property(floor, between(1.01, 5), (input, times) => {
        expect(u({ ...input, areaM2: input.areaM2 * times })).toBeLessThan(u(input) * (1 + 1e-3))
      }),
      runs,
    )
  })

  it('depends on edge and area only by their ratio', () => {
    fc.assert(
      fc.property(floor, between(0.1, 10), (input, times) => {
        const scaled = { ...input, areaM2: input.areaM2 * times, perimeterM: input.perimeterM * times }
        expect(u(scaled)).toBeCloseTo(u(input), 9)
      }),
      runs,
    )
  })

  it('never loses more than its own deck or slab would to outside air', () => {
    fc.assert(
      fc.property(floor, (input) => {
        const layers =
          (input.insulationM2KPerW ?? 0) + (input.kind === 'suspended' ? (input.deckM2KPerW ?? 0) : 0)
        expect(u(input)).toBeLessThan(1 / (0.21 + layers) + hair)
        expect(u(input)).toBeGreaterThan(0)
      }),
      runs,
    )
  })

  it('over an aired space loses more with more air, more wind, higher and poorer walls', () => {
    fc.assert(
      fc.property(suspended, between(1.01, 3), (input, times) => {
        const before = u(input) - hair
        expect(u({ ...input, openingsM2PerM: input.openingsM2PerM * times })).toBeGreaterThanOrEqual(before)
        expect(u({ ...input, windMPerS: input.windMPerS * times })).toBeGreaterThanOrEqual(before)
        expect(u({ ...input, heightMm: input.heightMm * times })).toBeGreaterThanOrEqual(before)
        expect(u({ ...input, wallUWPerM2K: input.wallUWPerM2K * times })).toBeGreaterThanOrEqual(before)
      }),
      runs,
    )
  })
})

describe('insulation along the edge', () => {
  const strip = fc.record({
    lies: fc.constantFrom('flat' as const, 'upright' as const),
    share: between(0.01, 1),
    thicknessMm: between(1, 300),
    conductivityWPerMK: between(0.015, 0.2),
  })

  it('always saves heat, more of it the further it reaches and the thicker it is, and never all of it', () => {
    fc.assert(
      fc.property(slab, strip, (input, { share, ...edge }) => {
        const reachMm = (500 * input.areaM2 * share) / (0.5 * input.perimeterM) / 1.001
        const edgedBy = (reach: number, thicknessMm: number) =>
          u({ ...input, edge: { ...edge, reachMm: reach, thicknessMm } })
        const edged = edgedBy(reachMm, edge.thicknessMm)
        expect(edged).toBeLessThan(u(input))
        expect(edged).toBeGreaterThan(0)
        expect(edgedBy(reachMm / 2, edge.thicknessMm)).toBeGreaterThan(edged)
        expect(edgedBy(reachMm, edge.thicknessMm * 2)).toBeLessThan(edged)
      }),
      runs,
    )
  })
})

describe('any input that uvalue.groundFloor lets through', () => {
  it('is answered in finite numbers, or refused in a sentence', () => {
    const wild = fc.record({
      kind: fc.constant('slab' as const),
      areaM2: between(0.01, 10_000),
      perimeterM: between(0.01, 10_000),
      wallMm: between(0, 5000),
      groundConductivityWPerMK: between(0.05, 20),
      insulationM2KPerW: between(0, 100),
      edge: fc.record({
        lies: fc.constantFrom('flat' as const, 'upright' as const),
        reachMm: between(Number.MIN_VALUE, 5000),
        thicknessMm: between(Number.MIN_VALUE, 1000),
        conductivityWPerMK: between(0.001, 500),
      }),
    })
    fc.assert(
      fc.property(wild, (input) => {
        expect(uvalueGroundFloor.input.safeParse(input).error).toBeUndefined()
        const outcome = groundFloorUValue(input)
        if (outcome.ok) {
          expect(nonFiniteIn(outcome.value)).toEqual([])
          expect(uvalueGroundFloor.output.safeParse(outcome.value).error).toBeUndefined()
        } else for (const { message } of outcome.problems) expect(message).toMatch(/^[A-Z].*\.$/)
      }),
      runs,
    )
  })
})
