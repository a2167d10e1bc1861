import { describe, expect, it } from 'vitest'
import { compressedWater } from '../../src-main/engine/water/compressed-water.ts'
import { waterFlow } from '../../src-main/engine/water/water-flow.ts'
import { waterProperties } from '../../src-main/engine/water/water-properties.ts'
import { waterViscosityPaS } from '../../src-main/engine/water/water-viscosity.ts'
import { answered } from '../answered.ts'

const at = (waterC: number) => answered(waterProperties({ waterC }))
const apart = (found: number, expected: number) => Math.abs(found / expected - 1)

describe('liquid water agrees with the check values of IAPWS R7-97(2012), table 5 (as in jjgomera/iapws, test.py)', () => {
  it.each([
    [300, 3, 0.00100215168, 4.17301218],
    [300, 80, 0.000971180894, 4.01008987],
    [500, 3, 0.001202418, 4.65580682],
  ])('at %d K and %d MPa', (kelvin, pressureMPa, volume, heatCapacity) => {
    const water = compressedWater({ kelvin, pressureMPa })
    expect(1 / water.densityKgPerM3).toBeCloseTo(volume, 11)
    expect(water.heatCapacityJPerKgK / 1000).toBeCloseTo(heatCapacity, 8)
  })
})

describe('viscosity agrees with the check values of IAPWS R12-08, table 4 (as in jjgomera/iapws, test.py)', () => {
  it.each([
    [298.15, 998, 889.7351],
    [298.15, 1200, 1437.649467],
    [373.15, 1000, 307.883622],
    [433.15, 1, 14.538324],
    [433.15, 1000, 217.685358],
    [873.15, 1, 32.619287],
    [873.15, 100, 35.802262],
    [873.15, 600, 77.430195],
    [1173.15, 1, 44.217245],
    [1173.15, 100, 47.640433],
  ])('at %d K and %d kg/m3', (kelvin, densityKgPerM3, micropascalSeconds) => {
    expect(waterViscosityPaS({ kelvin, densityKgPerM3 }) * 1e6).toBeCloseTo(micropascalSeconds, 6)
  })
})

describe('water at one atmosphere agrees with a table of the same formulations run by jjgomera/iapws', () => {
  // Degrees, kg/m3, kJ/kgK, mPa s. It pins our coefficients; the independent check is the next block.
  it.each([
    [1, 999.903, 4.216, 1.73102],
    [5, 999.967, 4.2049, 1.51817],
    [10, 999.702, 4.1954, 1.3059],
    [20, 998.206, 4.1848, 1.0016],
    [30, 995.652, 4.18, 0.79722],
    [40, 992.224, 4.1786, 0.65273],
    [50, 988.047, 4.1796, 0.54652],
    [60, 983.211, 4.1828, 0.46604],
    [70, 977.779, 4.1881, 0.40356],
    [75, 974.857, 4.1915, 0.37742],
    [80, 971.803, 4.1955, 0.35406],
    [90, 965.319, 4.205, 0.31418],
    [95, 961.895, 4.2106, 0.29709],
  ])('%i degrees, at the printed precision', (waterC, rho, c, mu) => {
    const water = at(waterC)
    expect(water.densityKgPerM3).toBeCloseTo(rho, 3)
    expect(water.heatCapacityJPerKgK / 1000).toBeCloseTo(c, 4)
    expect(water.viscosityPaS * 1000).toBeCloseTo(mu, 4)
  })

  // Under enough pressure not to boil: 1.5 bar at 100 and 105 degrees, 2 bar at 110, 2.5 bar at 10 and 80.
  it.each([
    [100, 958.377, 4.2165, 0.2816],
    [105, 954.722, 4.2232, 0.26749],
    [110, 950.977, 4.2302, 0.25463],
    [10, 999.773, 4.1949, 1.30577],
    [80, 971.869, 4.1952, 0.3541],
  ])(
    '%i degrees under a system’s pressure: density within 0.01 percent, the rest within 0.02',
    (waterC, rho, c, mu) => {
      const water = at(waterC)
      expect(apart(water.densityKgPerM3, rho)).toBeLessThan(0.0001)
      expect(apart(water.heatCapacityJPerKgK, c * 1000)).toBeLessThan(0.0002)
      expect(apart(water.viscosityPaS, mu / 1000)).toBeLessThan(0.0002)
    },
  )
})

describe('water agrees with other formulations', () => {
  it.each([
    [298.15, 997.047013, 4181.44618, 889.996774],
    [375, 957.00971, 4217.74697, 276.207245],
  ])(
    'IAPWS SR6-08(2011), check values at %d K: within 0.05 percent',
    (kelvin, density, heatCapacity, micropascalSeconds) => {
      const water = at(kelvin - 273.15)
      expect(apart(water.densityKgPerM3, density)).toBeLessThan(0.0001)
      expect(apart(water.heatCapacityJPerKgK, heatCapacity)).toBeLessThan(0.0005)
      expect(apart(water.viscosityPaS * 1e6, micropascalSeconds)).toBeLessThan(0.0005)
    },
  )

  it('IAPWS-95 at 50 degrees, 988.035 kg/m3 and 4.1813 kJ/kgK: within 0.05 percent', () => {
    expect(apart(at(50).densityKgPerM3, 988.035)).toBeLessThan(0.0005)
    expect(apart(at(50).heatCapacityJPerKgK, 4181.3)).toBeLessThan(0.0005)
  })
})

describe('water flow agrees with flows worked apart from IF97 properties', () => {
  it.each([
    [1000, 75, 65, 87.91, 2],
    [1000, 55, 45, 87.18, 2],
    [1000, 80, 60, 43.96, 2],
    [1000, 42.5, 37.5, 173.66, 2],
    [6000, 70, 50, 262.6, 1],
  ])('%i W at %d/%d takes %d L/h', (watts, flowC, returnC, expected, decimals) => {
    const { litresPerMinute } = answered(waterFlow({ watts, flowC, returnC }))
    expect(litresPerMinute * 60).toBeCloseTo(expected, decimals)
  })

  it('the installer’s rule of 0.86 W/K litres an hour (3600/4186) holds within 3 % at 70 degrees', () => {
    const { litresPerMinute } = answered(waterFlow({ watts: 1000, flowC: 75, returnC: 65 }))
    expect(apart(litresPerMinute * 60, 86)).toBeLessThan(0.03) // the rule leaves density out
  })

  it('the answer carries the properties at the mean temperature', () => {
    const flow = answered(waterFlow({ watts: 1000, flowC: 60, returnC: 40 }))
    expect(flow.densityKgPerM3).toBeCloseTo(988.047, 3) // IF97 at 50 degrees
    expect(flow.heatCapacityJPerKgK).toBeCloseTo(4179.6, 0)
  })
})
