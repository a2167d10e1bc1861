import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { EmitterShape } from '../../domain/item.ts'
import type { BracketHole } from './bracket-holes.ts'
import { listInWords, mmInWords } from './in-words.ts'

type Hung = Pick<EmitterShape, 'widthMm' | 'heightMm'>

/**
 * What to mind about the brackets as the catalogue lists them: holes outside the outline of the emitter, brackets that all stand in one
 * upright line, and a long emitter on fewer than three of them.
 *
 * @param holes on the wall, mm
 * @param emitter its width and height, mm, and its bottom edge above finished floor, mm
 * @param figures the firm's figures: wall.longEmitterMm
 * @source practice, no published source
 * @example bracketWarnings([{ id: 'A1', fromCentreMm: -310, xMm: 590, yMm: 300 }, { id: 'B1', fromCentreMm: 290, xMm: 1190, yMm: 300 }], { widthMm: 600, heightMm: 600, bottomMm: 150 }, { settings: { 'wall.longEmitterMm': { value: 1800 } } }).length // => 1
 */
export function bracketWarnings(
  holes: readonly BracketHole[],
  emitter: Hung & { readonly bottomMm: number },
  figures: Figures,
): readonly string[] {
  const { widthMm, heightMm, bottomMm } = emitter
  const outside = holes.filter(
    ({ fromCentreMm, yMm }) =>
      Math.abs(fromCentreMm) > widthMm / 2 || yMm < bottomMm || yMm > bottomMm + heightMm,
  )
  const lines = new Set(holes.map((hole) => hole.fromCentreMm)).size
  const longMm = figure(figures, 'wall.longEmitterMm')
  return [
    ...(outside.length === 0
      ? []
      : [
          `${outside.length === 1 ? 'Hole' : 'Holes'} ${listInWords(outside.map((hole) => hole.id))} ${outside.length === 1 ? 'lies' : 'lie'} outside the emitter: check its brackets in the catalogue before drilling.`,
        ]),
    ...(lines === 1
      ? [
          'All its brackets stand in one upright line, so that it can tip sideways: check them in the catalogue.',
        ]
      : []),
    ...(lines === 2 && widthMm >= longMm
      ? [
          `It is ${mmInWords(widthMm)} long and hangs on brackets at 2 places; from ${mmInWords(longMm)} a third in the middle is usual.`,
        ]
      : []),
  ]
}
