import { describe, expect, it } from 'vitest'
import { compressedWater } from '../../../../src-main/engine/water/compressed-water.ts'
import { darcyFriction } from '../../../../src-main/engine/water/friction-factor.ts'
import { waterFlow } from '../../../../src-main/engine/water/water-flow.ts'
import { waterProperties } from '../../../../src-main/engine/water/water-properties.ts'
import { waterViscosityPaS } from '../../../../src-main/engine/water/water-viscosity.ts'
import { answered, refused } from '../../../answered.ts'
import { readOut } from '../../../why-for-tests.ts'

const outside = (waterC: number) => `Water must be between 1 and 110 °C; it was ${waterC} °C.`

describe('the reasons of what water is', () => {
  // IAPWS release tables at 1 atm, 50 °C: 988.05 kg/m3; 4.181 kJ/kgK; 0.5468 mPa s (0.55 in steam tables).
  it('each names its formulation and the temperature', () => {
    const { densityWhy, heatCapacityWhy, viscosityWhy, densityKgPerM3, heatCapacityJPerKgK, viscosityPaS } =
      answered(waterProperties({ waterC: 50 }))
    expect(densityKgPerM3).toBeCloseTo(988.05, 2)
    expect(heatCapacityJPerKgK / 1000).toBeCloseTo(4.181, 2)
    expect(viscosityPaS * 1000).toBeCloseTo(0.547, 3)
    const leaf = { says: 'Temperature of the water', value: 50, unit: '°C', from: [] }
    const industrial = 'IAPWS-IF97 region 1, at 1 atmosphere'
    expect(densityWhy).toEqual({
      says: 'Density of water',
      value: densityKgPerM3,
      unit: 'kg/m³',
      source: industrial,
      from: [leaf],
    })
    expect(heatCapacityWhy).toEqual({
      says: 'Heat capacity of water',
      value: heatCapacityJPerKgK,
      unit: 'J/kgK',
      source: industrial,
      from: [leaf],
    })
    expect(viscosityWhy).toEqual({
      says: 'Viscosity of water',
      value: viscosityPaS,
      unit: 'Pa·s',
      source: 'IAPWS formulation 2008 for viscosity',
      from: [leaf],
    })
  })

  it('are given at 1 and at 110 degrees and not outside', () => {
    for (const waterC of [1, 110]) expect(waterProperties({ waterC }).ok).toBe(true)
    for (const waterC of [0.99, 110.01])
      expect(refused(waterProperties({ waterC }))).toEqual({
        code: 'impossible',
        path: 'waterC',
        message: outside(waterC),
      })
  })

  it('the bare equations hold to their very bounds and say where they do not', () => {
    const water = (kelvin: number, pressureMPa: number) => () => compressedWater({ kelvin, pressureMPa })
    const at = (kelvin: number, densityKgPerM3: number) => () => waterViscosityPaS({ kelvin, densityKgPerM3 })
    for (const held of [water(273.15, 1), water(623.15, 100)])
      expect(held().densityKgPerM3).toBeGreaterThan(500)
    for (const held of [at(273.15, 1000), at(1173.15, 100), at(300, 1300)]) expect(held()).toBeGreaterThan(0)
    expect(water(273.14, 1)).toThrow('No liquid water at 273.14 K and 1 MPa')
    expect(water(623.16, 20)).toThrow('No liquid water at 623.16 K and 20 MPa')
    expect(water(300, 0)).toThrow('No liquid water at 300 K and 0 MPa')
    expect(water(300, 100.1)).toThrow('No liquid water at 300 K and 100.1 MPa')
    expect(at(273.14, 1000)).toThrow('No viscosity of water at 273.14 K and 1000 kg/m3')
    expect(at(1173.16, 100)).toThrow('No viscosity of water at 1173.16 K and 100 kg/m3')
    expect(at(300, 0)).toThrow('No viscosity of water at 300 K and 0 kg/m3')
    expect(at(300, 1300.1)).toThrow('No viscosity of water at 300 K and 1300.1 kg/m3')
  })
})

