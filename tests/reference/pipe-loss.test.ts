import { describe, expect, it } from 'vitest'
import { darcyFriction } from '../../src-main/engine/water/friction-factor.ts'
import { pipeLoss } from '../../src-main/engine/water/pipe-loss.ts'
import { doseLitres, systemContent } from '../../src-main/engine/water/system-dose.ts'
import { answered } from '../answered.ts'

const factor = (reynolds: number, relativeRoughness = 0) =>
  darcyFriction({ reynolds, relativeRoughness }).frictionFactor

describe('the friction factor agrees with CalebBell/fluids, tests/test_friction.py', () => {
  it('Colebrook at Re 1e5, roughness 1e-4', () => {
    expect(factor(1e5, 1e-4)).toBeCloseTo(0.018513866077471648, 13)
  })

  it('smooth pipe at Re 1e5', () => {
    expect(factor(1e5)).toBeCloseTo(0.01798977308427384, 12)
  })

  it('laminar at Re 128', () => {
    expect(factor(128)).toBe(0.5)
  })

  it('von Karman at roughness 1e-4: what Colebrook comes to when Re grows', () => {
    // There the roughness is divided by 3.71, in Colebrook's by 3.7: 2 log10(3.71 / 3.7) on 9.14, 0.05 percent.
    expect(Math.abs(factor(1e14, 1e-4) / 0.01197365149564789 - 1)).toBeLessThan(0.0006)
  })

  it('the loss of one metre: 10 kg/s, 1000 kg/m3, 1e-5 Pa s, 0.1 m, smooth: 63.4345 Pa', () => {
    const velocity = 10 / 1000 / ((Math.PI / 4) * 0.1 ** 2)
    const reynolds = (1000 * velocity * 0.1) / 1e-5
    expect(((factor(reynolds) / 0.1) * 1000 * velocity ** 2) / 2).toBeCloseTo(63.43447321097365, 8)
  })

  it.each([
    ['Haaland', 0.018265053014793857, 0.015],
    ['Swamee and Jain', 0.018452424431901808, 0.005],
    ['Churchill 1977', 0.018462624566280075, 0.005],
    ['Serghides, second form', 0.018486377560664482, 0.002],
    ['Serghides, first form', 0.01851358983180063, 0.0001],
    ['Buzzelli', 0.018513948401365277, 0.0001],
  ])('%s at Re 1e5, roughness 1e-4 lies as near as its formula is known to', (_, published, share) => {
    expect(Math.abs(factor(1e5, 1e-4) / published - 1)).toBeLessThan(share)
  })

  it('Blasius at Re 1e4, smooth: 0.03164, within 3 % (its own accuracy)', () => {
    expect(Math.abs(factor(1e4) / 0.03164 - 1)).toBeLessThan(0.03)
  })
})

describe('Colebrook agrees with a root found by SciPy’s brentq', () => {
  it.each([
    [4000, 0, 0.03990701405563491],
    [4000, 0.001, 0.040910389862846126],
    [1e4, 0, 0.030882950353487697],
    [16459, 1.5e-6 / 0.0136, 0.027381456868321687],
    [1e6, 0.01, 0.03796474187616005],
    [1e8, 0.05, 0.07155090409092506],
  ])('Re %d, roughness %d', (reynolds, roughness, expected) => {
    expect(factor(reynolds, roughness)).toBeCloseTo(expected, 11)
  })
})

describe('pipe losses agree with losses worked apart (IF97 water at 60 degrees, Colebrook, 1.5 µm drawn copper)', () => {
  const at = (litresPerHour: number, insideMm: number) =>
    answered(
      pipeLoss({ insideMm, lengthM: 1, roughnessMm: 0.0015, meanC: 60, litresPerMinute: litresPerHour / 60 }),
    )

  it('300 L/h in 15 mm tube (13.6 mm bore): 0.5737 m/s, Re 16459, f 0.027381, 325.7 Pa/m', () => {
    const loss = at(300, 13.6)
    expect(loss.velocityMPerS).toBeCloseTo(0.5737, 4)
    expect(loss.reynolds).toBeCloseTo(16459, 0)
    expect(loss.frictionFactor).toBeCloseTo(0.027381, 6)
    expect(loss.perMetrePa).toBeCloseTo(325.7, 1)
    expect(loss.regime).toBe('turbulent')
  })

  it.each([
    [500, 0.4334, 121.4],
    [1000, 0.8668, 413.2],
  ])('%i L/h in 22 mm tube (20.2 mm bore): %d m/s, %d Pa/m', (litresPerHour, velocity, perMetrePa) => {
    const loss = at(litresPerHour, 20.2)
    expect(loss.velocityMPerS).toBeCloseTo(velocity, 4)
    expect(loss.perMetrePa).toBeCloseTo(perMetrePa, 1)
  })

  it.each([
    [6.8, 0.0363],
    [8.8, 0.0608],
    [10.8, 0.0916],
    [13.6, 0.1453],
    [20.2, 0.3205],
    [26.2, 0.5391],
    [32.6, 0.8347],
  ])(
    'a bore of %d mm carries %d L/s at 1 m/s (EN 1057 tube, content worked apart)',
    (insideMm, litresPerS) => {
      // Worked from the printed L/s, which has four decimals: 0.2 % for the smallest.
      expect(Math.abs(at(litresPerS * 3600, insideMm).velocityMPerS - 1)).toBeLessThan(0.002)
    },
  )

  it('laminar flow loses what Hagen and Poiseuille say: 32 mu v / D2 a metre', () => {
    const loss = at(20, 20.2)
    expect(loss.regime).toBe('laminar')
    // 0.46604 mPa s at 60 degrees: IF97.
    expect(
      Math.abs(loss.perMetrePa / ((32 * 0.46604e-3 * loss.velocityMPerS) / 0.0202 ** 2) - 1),
    ).toBeLessThan(0.001)
  })
})

describe('system contents agree with a chemical supplier’s allowances (trade sheet)', () => {
  it.each([
    [11, 'steel panels', 264],
    [14, 'cast iron', 336],
    [6, 'convectors or small bore', 144],
    [23, 'underfloor', 552],
  ])('%i L/kW, %s: a boiler of 24 kW has %i L', (litresPerKW, _, expected) => {
    expect(answered(systemContent({ boilerKW: 24, litresPerKW }))).toMatchObject({
      litres: expected,
      surveyed: false,
    })
  })

  it('16 panels at 7 L are 112 L (ova.it.com, a weak source); 1 L treats 100 L (trade, from memory)', () => {
    const content = answered(systemContent({ surveyedLitres: 16 * 7, litresPerKW: 11 }))
    expect(content.litres).toBe(112)
    const dose = doseLitres({ contentLitres: content.litres, drainedShare: 1, treatedLitresPerLitre: 100 })
    expect(answered(dose).litres).toBeCloseTo(1.12, 9)
  })
})
