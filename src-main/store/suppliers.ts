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

export type SupplierInShort = {
  readonly supplierId: string
  /** How many rows its list has, those that are gone from it left out. */
  readonly rows: number
  /** The day on which its newest price begins. */
  readonly newest: string | null
  /** False for one that came with the shipped catalogue and was never changed. */
  readonly own: boolean
}

/** How long each supplier's list is, and how new. */
export async function suppliersInShort(tx: ReadTx): Promise<readonly SupplierInShort[]> {
  const rows = await tx
    .selectFrom('supplier')
    .leftJoin('supplier_row', (join) =>
      join
        .onRef('supplier_row.supplier_id', '=', 'supplier.supplier_id')
        .on('supplier_row.gone_from', 'is', null),
    )
    .select((eb) => [
      'supplier.supplier_id',
      'supplier.edition',
      eb.fn.count<number>('supplier_row.row_no').as('rows'),
      eb.fn.max('supplier_row.valid_from').as('newest'),
    ])
    .groupBy(['supplier.supplier_id', 'supplier.edition'])
    .execute()
  return rows.map(({ supplier_id, edition, rows: count, newest }) => ({
    supplierId: supplier_id,
    rows: count,
    newest,
    own: edition === null,
  }))
}
