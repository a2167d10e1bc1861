import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { doseLitres, systemContent } from '../../../../src-main/engine/water/system-dose.ts'
import { kvProblem, valveKv, valveLoss } from '../../../../src-main/engine/water/valve-loss.ts'
import { answered, refused } from '../../../answered.ts'

describe('water and product: what is refused, and what the reason says', () => {
  it.each([
    [
      { surveyedLitres: -1, litresPerKW: 11 },
      'surveyedLitres',
      'The water in the system must be 0 L or more; it was -1.',
    ],
    [{ boilerKW: -1, litresPerKW: 11 }, 'boilerKW', 'The boiler output must be 0 kW or more; it was -1.'],
    [{ boilerKW: 18, litresPerKW: 0 }, 'litresPerKW', 'The allowance must be more than 0 L/kW; it was 0.'],
    [
      { litresPerKW: 11 },
      'boilerKW',
      'Give the water in the system, or the boiler output to allow for it by.',
    ],
  ])('content of %j', (input, path, message) => {
    expect(refused(systemContent(input))).toEqual({ code: 'invalid', path, message })
  })
  it.each([
    [{ contentLitres: -1 }, 'contentLitres', 'The water in the system must be 0 L or more; it was -1.'],
    [{ drainedShare: -0.1 }, 'drainedShare', 'The share let out must be 0 to 1; it was -0.1.'],
    [{ drainedShare: 1.1 }, 'drainedShare', 'The share let out must be 0 to 1; it was 1.1.'],
    [{ treatedLitresPerLitre: 0 }, 'treatedLitresPerLitre', 'One litre must treat more than 0 L; it was 0.'],
  ])('dose with %j', (more, path, message) => {
    const input = { contentLitres: 100, drainedShare: 1, treatedLitresPerLitre: 100, ...more }
    expect(refused(doseLitres(input))).toEqual({ code: 'invalid', path, message })
  })
  it('none of it is refused at its bound', () => {
    expect(answered(systemContent({ surveyedLitres: 0, litresPerKW: 11 })).litres).toBe(0)
    expect(answered(systemContent({ boilerKW: 0, litresPerKW: 11 })).litres).toBe(0)
    expect(
      answered(doseLitres({ contentLitres: 0, drainedShare: 1, treatedLitresPerLitre: 100 })).litres,
    ).toBe(0)
    expect(
      answered(doseLitres({ contentLitres: 100, drainedShare: 0, treatedLitresPerLitre: 100 })).litres,
    ).toBe(0)
  })
  it('15 kW x 10 L = 150 L; a fifth of it at 1 to 100 is 0.3 L', () => {
    const content = answered(systemContent({ boilerKW: 15, litresPerKW: 10 }))
    expect(content).toEqual({
      litres: 150,
      surveyed: false,
      why: because('Water in the system, an allowance: boiler output × litres per kW', 150, {
        unit: 'L',
        from: [given('Boiler output', 15, 'kW'), given('Allowance', 10, 'L/kW')],
      }),
    })
    const dose = answered(doseLitres({ contentLitres: 150, drainedShare: 0.2, treatedLitresPerLitre: 100 }))
    expect(dose.litres).toBeCloseTo(0.3, 9)
    expect(dose.why).toEqual(
      because('Product: water in the system × share let out / litres that one litre treats', dose.litres, {
        unit: 'L',
        from: [
          given('Water in the system', 150, 'L'),
          given('Share let out', 0.2),
          given('Litres that one litre treats', 100, 'L/L'),
        ],
      }),
    )
  })
})

describe('a valve: what is refused, and what the reason says', () => {
  it('Kv, flow, pressure and water outside what a house has', () => {
    const flow = { kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 60 }
    expect(refused(valveLoss({ ...flow, kvM3PerH: 0.00009 }))).toEqual({
      code: 'invalid',
      path: 'kvM3PerH',
      message: 'Kv must be 0.0001 to 10000 m³/h; it was 0.00009.',
    })
    expect([kvProblem(0.0001), kvProblem(10_000)]).toEqual([null, null])
    expect(refused(valveLoss({ ...flow, litresPerMinute: 1_000_001 }))).toEqual({
      code: 'invalid',
      path: 'litresPerMinute',
      message: 'The flow must be 0.000000001 to 1000000 L/min; it was 1000001.',
    })
    expect(refused(valveKv({ litresPerMinute: 1.5, pa: 0, meanC: 60 }))).toEqual({
      code: 'invalid',
      path: 'pa',
      message: 'The pressure must be 0.000001 to 100000000 Pa; it was 0.',
    })
    for (const meanC of [0.9, 110.1])
      expect(refused(valveLoss({ ...flow, meanC }))).toEqual({
        code: 'impossible',
        path: 'meanC',
        message: `Water must be between 1 and 110 °C; it was ${meanC} °C.`,
      })
    for (const meanC of [1, 110]) expect(valveLoss({ ...flow, meanC }).ok).toBe(true)
  })
  it('the loss leads to Kv, flow and density, each in its unit', () => {
    const { why, pa } = answered(valveLoss({ kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 60 }))
    expect(why).toMatchObject({
      says: 'Pressure the valve takes: (flow in m³/h / Kv)² × density / 1000, in bar',
      value: pa,
      unit: 'Pa',
    })
    expect(why.from.slice(0, 2)).toEqual([given('Kv', 0.6, 'm³/h'), given('Water flow', 1.5, 'L/min')])
    expect(why.from).toHaveLength(3)
    const kv = answered(valveKv({ litresPerMinute: 1.5, pa, meanC: 60 }))
    expect(kv.kvM3PerH).toBeCloseTo(0.6, 9)
    expect(kv.why).toMatchObject({
      says: 'Kv: flow in m³/h × √(density / 1000 / pressure in bar)',
      unit: 'm³/h',
    })
    expect(kv.why.from.slice(0, 2)).toEqual([
      given('Water flow', 1.5, 'L/min'),
      given('Pressure to take', pa, 'Pa'),
    ])
  })
})
