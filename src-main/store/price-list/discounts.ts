import type { DiscountGroup } from '../../domain/price-list.ts'
import type { ReadTx, WriteTx } from '../tables.ts'

/** What a supplier takes off a group of goods, in basis points; 0 for no group and for one without a discount. */
export type Discounts = (supplierId: string, group: string | null, day: string) => number

/** Every discount there is, to be asked by day. */
export async function readDiscounts(tx: ReadTx): Promise<Discounts> {
  const groups = await readDiscountGroups(tx)
  if (groups.length === 0) return () => 0
  const byGroup = Map.groupBy(groups, ({ supplierId, group }) => `${supplierId} ${group}`)
  return (supplierId, group, day) => {
    const dated = group === null ? undefined : byGroup.get(`${supplierId} ${group}`)
    return dated?.findLast(({ validFrom }) => validFrom <= day)?.basisPoints ?? 0
  }
}

/** Every discount of every group, by supplier, group and day. */
export async function readDiscountGroups(tx: ReadTx): Promise<readonly DiscountGroup[]> {
  const rows = await tx
    .selectFrom('discount_group')
    .selectAll()
    .orderBy('supplier_id')
    .orderBy('group_key')
    .orderBy('valid_from')
    .execute()
  return rows.map((row) => ({
    supplierId: row.supplier_id,
    group: row.group_key,
    name: row.name,
    basisPoints: row.basis_points,
    validFrom: row.valid_from,
  }))
}

/** Sets the discount of a group from a day on; one for that same day is replaced, those of other days stay. */
export async function saveDiscountGroup(tx: WriteTx, wanted: DiscountGroup): Promise<void> {
  const { supplierId, group, validFrom, name, basisPoints } = wanted
  const row = { name, basis_points: basisPoints }
  await tx
    .insertInto('discount_group')
    .values({ supplier_id: supplierId, group_key: group, valid_from: validFrom, ...row })
    .onConflict((conflict) => conflict.columns(['supplier_id', 'group_key', 'valid_from']).doUpdateSet(row))
    .execute()
}

/** A list price less its discount, to the nearest penny, half a penny up. */
export function netOfDiscount(listPence: number, basisPoints: number): number {
  return Math.floor((listPence * (10_000 - basisPoints) + 5_000) / 10_000)
}
