import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as contract from '../../src-main/contract/heating/water.ts'
import { darcyFriction } from '../../src-main/engine/water/friction-factor.ts'
import { pipeLoss } from '../../src-main/engine/water/pipe-loss.ts'
import { doseLitres, systemContent } from '../../src-main/engine/water/system-dose.ts'
import { waterFlow } from '../../src-main/engine/water/water-flow.ts'
import { waterProperties } from '../../src-main/engine/water/water-properties.ts'
import type { Outcome } from '../../src-main/domain/outcome.ts'
import { answered, nonFiniteIn } from '../answered.ts'

const runs = { numRuns: 500 }
/** Any number the schema lets through: both ends, and the smallest there is above an open lower end. */
const from = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const above0 = (max: number) => from(Number.MIN_VALUE, max)
const waterC = fc.oneof(from(1, 110), fc.integer({ min: 1, max: 110 }))

/** An answer without a number that is not finite, or a refusal in a sentence. */
function soundly(outcome: Outcome<unknown>) {
  if (outcome.ok) return expect(nonFiniteIn(outcome.value)).toEqual([])
  for (const { message } of outcome.problems) expect(message).toMatch(/^[A-Z].*\.$/)
}

describe('any input that a request lets through is answered in finite numbers, or refused in a sentence', () => {
  it('water.flow', () => {
    fc.assert(
      fc.property(fc.record({ watts: above0(1e6), flowC: waterC, returnC: waterC }), (input) => {
        expect(contract.waterFlow.input.safeParse(input).success).toBe(true)
        const outcome = waterFlow(input)
        soundly(outcome)
        expect(outcome.ok).toBe(input.flowC > input.returnC)
        if (outcome.ok) expect(contract.waterFlow.output.safeParse(outcome.value).success).toBe(true)
      }),
      runs,
    )
  })

  it('pipe.loss', () => {
    const input = fc.record(
      {
        insideMm: fc.oneof(above0(500), from(5, 60)),
        lengthM: above0(10_000),
        roughnessMm: fc.oneof(from(0, 10), from(0, 0.05)),
        meanC: waterC,
        litresPerMinute: above0(10_000),
        zetas: fc.array(from(0, 1000), { maxLength: 5 }),
      },
      { requiredKeys: ['insideMm', 'lengthM', 'roughnessMm', 'meanC', 'litresPerMinute'] },
    )
    fc.assert(
      fc.property(input, (one) => {
        expect(contract.pipeLoss.input.safeParse(one).success).toBe(true)
        const outcome = pipeLoss(one)
        soundly(outcome)
        if (outcome.ok) expect(contract.pipeLoss.output.safeParse(outcome.value).success).toBe(true)
      }),
      runs,
    )
  })

  it('system contents and doses', () => {
    const litres = from(0, 100_000)
    fc.assert(
      fc.property(
        litres,
        above0(10_000),
        from(0, 1),
        above0(10_000),
        (boilerKW, litresPerKW, drainedShare, treated) => {
          const content = systemContent({ boilerKW, litresPerKW })
          soundly(content)
          const { litres: contentLitres } = answered(content)
          soundly(doseLitres({ contentLitres, drainedShare, treatedLitresPerLitre: treated }))
        },
      ),
      runs,
    )
  })
})

describe('water', () => {
  it('gets thinner as it warms; lighter too, from 4 degrees on', () => {
    fc.assert(
      fc.property(from(1, 109.9), from(0.01, 0.1), (cold, stepK) => {
        const [one, two] = [
          answered(waterProperties({ waterC: cold })),
          answered(waterProperties({ waterC: cold + stepK })),
        ]
        expect(two.viscosityPaS).toBeLessThan(one.viscosityPaS)
        if (cold >= 4.1) expect(two.densityKgPerM3).toBeLessThan(one.densityKgPerM3)
      }),
      runs,
    )
  })

  it('is asked for in proportion to the heat, and less the more it cools', () => {
    fc.assert(
      fc.property(from(10, 50_000), from(20, 60), from(2, 30), (watts, returnC, dropK) => {
        const flow = (heat: number, drop: number) =>
          answered(waterFlow({ watts: heat, flowC: returnC + drop, returnC })).litresPerMinute
        expect(flow(2 * watts, dropK) / flow(watts, dropK)).toBeCloseTo(2, 9)
        expect(flow(watts, dropK + 1)).toBeLessThan(flow(watts, dropK))
      }),
      runs,
    )
  })
})

describe('a pipe', () => {
  const pipe = fc.record({
    insideMm: from(5, 60),
    lengthM: from(0.1, 100),
    roughnessMm: from(0, 0.2),
    meanC: from(5, 90),
    litresPerMinute: from(0.01, 60),
  })

  it('loses more the more flows through it, through every border, and the longer it is', () => {
    fc.assert(
      fc.property(pipe, from(1.0001, 1.5), (one, more) => {
        const total = (change: object) => answered(pipeLoss({ ...one, ...change })).totalPa
        expect(total({ litresPerMinute: one.litresPerMinute * more })).toBeGreaterThan(total({}))
        expect(total({ lengthM: one.lengthM * more })).toBeGreaterThan(total({}))
      }),
      runs,
    )
  })

  it('has a friction factor that satisfies Colebrook and White where they rule', () => {
    fc.assert(
      fc.property(from(4000, 1e9), from(0, 0.05), (reynolds, relativeRoughness) => {
        const { frictionFactor, regime } = darcyFriction({ reynolds, relativeRoughness })
        const root = Math.sqrt(frictionFactor)
        expect(regime).toBe('turbulent')
        expect(-2 * Math.log10(relativeRoughness / 3.7 + 2.51 / (reynolds * root))).toBeCloseTo(1 / root, 9)
      }),
      runs,
    )
  })

  it('has a friction factor that nowhere jumps', () => {
    fc.assert(
      fc.property(from(500, 20_000), from(0, 0.05), (reynolds, relativeRoughness) => {
        const factor = (re: number) => darcyFriction({ reynolds: re, relativeRoughness }).frictionFactor
        expect(Math.abs(factor(reynolds * 1.000001) - factor(reynolds))).toBeLessThan(1e-6)
      }),
      runs,
    )
  })
})
