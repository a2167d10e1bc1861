import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'

export type VelocityWarning = { readonly kind: 'noise' | 'air'; readonly message: string }

/**
 * A warning when water runs fast enough in a pipe to be heard, or too slowly to carry air along; null between.
 * The faster limit goes by the bore: up to `hydraulics.smallBoreMm`, over `hydraulics.largeBoreMm`, or between the two.
 *
 * @param pipe bore in mm, speed of the water in m/s
 * @param figures the firm's figures
 * @source CIBSE Guide B (1986) table B1.13, by a teaching sheet, for the noise; the rest from memory (see the settings)
 * @example velocityWarning({ insideMm: 13.6, velocityMPerS: 1.2 }, { settings: { 'hydraulics.smallBoreMm': { value: 10 }, 'hydraulics.largeBoreMm': { value: 50 }, 'hydraulics.noiseMPerS': { value: 1 }, 'hydraulics.airMPerS': { value: 0.3 } } }).kind // => 'noise'
 */
export function velocityWarning(
  pipe: { readonly insideMm: number; readonly velocityMPerS: number },
  figures: Figures,
): VelocityWarning | null {
  const { velocityMPerS } = pipe
  const most = figure(figures, noiseSetting(pipe.insideMm, figures))
  const found = `Water runs at ${shown(velocityMPerS)} m/s here`
  if (velocityMPerS > most) {
    return {
      kind: 'noise',
      message: `${found}; above ${most} m/s it may be heard. A wider pipe or less flow is quieter.`,
    }
  }
  const least = figure(figures, 'hydraulics.airMPerS')
  if (velocityMPerS >= least) return null
  return {
    kind: 'air',
    message: `${found}; below ${least} m/s it may leave air behind. Vent the pipe's high points.`,
  }
}

function noiseSetting(insideMm: number, figures: Figures): string {
  if (insideMm <= figure(figures, 'hydraulics.smallBoreMm')) return 'hydraulics.noiseSmallBoreMPerS'
  if (insideMm > figure(figures, 'hydraulics.largeBoreMm')) return 'hydraulics.noiseLargeBoreMPerS'
  return 'hydraulics.noiseMPerS'
}

function shown(velocityMPerS: number): string {
  return String(Number(velocityMPerS.toPrecision(2)))
}
