import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { csvFile } from '../../exchange/price-export/csv-file.ts'
import type { Table } from '../../exchange/price-export/table.ts'
import { mostSheetRows, xlsxFile } from '../../exchange/price-export/xlsx-file.ts'
import type { Desk } from '../desk.ts'
import { filePath, writeFile } from '../papers/write-file.ts'
import type { OpenFile } from '../papers/write-file.ts'

export type Export = { readonly path: string; readonly rows: number; readonly bytes: number }

type Where = Pick<OpenFile, 'out' | 'name'> & { readonly form: 'csv' | 'xlsx' }

/** Writes a table where it belongs, whole or not at all. Where it may not go is said before it is made. */
export async function writeExport(table: Table, where: Where, desk: Desk): Promise<Outcome<Export>> {
  const place = filePath(where, desk)
  if (!place.ok) return place
  const rows = table.rows.length
  if (where.form === 'xlsx' && rows > mostSheetRows) {
    const message = `A sheet has room for ${mostSheetRows} rows, and these are ${rows}: write them as CSV, or choose fewer.`
    return refuse('impossible', message, 'form')
  }
  const bytes = where.form === 'csv' ? csvFile(table) : await xlsxFile(table)
  const written = await writeFile({ ...where, bytes }, desk)
  return written.ok ? accept({ ...written.value, rows }) : written
}
