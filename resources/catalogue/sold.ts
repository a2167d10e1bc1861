import type { Emitter, Part } from '../../src-main/domain/item.ts'

export type SellerId = 'counter' | 'warehouse' | 'fixings'

/** What a pack holds, in the item's unit, and what it costs before tax, in pence, before a seller's own rates. */
export type Pack = readonly [holds: number, pence: number]

/** An item, the packs it comes in, and who sells it. */
export type Sold<T extends Emitter | Part = Emitter | Part> = {
  readonly item: T
  readonly packs: readonly Pack[]
  readonly sellers: readonly SellerId[]
}

export type SoldPart = Sold<Part>
export type SoldEmitter = Sold<Emitter>

export const everySeller: readonly SellerId[] = ['counter', 'warehouse', 'fixings']
export const counterAndWarehouse: readonly SellerId[] = ['counter', 'warehouse']
export const counterAndFixings: readonly SellerId[] = ['counter', 'fixings']

/** To the nearest multiple of a step. */
export function toNearest(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(6))
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
