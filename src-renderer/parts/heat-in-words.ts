import type { Quote } from '../../src-main/domain/quote.ts'
import { btuPerHourFromW } from '../../src-main/engine/units/exact-units.ts'
import { useAsk } from '../bridge/use-ask.ts'
import { plain } from './figures-in-words.ts'
import { words } from './words.ts'

export type HeatFirst = 'W' | 'BtuPerHour'

/** Heat as the firm reads it: whole watts, or whole BTU an hour with the watts behind. */
export function heatInWords(watts: number, first: HeatFirst): string {
  const inWatts = words.heat.w(plain(Math.round(watts)))
  return first === 'W' ? inWatts : words.heat.btuFirst(plain(Math.round(btuPerHourFromW(watts))), inWatts)
}

type Warmth = Pick<Quote['warmth'][number], 'roomName' | 'needW' | 'givesW' | 'rough' | 'enough' | 'says'>

/** Whether a room is warm, as the engine says it; with BTU an hour before the watts where the firm reads those first. */
export function warmthInWords(
  { roomName, needW, givesW, rough, enough, says }: Warmth,
  first: HeatFirst,
): string {
  if (first === 'W') return says
  const heat = (watts: number) => heatInWords(watts, first)
  const need = words.heat.need({ gives: heat(givesW), needs: heat(needW), roomName, rough })
  return enough ? words.heat.enough(need) : words.heat.short(heat(needW - givesW), need)
}

/** A sentence about emitters, with each heat in watts as the firm reads it. */
export function withHeat(says: string, first: HeatFirst): string {
  if (first === 'W') return says
  return says.replaceAll(/\b(\d+) W(?= (?:short|more)\b)/g, (_, watts: string) =>
    heatInWords(Number(watts), first),
  )
}

/** Which unit of heat the firm reads first; watts until it is known. */
export function useHeatFirst(): HeatFirst {
  const firm = useAsk('firm.read', {}, { staleMs: Infinity })
  return firm.data?.firm?.heatFirst ?? 'W'
}

/** Heat in words by the firm's own choice. */
export function useHeatInWords(): (watts: number) => string {
  const first = useHeatFirst()
  return (watts) => heatInWords(watts, first)
}
