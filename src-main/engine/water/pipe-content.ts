import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

export type PipeMaterial = 'copper' | 'plastic' | 'steel'
/** The bores of a material's sizes, in mm. */
export type PipeBores = {
  readonly material: PipeMaterial
  readonly source: string
  readonly sizes: readonly { readonly outsideMm: number; readonly insideMm: number }[]
}
/** A run of pipe, by its bore or by its size. */
export type PipeRun =
  | { readonly insideMm: number; readonly lengthM: number }
  | { readonly material: PipeMaterial; readonly outsideMm: number; readonly lengthM: number }
export type PipeContent = { readonly litres: number; readonly why: Derivation }

/**
 * The water in a run of pipe, L: pi / 4 x bore^2 x length, the bore measured or that of its size.
 * Refuses a bore not above 0, a length below 0, and a size that the bores do not have.
 *
 * @param run bore in mm, or material and outside diameter in mm; length in m, flow and return together
 * @param bores the bores of the sizes that are known
 * @source volume of a cylinder; bores by their own sources
 * @example pipeContent({ insideMm: 13.6, lengthM: 10 }, []).value.litres // => 1.453
 */
export function pipeContent(run: PipeRun, bores: readonly PipeBores[]): Outcome<PipeContent> {
  const bore = boreOf(run, bores)
  if (!bore.ok) return bore
  if (run.lengthM < 0) {
    return refuse('invalid', `A run of pipe must be 0 m long or more; it was ${run.lengthM}.`, 'lengthM')
  }
  // A millimetre squared by a metre is a thousandth of a litre.
  const litres = ((Math.PI / 4) * bore.value.value ** 2 * run.lengthM) / 1000
  const why = because(`Pipe, ${nameOf(run)}: π / 4 × bore² × length`, litres, {
    unit: 'L',
    from: [bore.value.why, given('Length', run.lengthM, 'm')],
  })
  return accept({ litres, why })
}

type Bore = { readonly value: number; readonly why: Derivation }

function boreOf(run: PipeRun, bores: readonly PipeBores[]): Outcome<Bore> {
  if ('insideMm' in run) {
    const { insideMm } = run
    if (insideMm > 0) return accept({ value: insideMm, why: given('Bore', insideMm, 'mm') })
    return refuse('invalid', `The bore must be more than 0 mm; it was ${insideMm}.`, 'insideMm')
  }
  const { material, outsideMm } = run
  const known = bores.find((one) => one.material === material)
  const size = known?.sizes.find((one) => one.outsideMm === outsideMm)
  if (known !== undefined && size !== undefined) {
    const { insideMm } = size
    return accept({ value: insideMm, why: given('Bore', insideMm, 'mm', known.source) })
  }
  const sizes = known?.sizes.map((one) => one.outsideMm).join(', ') ?? 'none'
  const message = `The bore of ${nameOf(run)} is not known; known sizes of ${material} are ${sizes}. Give the bore itself.`
  return refuse('not-found', message, 'outsideMm')
}

function nameOf(run: PipeRun): string {
  return 'insideMm' in run ? `bore ${run.insideMm} mm` : `${run.material} ${run.outsideMm} mm`
}
