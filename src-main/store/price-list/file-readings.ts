import type { z } from 'zod'
import { fileReading } from '../../domain/price-list.ts'
import type { FileReading } from '../../domain/price-list.ts'
import { day, record } from '../../domain/schema.ts'
import { fromJson, readRow } from '../read-row.ts'
import type { ReadTx } from '../tables.ts'

/**
 * What is kept of a supplier's last file: how it was read, and the day of the last whole list. Every row that is not gone was in
 * that list, so on that day its price was confirmed, whether or not the list changed it. It is kept outside the tables of prices:
 * the same list once more confirms prices without changing a row. A file that is only a part of the list confirms none.
 */
const keptReading = record({ reading: fileReading, listedOn: day.optional() })

/** How this supplier's last file was read; null before the first. */
export async function readFileReading(tx: ReadTx, supplierId: string): Promise<FileReading | null> {
  const row = await tx
    .selectFrom('file_reading')
    .select('body')
    .where('supplier_id', '=', supplierId)
    .executeTakeFirst()
  return row === undefined ? null : keptOf(row.body, supplierId).reading
}

/** The last day, not after this one, on which a supplier's list confirmed its rows; undefined for none. */
export type ListedOn = (supplierId: string, day: string) => string | undefined

export async function readListedOn(tx: ReadTx): Promise<ListedOn> {
  const rows = await tx.selectFrom('file_reading').selectAll().execute()
  const days = new Map(rows.map(({ supplier_id, body }) => [supplier_id, keptOf(body, supplier_id).listedOn]))
  return (supplierId, day) => {
    const listed = days.get(supplierId)
    return listed === undefined || listed > day ? undefined : listed
  }
}

function keptOf(body: string, supplierId: string): z.infer<typeof keptReading> {
  const what = `How ${supplierId}'s files are read`
  return readRow(keptReading, fromJson(body, what), what)
}

type Confirmable = {
  readonly supplierId: string
  readonly validFrom: string
  /** True when the supplier's last list did not have it. */
  readonly isGone: boolean
}

/** When the price that a row has on a day was last confirmed, if that is later than when it began. */
export function confirmation(
  { supplierId, validFrom, isGone }: Confirmable,
  listedOn: ListedOn,
  day: string,
): { readonly confirmedOn?: string } {
  const listed = isGone ? undefined : listedOn(supplierId, day)
  return listed === undefined || listed <= validFrom ? {} : { confirmedOn: listed }
}
