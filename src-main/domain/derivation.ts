import { z } from 'zod'

/**
 * Why a figure is what it is: a sentence a fitter understands, the figure, and the figures that went in.
 * Walking `from` to the leaves gives every number that was used.
 */
export type Derivation = {
  readonly says: string
  readonly value: number | string
  readonly unit?: string
  readonly from: readonly Derivation[]
  readonly source?: string
}

export const derivation: z.ZodType<Derivation> = z
  .lazy(() =>
    z
      .strictObject({
        says: z.string().min(1),
        value: z.union([z.number(), z.string()]),
        unit: z.string().optional(),
        from: z.array(derivation).readonly(),
        source: z.string().optional(),
      })
      .readonly(),
  )
  .meta({ id: 'Derivation' })

/** A figure worked out from others. */
export function because(
  says: string,
  value: number | string,
  more: { readonly unit?: string; readonly from?: readonly Derivation[]; readonly source?: string } = {},
): Derivation {
  return {
    says,
    value,
    ...(more.unit === undefined ? {} : { unit: more.unit }),
    from: more.from ?? [],
    ...(more.source === undefined ? {} : { source: more.source }),
  }
}

/** A figure somebody gave: measured on site, printed in a list, or set by the firm. */
export function given(says: string, value: number | string, unit?: string, source?: string): Derivation {
  return because(says, value, {
    ...(unit === undefined ? {} : { unit }),
    ...(source === undefined ? {} : { source }),
  })
}
