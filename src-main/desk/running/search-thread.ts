import { once } from 'node:events'
import { Worker } from 'node:worker_threads'
import type { RowHits, RowSearch } from '../../store/sqlite/row-search/search-rows.ts'
import { beforeClose } from '../../store/store.ts'
import type { Store } from '../../store/store.ts'
import { threadFile } from './thread-file.ts'

/** Searches in the order in which they are asked. */
type Thread = { readonly ask: (search: RowSearch) => Promise<RowHits> }

const threads = new WeakMap<Store, Thread>()

/** Searches the suppliers' lists on a thread of its own, which stays for the next search until the data file is closed. */
export function searchOnThread(store: Store, search: RowSearch): Promise<RowHits> {
  const thread = threads.get(store) ?? started(store)
  return thread.ask(search)
}

function started(store: Store): Thread {
  const worker = new Worker(threadFile('price-search'), { workerData: { file: store.file }, execArgv: [] })
  worker.unref()
  const waiting: { resolve: (hits: RowHits) => void; reject: (error: Error) => void }[] = []
  // A thread that waits for work must not keep the program from ending; one that works must.
  worker.on('message', (hits: RowHits) => {
    waiting.shift()?.resolve(hits)
    if (waiting.length === 0) worker.unref()
  })
  const fail = (error: Error) => {
    threads.delete(store)
    for (const { reject } of waiting.splice(0)) reject(error)
  }
  worker.on('error', fail)
  worker.on('exit', () => fail(new Error('The searching thread ended')))
  beforeClose(store, async () => {
    if (threads.get(store) !== thread) return
    worker.ref()
    worker.postMessage('close', [])
    await once(worker, 'exit')
  })
  const thread: Thread = {
    ask: (search) => {
      worker.ref()
      return new Promise((resolve, reject) => {
        waiting.push({ resolve, reject })
        worker.postMessage({ search }, [])
      })
    },
  }
  threads.set(store, thread)
  return thread
}
