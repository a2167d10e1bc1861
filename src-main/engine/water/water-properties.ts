import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { zeroCInK } from '../units/exact-units.ts'
import { compressedWater } from './compressed-water.ts'
import { waterViscosityPaS } from './water-viscosity.ts'

export type WaterProperties = {
  readonly densityKgPerM3: number
  readonly heatCapacityJPerKgK: number
  readonly viscosityPaS: number
  readonly densityWhy: Derivation
  readonly heatCapacityWhy: Derivation
  readonly viscosityWhy: Derivation
}

const atmosphereMPa = 0.101325
const industrial = 'IAPWS-IF97 region 1, at 1 atmosphere'
const release2008 = 'IAPWS formulation 2008 for viscosity'

/**
 * Density, heat capacity and viscosity of water at one atmosphere, `compressedWater` and `waterViscosityPaS`.
 * A heating system's 1 to 3 bar change density by 0.01 %, and the rest by no more; between 100 and 110 degrees the equations
 * are carried on past boiling at one atmosphere, within 0.01 % of water that is kept liquid. Other formulations differ by
 * 0.05 % in heat capacity (tests/reference/water.test.ts).
 * Refuses a temperature outside 1 to 110 degrees Celsius.
 *
 * @param input temperature of the water in degrees Celsius, 1 to 110
 * @source IAPWS R7-97(2012) for density and heat capacity; IAPWS R12-08 for viscosity
 * @example waterProperties({ waterC: 50 }).value.densityKgPerM3 // => 988.047
 */
export function waterProperties({ waterC }: { readonly waterC: number }): Outcome<WaterProperties> {
  if (!(waterC >= 1 && waterC <= 110)) {
    return refuse('impossible', `Water must be between 1 and 110 °C; it was ${waterC} °C.`, 'waterC')
  }
  const kelvin = waterC + zeroCInK
  const { densityKgPerM3, heatCapacityJPerKgK } = compressedWater({ kelvin, pressureMPa: atmosphereMPa })
  const viscosityPaS = waterViscosityPaS({ kelvin, densityKgPerM3 })
  const from = [given('Temperature of the water', waterC, '°C')]
  return accept({
    densityKgPerM3,
    heatCapacityJPerKgK,
    viscosityPaS,
    densityWhy: because('Density of water', densityKgPerM3, { unit: 'kg/m³', source: industrial, from }),
    heatCapacityWhy: because('Heat capacity of water', heatCapacityJPerKgK, {
      unit: 'J/kgK',
      source: industrial,
      from,
    }),
    viscosityWhy: because('Viscosity of water', viscosityPaS, { unit: 'Pa·s', source: release2008, from }),
  })
}
