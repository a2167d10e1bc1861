import { CompiledQuery } from 'kysely'
import type { Step } from './price-steps.ts'
import type { WriteTx } from '../tables.ts'

/** Runs statements one after another in a transaction of the query builder's. */
export async function runSteps(tx: WriteTx, steps: readonly Step[]): Promise<void> {
  for (const { text, bound } of steps) await tx.executeQuery(CompiledQuery.raw(text, [...bound]))
}
