import type { Boxed, Bracket, Emitter, Tapping } from '../../../src-main/domain/item.ts'

/** Valves at the bottom, opposite ends; a blank and a vent at the top. Half-inch: practice, no published source. */
export const bottomOppositeEnds: readonly Tapping[] = [
  { at: 'bottomLeft', thread: 'G1/2', holds: 'valve' },
  { at: 'bottomRight', thread: 'G1/2', holds: 'valve' },
  { at: 'topLeft', thread: 'G1/2', holds: 'blank' },
  { at: 'topRight', thread: 'G1/2', holds: 'vent' },
]

/** From this mass, full of water, the plugs in the box are of the next size; from memory. */
const heavyKg = 60

/** A vent and a blank on O-rings, and a plug and a screw for each hole, meant for masonry. */
export function boxFor(
  brackets: readonly Bracket[],
  { fullKg, finish }: { readonly fullKg: number; readonly finish: Emitter['finish'] },
): readonly Boxed[] {
  const holes = brackets.reduce((sum, bracket) => sum + bracket.holes.length, 0)
  const fitting = { thread: 'G1/2', sealing: 'oRing', finish: finish === 'chrome' ? 'chrome' : 'white' }
  const heavy = fullKg >= heavyKg
  const suits = ['solidMasonry', 'hollowBlock'] as const
  return [
    { kind: 'vent', spec: fitting, count: 1 },
    { kind: 'blank', spec: fitting, count: 1 },
    {
      kind: 'plug',
      spec: heavy ? { bitMm: 10, lengthMm: 60 } : { bitMm: 8, lengthMm: 50 },
      count: holes,
      suits,
    },
    {
      kind: 'screw',
      spec: heavy ? { diameterMm: 8, lengthMm: 80 } : { diameterMm: 6, lengthMm: 70 },
      count: holes,
      suits,
    },
  ]
}

/** A row of one-hole bracket places at one height, named from left to right. */
export function bracketRow(
  row: 'upper' | 'middle' | 'lower',
  acrossMm: readonly number[],
  upMm: number,
): readonly Bracket[] {
  return acrossMm.map((across) => ({
    name: `${row} ${sideOf(across)} bracket`,
    upper: row === 'upper',
    holes: [{ acrossMm: across, upMm }],
  }))
}

export function sideOf(acrossMm: number): 'left' | 'centre' | 'right' {
  if (acrossMm === 0) return 'centre'
  return acrossMm < 0 ? 'left' : 'right'
}
