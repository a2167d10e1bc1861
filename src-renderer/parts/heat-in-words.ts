import { btuPerHourFromW } from '../../src-main/engine/units/exact-units.ts'
import { useAsk } from '../bridge/use-ask.ts'
import { plain } from './figures-in-words.ts'

/** Heat as the firm reads it: whole watts, or whole BTU an hour with the watts behind. */
export function heatInWords(watts: number, first: 'W' | 'BtuPerHour'): string {
  const inWatts = `${plain(Math.round(watts))} W`
  return first === 'W' ? inWatts : `${plain(Math.round(btuPerHourFromW(watts)))} BTU/h (${inWatts})`
}

/** The same by the firm's own choice; watts until it is known. */
export function useHeatInWords(): (watts: number) => string {
  const firm = useAsk('firm.read', {}, { staleMs: Infinity })
  const first = firm.data?.firm?.heatFirst ?? 'W'
  return (watts) => heatInWords(watts, first)
}
