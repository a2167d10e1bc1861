import type { Emitter, EmitterShape } from '../../domain/item.ts'

/**
 * The part of a catalogue emitter that the wall minds.
 * @param emitter of the catalogue
 * @source practice, no published source
 * @example shapeOf({ itemId: 'a', widthMm: 600, heightMm: 1200 }).widthMm // => 600
 */
export function shapeOf(emitter: Emitter): EmitterShape {
  const { widthMm, heightMm, depthMm, wallGapMm, connectionOffWallMm, pipeCentresMm, ratedW, rating } =
    emitter
  const { exponent, waterLitres, dryKg, brackets, tappings, box } = emitter
  const sizes = { widthMm, heightMm, depthMm, wallGapMm, connectionOffWallMm, pipeCentresMm }
  const rest = { ratedW, exponent, waterLitres, dryKg, brackets, tappings, box }
  return rating === undefined ? { ...sizes, ...rest } : { ...sizes, ...rest, rating }
}

/**
 * How an emitter's form changes its place and its load: people lean on towel rails, not on radiators; a curved rail stands
 * out a little more.
 * @param emitter its form
 * @source practice, no published source
 * @example formOnWall({ form: { kind: 'panel' } }).extraKg // => 0
 */
export function formOnWall({ form }: Pick<Emitter, 'form'>): {
  readonly curved: boolean
  readonly extraKg?: number
} {
  return form.kind === 'towelRail' ? { curved: form.curve === 'curved' } : { curved: false, extraKg: 0 }
}
