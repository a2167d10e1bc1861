import { parentPort, workerData } from 'node:worker_threads'
import SqliteFile from 'better-sqlite3'
import { rowSearcher } from '../../store/sqlite/row-search/search-rows.ts'
import type { RowSearch } from '../../store/sqlite/row-search/search-rows.ts'

/** The thread's whole program: it searches suppliers' lists for as long as the data file is open. */
const { file } = workerData as { readonly file: string }
const db = new SqliteFile(file, { readonly: true })
db.pragma('cache_size = -32768')
const search = rowSearcher(db)

parentPort?.on('message', (asked: { readonly search: RowSearch } | 'close') => {
  if (asked === 'close') {
    db.close()
    parentPort?.close()
    return
  }
  parentPort?.postMessage(search(asked.search), [])
})
