import type { Override } from '../../../src-main/domain/job.ts'
import { typedNumber, typedPence } from '../../draft/typed-number.ts'
import { words as all } from './price.words.ts'

const words = all.typed

/** A change by hand as it stands in its boxes. */
export type TypedOverride = {
  readonly quantity: string
  readonly price: string
  readonly itemId: string | undefined
  readonly reason: string
}
type Faults = Readonly<Partial<Record<'quantity' | 'price' | 'reason' | 'whole', string>>>
type Read = { readonly override: Omit<Override, 'lineKey'> | null; readonly faults: Faults }

/** The change that was typed, or what is still wrong with it beside each box. */
export function overrideTyped({ quantity: many, price, itemId, reason: why }: TypedOverride): Read {
  const quantity = typedNumber(many)
  const netPence = typedPence(price)
  const reason = why.trim()
  const badQuantity = quantity !== undefined && (typeof quantity !== 'number' || quantity <= 0)
  const badPrice = netPence !== undefined && (typeof netPence !== 'number' || netPence < 0)
  const nothing = quantity === undefined && netPence === undefined && itemId === undefined
  const faults: Faults = {
    ...(badQuantity ? { quantity: words.quantity } : {}),
    ...(badPrice ? { price: words.price } : {}),
    ...(reason === '' ? { reason: words.reason } : {}),
    ...(nothing ? { whole: words.whole } : {}),
  }
  if (Object.keys(faults).length > 0) return { override: null, faults }
  return {
    override: {
      ...(typeof quantity === 'number' ? { quantity } : {}),
      ...(itemId === undefined ? {} : { itemId }),
      ...(typeof netPence === 'number' ? { netPence } : {}),
      reason,
    },
    faults,
  }
}
