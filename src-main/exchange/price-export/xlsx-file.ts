import { createRequire } from 'node:module'
import { Worker } from 'node:worker_threads'
import type { Table } from './table.ts'

/** The rows that a sheet has room for under its headings. */
export const mostSheetRows = 1_048_575

/**
 * The worker's whole program. It is text because the bundler would move a file away from under its name. Every text is typed as
 * text, so that 00126 keeps its zeros and nothing is run as a formula.
 */
const program = `
const { parentPort, workerData } = require('node:worker_threads')
const { default: write } = require(workerData.writer)
const { name, columns, rows } = workerData.table
const cellOf = (cell) =>
  cell === null ? null
  : cell.kind === 'text' ? { type: String, value: cell.text }
  : cell.kind === 'number' ? { type: Number, value: cell.value }
  : { type: Number, value: cell.pence / 100, format: '0.00' }
const headings = columns.map(({ heading }) => ({ type: String, value: heading, fontWeight: 'bold' }))
write([headings, ...rows.map((row) => row.map(cellOf))], {
  sheet: name,
  columns: columns.map(({ widthChars }) => ({ width: widthChars })),
  stickyRowsCount: 1,
}).toBuffer().then((bytes) => parentPort.postMessage(bytes))
`

/** A table as a workbook, made on a thread of its own, so that nothing that paints waits for it. */
export async function xlsxFile({ name, columns, rows }: Table): Promise<Uint8Array> {
  // Columns may carry more than crosses to another thread.
  const plain = columns.map(({ heading, widthChars }) => ({ heading, widthChars }))
  const writer = createRequire(import.meta.url).resolve('write-excel-file/node')
  const worker = new Worker(program, {
    eval: true,
    workerData: { writer, table: { name, columns: plain, rows } },
  })
  try {
    return await new Promise<Uint8Array>((resolve, reject) => {
      worker.once('message', resolve)
      worker.once('error', reject)
      worker.once('exit', () => reject(new Error('The workbook’s thread ended before the workbook was made')))
    })
  } finally {
    await worker.terminate()
  }
}