describe('the reason of a water flow', () => {
  it('divides the heat by heat capacity and drop, and the mass by the density', () => {
    // 4181 x 10 W carry 1 kg/s at 50 °C: within a thousandth of it by the heat capacity of steam tables.
    const flow = answered(waterFlow({ watts: 41_810, flowC: 55, returnC: 45 }))
    expect(flow.kgPerS).toBeCloseTo(1, 3)
    expect(flow.litresPerMinute).toBeCloseTo(60_000 / 988.05, 1)
    const lines = readOut(flow.why).map((line) => line.replace(/: [\d.]+ (?=kg|J|L)/, ': … '))
    expect(lines).toEqual([
      'Water flow: mass / density, by the minute; both properties at the mean of flow and return: … L/min',
      '  Water a second: heat / (heat capacity × (flow - return)): … kg/s',
      '    Heat to carry: 41810 W',
      '    Flow: 55 °C',
      '    Return: 45 °C',
      '    Heat capacity of water: … J/kgK (IAPWS-IF97 region 1, at 1 atmosphere)',
      '      Temperature of the water: 50 °C',
      '  Density of water: … kg/m³ (IAPWS-IF97 region 1, at 1 atmosphere)',
      '      Temperature of the water: 50 °C'.slice(2),
    ])
    expect([flow.why.value, flow.why.from[0]?.value]).toEqual([flow.litresPerMinute, flow.kgPerS])
  })

  const asked = { watts: 1000, flowC: 70, returnC: 50 }
  it.each([
    [{ watts: 0 }, 'invalid', 'watts', 'The heat to carry must be more than 0 W; it was 0.'],
    [{ flowC: 110.1 }, 'impossible', 'flowC', outside(110.1)],
    [{ flowC: 0.9, returnC: 0.5 }, 'impossible', 'flowC', outside(0.9)],
    [{ returnC: 0.9 }, 'impossible', 'returnC', outside(0.9)],
    [{ returnC: 110.1 }, 'impossible', 'returnC', outside(110.1)],
    [
      { flowC: 50 },
      'impossible',
      'flowC',
      'The flow must be warmer than the return; they are 50 °C and 50 °C.',
    ],
  ])('is refused for %j', (change, code, path, message) => {
    expect(refused(waterFlow({ ...asked, ...change }))).toEqual({ code, path, message })
  })

  it('is answered at 1 and 110 degrees, and refused where it is endless', () => {
    expect(waterFlow({ watts: 1, flowC: 110, returnC: 1 }).ok).toBe(true)
    expect(refused(waterFlow({ watts: 1e308, flowC: 50 + 1e-12, returnC: 50 }))).toEqual({
      code: 'impossible',
      message: 'So much heat over so small a drop asks for an endless flow; give a larger drop.',
    })
  })
})

describe('the friction factor', () => {
  it('is 64 / Re up to 2300 itself, and turbulent from 4000 itself', () => {
    const at = (reynolds: number) => darcyFriction({ reynolds, relativeRoughness: 0 })
    expect(at(2300)).toEqual({ frictionFactor: 64 / 2300, regime: 'laminar' })
    expect(at(2300.1).regime).toBe('transition')
    expect(at(3999.9).regime).toBe('transition')
    expect(at(4000).regime).toBe('turbulent')
    // Prandtl's smooth pipe at Re 4000: 1 / √f = 2 log10(4000 √f) - 0.8, f = 0.0399 (Moody chart 0.040).
    expect(at(4000).frictionFactor).toBeCloseTo(0.0399, 4)
    // Halfway in Re, halfway in f.
    expect(at(3150).frictionFactor).toBeCloseTo((64 / 2300 + at(4000).frictionFactor) / 2, 12)
  })

  it('says at what it has none', () => {
    const none = (reynolds: number, relativeRoughness: number) => () =>
      darcyFriction({ reynolds, relativeRoughness })
    expect(none(0, 0.01)).toThrow('No friction factor at Re 0 and relative roughness 0.01')
    expect(none(Infinity, 0)).toThrow('No friction factor at Re Infinity and relative roughness 0')
    expect(none(5000, -0.01)).toThrow('No friction factor at Re 5000 and relative roughness -0.01')
    expect(none(5000, 0.051)).toThrow('No friction factor at Re 5000 and relative roughness 0.051')
    expect(none(5000, 0.05)().regime).toBe('turbulent')
    expect(none(1e-300, 0)().frictionFactor).toBe(64 / 1e-300)
  })
})
