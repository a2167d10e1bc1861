import { sql } from 'kysely'
import { reading, writing } from '../store.ts'
import type { Store } from '../store.ts'
import { readListedOn } from './file-readings.ts'

/** Keeps that a supplier's last list was handed over again on a day, which confirms it; null for only a part of a list. */
export async function confirmList(store: Store, supplierId: string, day: string | null): Promise<void> {
  if (day === null) return
  const listedOn = await reading(store, readListedOn)
  if (listedOn(supplierId, day) === day) return
  await writing(store, (tx) =>
    tx
      .updateTable('file_reading')
      .set({ body: sql`json_set(body, '$.listedOn', ${day})` })
      .where('supplier_id', '=', supplierId)
      .execute(),
  )
}
