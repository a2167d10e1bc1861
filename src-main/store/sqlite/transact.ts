import { AsyncLocalStorage } from 'node:async_hooks'
import type { Kysely } from 'kysely'
import type { Tables } from '../tables.ts'
import { patiently } from './patiently.ts'
import type { OpenFile } from './open-file.ts'

type Work<T> = (tx: Kysely<Tables>) => T | Promise<T>

/** Which connections have a transaction open around the running code. */
const openAround = new AsyncLocalStorage<ReadonlySet<OpenFile>>()

/** Runs `work` on one state of the file; SQLite refuses any write in it. */
export function read<T>(open: OpenFile, work: Work<T>): Promise<T> {
  return alone(open, async (tx) => {
    open.raw.pragma('query_only = on')
    open.raw.exec('begin')
    try {
      return await work(tx)
    } finally {
      if (open.raw.inTransaction) open.raw.exec('rollback')
      open.raw.pragma('query_only = off')
    }
  })
}

/** Runs `work` and commits, unless it throws or `keeps` says no to its answer. */
export function write<T>(open: OpenFile, work: Work<T>, keeps: (answer: T) => boolean): Promise<T> {
  return alone(open, async (tx) => {
    // Taking the write lock at once: a transaction that reads first can't wait for another's write.
    await patiently(() => open.raw.exec('begin immediate'))
    try {
      const answer = await work(tx)
      if (keeps(answer)) open.raw.exec('commit')
      return answer
    } finally {
      if (open.raw.inTransaction) open.raw.exec('rollback')
    }
  })
}

/** Has the connection to itself. A transaction inside another would wait for itself for ever, so it throws. */
function alone<T>(open: OpenFile, work: (tx: Kysely<Tables>) => Promise<T>): Promise<T> {
  const around = openAround.getStore() ?? new Set<OpenFile>()
  if (around.has(open)) throw new Error('A transaction is open here already: use its own handle')
  return openAround.run(new Set([...around, open]), () => open.kysely.connection().execute(work))
}
