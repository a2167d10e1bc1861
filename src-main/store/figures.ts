import { figureOverrides } from '../domain/figures.ts'
import type { FigureOverrides } from '../domain/figures.ts'
import { readRow } from './read-row.ts'
import type { ReadTx, WriteTx } from './tables.ts'

/** The firm's own values in place of the defaults, by setting id. */
export async function readOverrides(tx: ReadTx): Promise<FigureOverrides> {
  const rows = await tx.selectFrom('figure_override').selectAll().orderBy('setting_id').execute()
  const values = Object.fromEntries(rows.map(({ setting_id, value }) => [setting_id, value]))
  return readRow(figureOverrides, values, "The firm's own figures")
}

/** Sets the firm's own value of a setting; null goes back to the default. */
export async function setOverride(tx: WriteTx, settingId: string, value: number | null): Promise<void> {
  if (value === null) {
    await tx.deleteFrom('figure_override').where('setting_id', '=', settingId).execute()
    return
  }
  await tx
    .insertInto('figure_override')
    .values({ setting_id: settingId, value })
    .onConflict((conflict) => conflict.column('setting_id').doUpdateSet({ value }))
    .execute()
}
