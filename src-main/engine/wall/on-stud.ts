import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Studs } from '../../domain/wall.ts'

/** Where a hole falls: well inside a stud, so near its edge that neither a screw nor an anchor is good, or clear of it. */
export type StudPlace = 'stud' | 'edge' | 'clear'

/**
 * Where a hole falls on a row of studs. d = distance from the nearest stud's middle, b = stud width, t = edge distance: on the
 * stud when d <= b/2 - t, at its edge when d < b/2 + t, else clear. Studs stand at first + k spacing, k = 0, 1, 2 and on.
 *
 * @param xMm place of the hole from the wall's left end, mm
 * @param studs first stud's middle, spacing (above 0) and width, mm
 * @param figures the firm's figures: wall.studEdgeMm
 * @source practice, no published source
 * @example studPlace(1410, { firstMm: 200, spacingMm: 400, widthMm: 47 }, { settings: { 'wall.studEdgeMm': { value: 10 } } }) // => "stud"
 */
export function studPlace(xMm: number, studs: Studs, figures: Figures): StudPlace {
  const nth = Math.max(0, Math.round((xMm - studs.firstMm) / studs.spacingMm))
  const fromMiddle = Math.abs(xMm - studs.firstMm - nth * studs.spacingMm)
  const edge = figure(figures, 'wall.studEdgeMm')
  if (fromMiddle <= studs.widthMm / 2 - edge) return 'stud'
  return fromMiddle < studs.widthMm / 2 + edge ? 'edge' : 'clear'
}

/**
 * The studs as a reason.
 * @param studs first stud's middle, spacing and width, mm
 * @param figures the firm's figures: wall.studEdgeMm
 * @source practice, no published source
 * @example studsWhy({ firstMm: 200, spacingMm: 400, widthMm: 47 }, { settings: { 'wall.studEdgeMm': { value: 10 } } }).value // => 400
 */
export function studsWhy(studs: Studs, figures: Figures): Derivation {
  return because('Studs behind the board, one at each spacing.', studs.spacingMm, {
    unit: 'mm',
    from: [
      given('Middle of the first stud, from the left end of the wall', studs.firstMm, 'mm', 'survey'),
      given('Spacing of the studs', studs.spacingMm, 'mm', 'survey'),
      given('Width of a stud', studs.widthMm, 'mm', 'survey'),
      figureWhy(figures, 'wall.studEdgeMm'),
    ],
  })
}
