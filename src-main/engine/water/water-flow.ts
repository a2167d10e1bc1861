import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import { waterProperties } from './water-properties.ts'
import type { WaterProperties } from './water-properties.ts'

export type WaterFlowInput = { readonly watts: number; readonly flowC: number; readonly returnC: number }
export type WaterFlowAnswer = {
  readonly kgPerS: number
  readonly litresPerMinute: number
  readonly densityKgPerM3: number
  readonly heatCapacityJPerKgK: number
  readonly why: Derivation
}

/**
 * The water flow that carries so many watts: kg/s = W / (c (flow - return)); L/min = 60000 kg/s / rho; both properties
 * at the mean of flow and return.
 * Refuses a flow not above the return, watts not above 0, and water outside 1 to 110 degrees Celsius.
 *
 * @param input watts 0 to 1000000; flow and return in degrees Celsius, 1 to 110
 * @source heat balance of a heating circuit; water by `waterProperties`
 * @example waterFlow({ watts: 1000, flowC: 75, returnC: 65 }).value.litresPerMinute // => 1.465
 */
export function waterFlow(input: WaterFlowInput): Outcome<WaterFlowAnswer> {
  const { watts, flowC, returnC } = input
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const water = waterProperties({ waterC: (flowC + returnC) / 2 })
  if (!water.ok) return water
  const { densityKgPerM3, heatCapacityJPerKgK } = water.value
  const kgPerS = watts / (heatCapacityJPerKgK * (flowC - returnC))
  const litresPerMinute = (kgPerS / densityKgPerM3) * 60_000
  const why = whyOf(input, water.value, { kgPerS, litresPerMinute })
  return acceptFinite(
    { kgPerS, litresPerMinute, densityKgPerM3, heatCapacityJPerKgK, why },
    'So much heat over so small a drop asks for an endless flow; give a larger drop.',
  )
}

type Flows = { readonly kgPerS: number; readonly litresPerMinute: number }

function whyOf(
  input: WaterFlowInput,
  water: WaterProperties,
  { kgPerS, litresPerMinute }: Flows,
): Derivation {
  const mass = because('Water a second: heat / (heat capacity × (flow - return))', kgPerS, {
    unit: 'kg/s',
    from: [
      given('Heat to carry', input.watts, 'W'),
      given('Flow', input.flowC, '°C'),
      given('Return', input.returnC, '°C'),
      water.heatCapacityWhy,
    ],
  })
  const says = 'Water flow: mass / density, by the minute; both properties at the mean of flow and return'
  return because(says, litresPerMinute, { unit: 'L/min', from: [mass, water.densityWhy] })
}

function problemIn({ watts, flowC, returnC }: WaterFlowInput): Outcome<never> | null {
  if (watts <= 0)
    return refuse('invalid', `The heat to carry must be more than 0 W; it was ${watts}.`, 'watts')
  for (const [path, waterC] of [['flowC', flowC] as const, ['returnC', returnC] as const]) {
    if (waterC < 1 || waterC > 110) {
      return refuse('impossible', `Water must be between 1 and 110 °C; it was ${waterC} °C.`, path)
    }
  }
  if (flowC > returnC) return null
  const message = `The flow must be warmer than the return; they are ${flowC} °C and ${returnC} °C.`
  return refuse('impossible', message, 'flowC')
}
