import type { Catalogue } from '../domain/catalogue.ts'
import type { Item } from '../domain/item.ts'
import type { Supplier } from '../domain/price.ts'
import { itemOf, itemRow, itemsOf } from './items.ts'
import { favouriteIds } from './favourites.ts'
import { seedPrices } from './price-list/seed-prices.ts'
import { readPrices } from './prices.ts'
import { rebuildIndex } from './sqlite/item-index.ts'
import { readSuppliers, supplierRow } from './suppliers.ts'
import type { ReadTx, WriteTx } from './tables.ts'

const rowsAtOnce = 500

/** The catalogue as it stands on a day: every item, every supplier, and the prices in force. */
export async function readCatalogue(tx: ReadTx, day: string): Promise<Catalogue> {
  const rows = await tx.selectFrom('item').select(['item_id', 'sort_name', 'body']).execute()
  const favourites = await favouriteIds(tx)
  return {
    items: itemsOf(rows.toSorted(byName)),
    suppliers: await readSuppliers(tx),
    prices: await readPrices(tx, day),
    ...(favourites.length === 0 ? {} : { favourites }),
  }
}

/** Sorted here: in the order of its index the file would be read back and forth, which takes three times as long. */
function byName(a: Named, b: Named): number {
  if (a.sort_name !== b.sort_name) return a.sort_name < b.sort_name ? -1 : 1
  return a.item_id < b.item_id ? -1 : 1
}
type Named = { readonly sort_name: string; readonly item_id: string }

/** Which shipped catalogue the file was last filled from; null when never. */
export async function seededEdition(tx: ReadTx): Promise<string | null> {
  const row = await tx.selectFrom('catalogue_edition').select('edition').executeTakeFirst()
  return row?.edition ?? null
}

/**
 * Fills the file from a shipped catalogue: puts in what is missing, brings rows of an earlier edition up to this one, and
 * leaves alone all that the firm made, changed or priced itself. Doing it again changes nothing.
 */
export async function seedCatalogue(tx: WriteTx, catalogue: Catalogue, edition: string): Promise<void> {
  await seedItems(tx, catalogue.items, edition)
  await seedSuppliers(tx, catalogue.suppliers, edition)
  await seedPrices(tx, catalogue, edition)
  await rebuildSearch(tx)
  await tx
    .insertInto('catalogue_edition')
    .values({ one: 1, edition })
    .onConflict((conflict) => conflict.column('one').doUpdateSet({ edition }))
    .execute()
}

/** Keeps an item of the firm's own, new or changed; no later edition touches it. */
export async function saveItem(tx: WriteTx, item: Item): Promise<void> {
  const { item_id, ...row } = itemRow(item, null)
  await tx
    .insertInto('item')
    .values({ item_id, ...row })
    .onConflict((conflict) => conflict.column('item_id').doUpdateSet(row))
    .execute()
  await rebuildSearch(tx)
}

/** Keeps a supplier of the firm's own, new or changed; no later edition touches it. */
export async function saveSupplier(tx: WriteTx, supplier: Supplier): Promise<void> {
  const { supplier_id, ...row } = supplierRow(supplier, null)
  await tx
    .insertInto('supplier')
    .values({ supplier_id, ...row })
    .onConflict((conflict) => conflict.column('supplier_id').doUpdateSet(row))
    .execute()
}

async function seedItems(tx: WriteTx, items: readonly Item[], edition: string): Promise<void> {
  for (const some of inChunks(items.map((item) => itemRow(item, edition)))) {
    await tx
      .insertInto('item')
      .values(some)
      .onConflict((conflict) =>
        conflict
          .column('item_id')
          .doUpdateSet((eb) => ({
            kind: eb.ref('excluded.kind'),
            name: eb.ref('excluded.name'),
            sort_name: eb.ref('excluded.sort_name'),
            generic: eb.ref('excluded.generic'),
            retired: eb.ref('excluded.retired'),
            also_called: eb.ref('excluded.also_called'),
            body: eb.ref('excluded.body'),
            edition: eb.ref('excluded.edition'),
          }))
          .where('item.edition', 'is not', null),
      )
      .execute()
  }
}

async function seedSuppliers(tx: WriteTx, suppliers: readonly Supplier[], edition: string): Promise<void> {
  for (const some of inChunks(suppliers.map((supplier) => supplierRow(supplier, edition)))) {
    await tx
      .insertInto('supplier')
      .values(some)
      .onConflict((conflict) =>
        conflict
          .column('supplier_id')
          .doUpdateSet((eb) => ({
            name: eb.ref('excluded.name'),
            note: eb.ref('excluded.note'),
            carriage_pence: eb.ref('excluded.carriage_pence'),
            carriage_free_from_pence: eb.ref('excluded.carriage_free_from_pence'),
            minimum_order_pence: eb.ref('excluded.minimum_order_pence'),
            edition: eb.ref('excluded.edition'),
          }))
          .where('supplier.edition', 'is not', null),
      )
      .execute()
  }
}

async function rebuildSearch(tx: WriteTx): Promise<void> {
  const items = await tx.selectFrom('item').select(['item_no', 'item_id', 'body']).execute()
  const sold = await tx
    .selectFrom('supplier_row')
    .select(['item_id', 'code'])
    .where('item_id', 'is not', null)
    .execute()
  const codes = new Map<string, string[]>()
  for (const { item_id, code } of sold) {
    if (item_id !== null) codes.set(item_id, [...(codes.get(item_id) ?? []), code])
  }
  await rebuildIndex(
    tx,
    items.map((row) => ({
      itemNo: row.item_no,
      item: itemOf(row),
      codes: codes.get(row.item_id) ?? [],
    })),
  )
}

function inChunks<T>(rows: readonly T[]): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(rows.length / rowsAtOnce) }, (_, at) =>
    rows.slice(at * rowsAtOnce, (at + 1) * rowsAtOnce),
  )
}
