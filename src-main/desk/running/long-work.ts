import { Worker } from 'node:worker_threads'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { threadFile } from './thread-file.ts'
import { askToStop, newShared, progressOf } from './watch.ts'
import type { Shared } from './watch.ts'
import type { PriceTask, TaskAnswer } from './price-task.ts'

/** Rows of a file are soon done with. Room for few of them at a time is as quick, and saves 30 MB of a long list. */
const youngMb = 12

/** Work that goes on now, by the name that its asker gave it. */
const underWay = new Map<string, Shared>()

/** Does work on a thread of its own, so that nothing that paints or answers waits for it. */
export async function longWork<T extends PriceTask>(
  task: T,
  workId: string | undefined,
): Promise<Outcome<TaskAnswer<T>>> {
  if (workId !== undefined && underWay.has(workId))
    return refuse('conflict', `Work called ${workId} is going on already: give this another name.`, 'workId')
  const shared = newShared()
  if (workId !== undefined) underWay.set(workId, shared)
  const worker = new Worker(threadFile('price-work'), {
    workerData: { task, shared },
    execArgv: [],
    resourceLimits: { maxYoungGenerationSizeMb: youngMb },
  })
  try {
    return await new Promise<Outcome<TaskAnswer<T>>>((resolve, reject) => {
      worker.once('message', resolve)
      worker.once('error', reject)
      worker.once('exit', () => reject(new Error('The thread ended without an answer')))
    })
  } finally {
    if (workId !== undefined) underWay.delete(workId)
    await worker.terminate()
  }
}

/** How far work has come; null when none of that name goes on. */
export function workProgressOf(
  workId: string,
): { readonly says: string; readonly done: number | null } | null {
  const shared = underWay.get(workId)
  return shared === undefined ? null : progressOf(shared)
}

/** Asks work to stop; false when none of that name goes on. */
export function stopWork(workId: string): boolean {
  const shared = underWay.get(workId)
  if (shared === undefined) return false
  askToStop(shared)
  return true
}
