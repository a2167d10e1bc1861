import { mkdir, stat } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { csvFile } from '../../exchange/price-export/csv-file.ts'
import type { Table } from '../../exchange/price-export/table.ts'
import { mostSheetRows, xlsxFile } from '../../exchange/price-export/xlsx-file.ts'
import type { Desk } from '../desk.ts'
import { ioRefusal } from '../papers/io-sentence.ts'
import { startsWith, writeWhole } from '../write-whole.ts'

export type Export = { readonly path: string; readonly rows: number; readonly bytes: number }

type Where = {
  readonly form: 'csv' | 'xlsx'
  /** Where the person wants it, if anybody said. */
  readonly out: string | undefined
  /** The file's name in the papers folder, without its ending. */
  readonly name: string
}

/** Writes a table where it belongs, whole or not at all: beside its place first, then moved into it. */
export async function writeExport(table: Table, where: Where, desk: Desk): Promise<Outcome<Export>> {
  const place = exportPath(where, desk)
  if (!place.ok) return place
  const rows = table.rows.length
  if (where.form === 'xlsx' && rows > mostSheetRows) {
    const message = `A sheet has room for ${mostSheetRows} rows, and these are ${rows}: write them as CSV, or choose fewer.`
    return refuse('impossible', message, 'form')
  }
  const path = place.value
  const field = where.out === undefined ? undefined : 'out'
  try {
    if (field === undefined) await mkdir(desk.papersFolder, { recursive: true })
    const stands = await mayStandAt(path, where.form, field)
    if (!stands.ok) return stands
    const bytes = where.form === 'csv' ? csvFile(table) : await xlsxFile(table)
    await writeWhole(path, bytes)
    return accept({ path, rows, bytes: bytes.length })
  } catch (error) {
    return ioRefusal(error, path, field)
  }
}

/** The file an export goes to; refused where a path was named at a door that lets nobody name one. */
export function exportPath({ out, name, form }: Where, desk: Desk): Outcome<string> {
  if (out === undefined) {
    const safe = name.replace(/[^A-Za-z0-9._-]+/g, '-').slice(0, 120)
    return accept(join(desk.papersFolder, `${safe}.${form}`))
  }
  if (!desk.mayChoosePath) {
    const message = 'Only the terminal may say where a file goes; here it goes to the papers folder.'
    return refuse('refused', message, 'out', 'Leave `out` out.')
  }
  if (out.includes('\0')) return refuse('invalid', 'A file’s path holds no null character.', 'out')
  return accept(resolve(out))
}

/** What a file of ours begins with: a byte-order mark, or a workbook's wrapping. */
const begins = {
  csv: Buffer.from([0xef, 0xbb, 0xbf]),
  xlsx: Buffer.from('PK\u0003\u0004', 'latin1'),
} as const

/** Free, or taken by an older export of that form: nobody's other file is written over. */
async function mayStandAt(
  path: string,
  form: Where['form'],
  field: string | undefined,
): Promise<Outcome<true>> {
  const found = await stat(path).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  })
  if (found === null) return accept(true)
  if (found.isDirectory()) {
    const message = `${path} is a folder, so no file can stand there.`
    return refuse('io', message, field, 'Put a file name after the folder.')
  }
  if (found.isFile() && (found.size === 0 || (await startsWith(path, begins[form])))) return accept(true)
  const message = `${path} is already there and is no export of this form, so it was left as it is.`
  return refuse('conflict', message, field, 'Name another file.')
}
