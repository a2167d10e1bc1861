import { supplier as supplierSchema } from '../domain/price.ts'
import type { Supplier } from '../domain/price.ts'
import { readRow } from './read-row.ts'
import type { ReadTx, Tables } from './tables.ts'

/** Every supplier, by name. */
export async function readSuppliers(tx: ReadTx): Promise<readonly Supplier[]> {
  const rows = await tx.selectFrom('supplier').selectAll().orderBy('name').orderBy('supplier_id').execute()
  return rows.map(supplierOf)
}

export function supplierRow(supplier: Supplier, edition: string | null): Tables['supplier'] {
  return {
    supplier_id: supplier.supplierId,
    name: supplier.name,
    note: supplier.note ?? null,
    carriage_pence: supplier.carriagePence,
    carriage_free_from_pence: supplier.carriageFreeFromPence ?? null,
    minimum_order_pence: supplier.minimumOrderPence ?? null,
    edition,
  }
}

function supplierOf(row: Tables['supplier']): Supplier {
  const supplier = {
    supplierId: row.supplier_id,
    name: row.name,
    ...(row.note === null ? {} : { note: row.note }),
    carriagePence: row.carriage_pence,
    ...(row.carriage_free_from_pence === null ? {} : { carriageFreeFromPence: row.carriage_free_from_pence }),
    ...(row.minimum_order_pence === null ? {} : { minimumOrderPence: row.minimum_order_pence }),
  }
  return readRow(supplierSchema, supplier, `The supplier ${row.supplier_id}`)
}
