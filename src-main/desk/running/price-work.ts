import { parentPort, workerData } from 'node:worker_threads'
import { assertNever } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { ioProblem } from '../../store/sqlite/troubles.ts'
import { watchOf } from './watch.ts'
import type { Shared, Watch } from './watch.ts'
import type { PriceTask } from './price-task.ts'

/** The thread's whole program: one piece of work with a price file, and its outcome to the thread that asked. */
const { task, shared } = workerData as { readonly task: PriceTask; readonly shared: Shared }
parentPort?.postMessage(await outcomeOf(task, watchOf(shared)), [])

async function outcomeOf(work: PriceTask, watch: Watch): Promise<Outcome<unknown>> {
  try {
    return await done(work, watch)
  } catch (error) {
    const trouble = ioProblem(error)
    if (trouble === null) throw error
    return { ok: false, problems: [trouble] }
  }
}

async function done(work: PriceTask, watch: Watch): Promise<Outcome<unknown>> {
  switch (work.kind) {
    case 'look':
      return (await import('../price-files/look-work.ts')).lookAt(work)
    case 'compare':
      return (await import('../price-files/compare-work.ts')).compareFile(work, watch)
    case 'apply':
      return (await import('../price-files/apply-work.ts')).applyFile(work, watch)
    case 'undo':
      return (await import('../price-files/undo-work.ts')).undoPrices(work)
    case 'bulkCompare':
      return (await import('../prices/bulk-work.ts')).compareBulk(work, watch)
    case 'bulkApply':
      return (await import('../prices/bulk-work.ts')).applyBulk(work, watch)
    default:
      return assertNever(work)
  }
}
