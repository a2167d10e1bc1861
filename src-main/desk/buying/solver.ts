import { createRequire } from 'node:module'
import { Worker } from 'node:worker_threads'
import type { Solve, Solved } from '../../engine/buying/split/supplier-split.ts'

/** How long the solver may look for the cheapest split, and how much longer it may take to give up, in milliseconds. */
const usualLimitMs = 10_000
const graceMs = 5_000

/** What the solver is told. The gaps are nought: a plan that is near enough is not good enough. */
export const solverSettings = (limitMs: number) =>
  ({
    output_flag: false,
    time_limit: limitMs / 1000,
    mip_rel_gap: 0,
    mip_abs_gap: 1e-6,
    mip_feasibility_tolerance: 1e-9,
    primal_feasibility_tolerance: 1e-9,
    random_seed: 1,
  }) as const

/** What came back from the solver: its status, and the value of each name in the model. */
export type Reply = {
  readonly status: string
  readonly values: Readonly<Record<string, number | undefined>>
}

/** The worker's whole program. It is text because the bundler would move a file away from under its name. */
const program = `
const { parentPort, workerData } = require('node:worker_threads')
require(workerData.solver)().then((solver) => {
  const found = solver.solve(workerData.model, workerData.settings)
  const values = {}
  for (const column of Object.values(found.Columns)) values[column.Name] = column.Primal
  parentPort.postMessage({ status: found.Status, values })
})
`

/** A solver on a thread of its own, so that nothing that paints waits for it; a new thread for each model. */
export function solverWithin(limitMs: number = usualLimitMs): Solve {
  return async (model) => solvedFrom(await replyTo(model, limitMs))
}

async function replyTo(model: string, limitMs: number): Promise<Reply | null> {
  const solver = createRequire(import.meta.url).resolve('highs')
  const worker = new Worker(program, {
    eval: true,
    workerData: { solver, model, settings: solverSettings(limitMs) },
  })
  let late: NodeJS.Timeout | undefined
  try {
    return await new Promise<Reply | null>((resolve, reject) => {
      late = setTimeout(() => resolve(null), limitMs + graceMs)
      worker.once('message', resolve)
      worker.once('error', reject)
    })
  } finally {
    clearTimeout(late)
    await worker.terminate()
  }
}

/** The solver's reply in the engine's words. */
export function solvedFrom(reply: Reply | null): Solved {
  if (reply === null) return { kind: 'outOfTime' }
  const { status, values } = reply
  if (status === 'Infeasible') return { kind: 'impossible' }
  if (status === 'Optimal' || status === 'Time limit reached') {
    const found = Object.values(values).every((value) => value !== undefined && Number.isFinite(value))
    if (!found) return { kind: 'outOfTime' }
    return { kind: 'found', proved: status === 'Optimal', valueOf: (name) => values[name] ?? 0 }
  }
  throw new Error(`The solver could not read the model or lost its way: ${status}`)
}
