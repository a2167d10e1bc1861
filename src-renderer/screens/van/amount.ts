import { howMuchOf } from '../../parts/figures-in-words.ts'

/** So much of something: 3, 12 m, 1 litre. */
export function amount(quantity: number, unit: string): string {
  return unit === 'L' && quantity === 1 ? '1 litre' : howMuchOf(quantity, unit)
}

/** The unit beside a box to fill in; things that are counted have none. */
export function unitWord(unit: string): string {
  if (unit === 'each') return ''
  return unit === 'L' ? 'litres' : unit === 'm2' ? 'm²' : unit
}
