import { refuse } from '../../domain/outcome.ts'
import type { ListRow } from '../../domain/price-list.ts'
import { priceTable } from '../../exchange/price-export/price-table.ts'
import { chosenRows } from '../../store/price-list/chosen-rows.ts'
import type { ChosenRow } from '../../store/price-list/chosen-rows.ts'
import { reading } from '../../store/store.ts'
import { readSuppliers } from '../../store/suppliers.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { writeExport } from './write-export.ts'

/** One supplier's list at its prices of today, as listed: the discounts of its groups are not taken off. */
export const priceExport: UseCase<'price.export'> = async ({ form, which, out }, desk) => {
  const { supplierId } = which
  if (supplierId === undefined) {
    const message = 'A price list is that of one supplier: name whose list is to be written.'
    return refuse('invalid', message, 'which.supplierId')
  }
  const { known, rows } = await reading(storeOf(desk), async (tx) => ({
    known: (await readSuppliers(tx)).some((supplier) => supplier.supplierId === supplierId),
    rows: await chosenRows(tx, which, desk.today),
  }))
  if (!known) {
    const message = `There is no supplier ${supplierId}: name one that supplier.list has.`
    return refuse('not-found', message, 'which.supplierId')
  }
  const table = priceTable(rows.map(listedRow))
  return writeExport(table, { form, out, name: `prices-${supplierId}-${desk.today}` }, desk)
}

function listedRow(row: ChosenRow): ListRow {
  const { rowNo: _rowNo, supplierId: _supplierId, itemId: _itemId, inForce: _inForce, ...listed } = row
  return listed
}
