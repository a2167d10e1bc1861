import { firm as firmSchema } from '../domain/firm.ts'
import type { Firm } from '../domain/firm.ts'
import { fieldsOf, readRow } from './read-row.ts'
import type { ReadTx, WriteTx } from './tables.ts'

/** The firm's own details; null until they are given. */
export async function readFirm(tx: ReadTx): Promise<Firm | null> {
  const row = await tx.selectFrom('firm').select(['name', 'body']).executeTakeFirst()
  if (row === undefined) return null
  return readRow(firmSchema, { name: row.name, ...fieldsOf(row.body, 'The firm') }, 'The firm')
}

export async function saveFirm(tx: WriteTx, { name, ...rest }: Firm): Promise<void> {
  const row = { name, body: JSON.stringify(rest) }
  await tx
    .insertInto('firm')
    .values({ one: 1, ...row })
    .onConflict((conflict) => conflict.column('one').doUpdateSet(row))
    .execute()
}
