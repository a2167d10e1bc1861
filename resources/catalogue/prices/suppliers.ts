import type { Supplier } from '../../../src-main/domain/price.ts'
import type { SellerId } from '../sold.ts'

const invented = 'An invented supplier with generic prices: put in your own.'

/** Three invented suppliers: a local counter that delivers, a warehouse for emitters and valves, and one for fixings. */
export const suppliers: readonly (Supplier & { readonly supplierId: SellerId })[] = [
  {
    supplierId: 'counter',
    name: 'Sampleton Plumbing Counter',
    note: invented,
    carriagePence: 650,
    carriageFreeFromPence: 7500,
  },
  {
    supplierId: 'warehouse',
    name: 'Example Radiator Warehouse',
    note: invented,
    carriagePence: 2400,
    carriageFreeFromPence: 30000,
    minimumOrderPence: 4000,
  },
  {
    supplierId: 'fixings',
    name: 'Inventford Fixings and Sundries',
    note: invented,
    carriagePence: 495,
    carriageFreeFromPence: 5000,
    minimumOrderPence: 1000,
  },
]
