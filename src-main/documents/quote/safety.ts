import type { Caution } from '../../domain/take-off.ts'

/** Cautions, parted by whom they speak to. */
export type Safety = { readonly forCustomer: readonly string[]; readonly forFitter: readonly string[] }

/** What people in the house should know. The rest is how the work is done. */
const forCustomerIds: readonly string[] = [
  'asbestos',
  'hot-surface',
  'frail-people',
  'gas-appliance',
  'element-electrician',
  'bathroom-zones',
]

export function safetyFor(cautions: readonly Caution[]): Safety {
  const isForCustomer = (caution: Caution) => forCustomerIds.includes(caution.cautionId)
  return {
    forCustomer: cautions.filter(isForCustomer).map((caution) => caution.says),
    forFitter: cautions.filter((caution) => !isForCustomer(caution)).map((caution) => caution.says),
  }
}
