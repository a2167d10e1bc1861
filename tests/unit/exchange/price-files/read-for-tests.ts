import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll } from 'vitest'
import type { Outcome } from '../../../../src-main/domain/outcome.ts'
import type { FileReading, ListRow, RejectedRow } from '../../../../src-main/domain/price-list.ts'
import { detectReading } from '../../../../src-main/exchange/price-files/detect-reading.ts'
import { readRows } from '../../../../src-main/exchange/price-files/read-rows.ts'
import type { PriceSource, ReadSummary } from '../../../../src-main/exchange/price-files/read-rows.ts'
import { answered } from '../../../answered.ts'

const corpus = join(import.meta.dirname, '../../../price-files')
export const inCorpus = (name: string): PriceSource => ({ path: join(corpus, name), name })

let folder: string | undefined
afterAll(() => {
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true })
})

/** A file of these bytes, gone when the tests of the file have run. */
export function fileOf(name: string, bytes: Buffer | string): PriceSource {
  folder ??= mkdtempSync(join(tmpdir(), 'price-files-'))
  const path = join(folder, name)
  writeFileSync(path, bytes)
  return { path, name }
}

export type Heard = {
  readonly answer: Outcome<ReadSummary>
  readonly rows: readonly (ListRow & { readonly rowNo: number })[]
  readonly rejected: readonly RejectedRow[]
  readonly notes: readonly string[]
}

/** All that is heard of a file. */
export async function heardOf(source: PriceSource, reading: FileReading): Promise<Heard> {
  const rows: (ListRow & { rowNo: number })[] = []
  const rejected: RejectedRow[] = []
  const notes: string[] = []
  const answer = await readRows(source, reading, {
    row: (rowNo, row) => rows.push({ rowNo, ...row }),
    rejected: (row) => rejected.push(row),
    noted: (rowNo, says) => notes.push(`${rowNo}: ${says}`),
  })
  return { answer, rows, rejected, notes }
}

/** The same, read as it is detected to be. */
export async function heardAsDetected(
  source: PriceSource,
): Promise<Heard & { readonly reading: FileReading }> {
  const reading = answered(await detectReading(source))
  return { reading, ...(await heardOf(source, reading)) }
}

/** A plain reading of a comma-separated file with headings, code, name and price. */
export const plainReading: FileReading = {
  form: 'text',
  encoding: 'utf-8',
  delimiter: ',',
  headerRow: 1,
  decimal: 'point',
  dates: 'dayFirst',
  columns: [
    { at: 0, meaning: 'code' },
    { at: 1, meaning: 'name' },
    { at: 2, meaning: 'price' },
  ],
}
