import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { ListRow } from '../../domain/price-list.ts'
import type { Supplier } from '../../domain/price.ts'
import type { InputOf } from '../../contract/requests.ts'
import { priceTable } from '../../exchange/price-export/price-table.ts'
import { chosenRows } from '../../store/price-list/chosen-rows.ts'
import type { ChosenRow } from '../../store/price-list/chosen-rows.ts'
import { reading } from '../../store/store.ts'
import { readSuppliers } from '../../store/suppliers.ts'
import type { UseCase } from '../desk.ts'
import { staleBefore } from '../price-files/stale-before.ts'
import { storeOf } from '../store-of.ts'
import { writeExport } from './write-export.ts'

type Which = InputOf<'price.export'>['which']

/**
 * Suppliers' lists at their prices of today, as listed: the discounts of groups are not taken off. Rows of several suppliers
 * have a column that names them.
 */
export const priceExport: UseCase<'price.export'> = async ({ form, which, out }, desk) => {
  const { supplierId } = which
  const on = await staleBefore(desk)
  if (!on.ok) return on
  const { suppliers, rows } = await reading(storeOf(desk), async (tx) => ({
    suppliers: await readSuppliers(tx),
    rows: await chosenRows(tx, { ...which, on: on.value }, desk.today),
  }))
  const known = knownSupplier(suppliers, supplierId)
  if (!known.ok) return known
  const names = new Map(suppliers.map((one) => [one.supplierId, one.name]))
  const whose = rows.map((row) => names.get(row.supplierId) ?? row.supplierId)
  const table = priceTable(rows.map(listedRow), supplierId === undefined ? whose : undefined)
  return writeExport(table, { form, out, name: `prices-${whichInName(which)}-${desk.today}` }, desk)
}

function knownSupplier(suppliers: readonly Supplier[], supplierId: string | undefined): Outcome<null> {
  if (supplierId === undefined || suppliers.some((one) => one.supplierId === supplierId)) return accept(null)
  const message = `There is no supplier ${supplierId}: name one that supplier.list has.`
  return refuse('not-found', message, 'which.supplierId')
}

/** For the file's name: one list, all of them, or what was found. */
function whichInName({ supplierId, group, text = '', rowNos, linked, stale }: Which): string {
  const isWhole = [group, rowNos, linked, stale].every((one) => one === undefined) && text.trim() === ''
  if (isWhole) return supplierId ?? 'all'
  return supplierId === undefined ? 'found' : `${supplierId}-found`
}

function listedRow(row: ChosenRow): ListRow {
  const { rowNo: _rowNo, supplierId: _supplierId, itemId: _itemId, inForce: _inForce, ...listed } = row
  return listed
}
