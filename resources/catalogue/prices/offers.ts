import type { SupplierPrice } from '../../../src-main/domain/price.ts'
import type { SellerId, Sold } from '../sold.ts'
import { codeMaker, numberOf } from './codes.ts'

/** How each seller's prices lie to the generic ones. */
const sellerRatio: Readonly<Record<SellerId, number>> = { counter: 1.04, warehouse: 0.95, fixings: 0.97 }
/** No two sellers differ by the same share on everything: up to this many hundredths either way. */
const swing = 3

const firstDay = '2026-01-05'
/** Copper went up in the year: what was asked before is kept. */
const copperDay = '2026-07-06'
const copperBeforeRatio = 0.95

/** From how many packs the warehouse takes off how much. */
const breakRules = {
  emitter: { fromPacks: 5, ratio: 0.96 },
  valve: { fromPacks: 10, ratio: 0.95 },
  pipe: { fromPacks: 10, ratio: 0.94 },
} as const

/** Every price of every seller for every pack, in the order of the items. */
export function offersOf(sold: readonly Sold[]): readonly SupplierPrice[] {
  const code = codeMaker()
  return sold.flatMap((one) =>
    one.sellers.flatMap((supplierId) =>
      one.packs.flatMap(([holds, pence]) => {
        const { itemId } = one.item
        const asked = { itemId, supplierId, code: code(supplierId, itemId, holds), packHolds: holds }
        return pricesOf(one, asked, Math.round(pence * ratioOf(supplierId, itemId)))
      }),
    ),
  )
}

type Asked = Pick<SupplierPrice, 'itemId' | 'supplierId' | 'code' | 'packHolds'>

function pricesOf({ item }: Sold, asked: Asked, packPence: number): readonly SupplierPrice[] {
  const now = { ...asked, packPence, ...breaksOf(item.kind, asked, packPence) }
  if (item.kind !== 'pipe' || item.spec.material !== 'copper') return [{ ...now, validFrom: firstDay }]
  const before = Math.round(packPence * copperBeforeRatio)
  return [
    {
      ...asked,
      packPence: before,
      ...breaksOf(item.kind, asked, before),
      validFrom: firstDay,
      validTo: '2026-07-05',
    },
    { ...now, validFrom: copperDay },
  ]
}

function breaksOf(
  kind: Sold['item']['kind'],
  asked: Asked,
  packPence: number,
): Pick<SupplierPrice, 'breaks'> {
  if (asked.supplierId !== 'warehouse' || !(kind in breakRules)) return {}
  const { fromPacks, ratio } = breakRules[kind as keyof typeof breakRules]
  return { breaks: [{ fromPacks, packPence: Math.round(packPence * ratio) }] }
}

function ratioOf(supplierId: SellerId, itemId: string): number {
  const hundredths = (numberOf(`${itemId} at ${supplierId}`) % (2 * swing + 1)) - swing
  return sellerRatio[supplierId] * (1 + hundredths / 100)
}
