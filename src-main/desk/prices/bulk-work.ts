import type { Database } from 'better-sqlite3'
import type { RowChange } from '../../contract/price-lists.ts'
import type { AnswerOf, InputOf } from '../../contract/requests.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { bulkInWords, bulkPence, risesBasisPoints } from '../../engine/buying/bulk-price.ts'
import type { OnDay } from '../../store/price-list/kept-rows.ts'
import { beginChange, endChange, noCounts } from '../../store/price-list/changes.ts'
import { bulkChanges, gatherBulk } from '../../store/sqlite/bulk/gather-bulk.ts'
import type { BulkChanged, Unchangeable } from '../../store/sqlite/bulk/gather-bulk.ts'
import {
  inOne,
  knownSupplier,
  onOneState,
  withConnection,
} from '../../store/sqlite/price-file/price-file-work.ts'
import { comingPrices } from '../../store/sqlite/price-file/report.ts'
import { takeSteps } from '../../store/sqlite/price-steps.ts'
import { builderOver } from '../../store/sqlite/query-builder.ts'
import { runSteps } from '../../store/sqlite/take-steps.ts'
import { stopped } from '../price-files/stopped.ts'
import type { Watch } from '../running/watch.ts'

/** What work with many prices at once is told. Plain data, so that it crosses to its thread whole. */
type BulkTask = {
  /** The data file, and the folder it is in. */
  readonly file: string
  readonly folder: string
  readonly today: string
  /** This moment as an ISO date and time. */
  readonly at: string
  readonly bulk: Omit<InputOf<'price.bulkApply'>, 'workId'>
  /** The day on which rows are chosen; wanted where the choice asks for old prices. */
  readonly on?: OnDay
}
export type BulkCompareTask = BulkTask & { readonly kind: 'bulkCompare' }
export type BulkApplyTask = BulkTask & { readonly kind: 'bulkApply' }

/** No more rows than these are spelled out, rises and falls each. */
const mostSpelledOut = 500

type Gathered = { readonly changed: number; readonly unchanged: number }

/** What a bulk change would do; nothing is written. */
export function compareBulk(
  task: BulkCompareTask,
  watch: Watch,
): Promise<Outcome<AnswerOf<'price.bulkCompare'>>> {
  return withConnection(task.file, async (db) => {
    const seen = await onOneState(db, () => Promise.resolve(gathered(db, task, watch)))
    if (!seen.ok) return seen
    const day = dayOf(task)
    const coming = comingPrices(db, day)
    if (!watch.goesOn('Working out open jobs', null)) return stopped()
    const { openWorkWith } = coming.length === 0 ? noWork : await import('../price-files/open-work-with.ts')
    return accept({
      counts: { ...noCounts, ...seen.value },
      changed: bulkChanges(db, riseOf, mostSpelledOut).map(changeOf),
      openWork: await openWorkWith(coming, task, day),
    })
  })
}

const noWork = { openWorkWith: () => Promise.resolve([]) }

/** Changes all of the prices in one transaction, or none. */
export function applyBulk(task: BulkApplyTask, watch: Watch): Promise<Outcome<AnswerOf<'price.bulkApply'>>> {
  return withConnection(task.file, (db) => applyBulkOver(db, task, watch))
}

/** The same over a connection that is there already. */
export function applyBulkOver(
  db: Database,
  task: BulkApplyTask,
  watch: Watch,
): Promise<Outcome<AnswerOf<'price.bulkApply'>>> {
  return inOne<AnswerOf<'price.bulkApply'>>(db, async () => {
    const seen = gathered(db, task, watch)
    if (!seen.ok) return seen
    const { changed } = seen.value
    if (changed === 0) return accept({ changeNo: null, counts: { ...noCounts, ...seen.value } })
    const tx = builderOver(db)
    const { supplierId } = task.bulk.which
    const says = bulkInWords(task.bulk)
    const changeNo = await beginChange(tx, { kind: 'bulk', supplierId, says, at: task.at })
    const steps = takeSteps(changeNo, '9999-12-31')
    for (const [at, step] of steps.entries()) {
      if (!watch.goesOn('Writing the list', at / steps.length)) return stopped()
      await runSteps(tx, [step])
    }
    const counts = await endChange(tx, changeNo, seen.value)
    return watch.goesOn('Writing the list', 1) ? accept({ changeNo, counts }) : stopped()
  })
}

function dayOf({ bulk, today }: BulkTask): string {
  return bulk.validFrom ?? today
}

/** Gathers the rows in the connection's temporary tables, and says how many they are. */
function gathered(db: Database, task: BulkTask, watch: Watch): Outcome<Gathered> {
  if (!watch.goesOn('Comparing', null)) return stopped()
  const { which, ...change } = task.bulk
  const known = which.supplierId === undefined ? accept(null) : knownSupplier(db, which.supplierId, 'which.')
  if (!known.ok) return known
  const priceOf = (pence: number) => {
    const after = bulkPence(pence, change)
    return after.ok ? after.value : null
  }
  const { unchangeable, ...counts } = gatherBulk(db, {
    which: { ...which, on: task.on },
    day: dayOf(task),
    priceOf,
  })
  if (unchangeable !== null) return pastSense(unchangeable, change)
  return watch.goesOn('Comparing', 1) ? accept(counts) : stopped()
}

/** The sentence of the price, or the price break, that would be past all sense. */
function pastSense(
  { code, packPence, breaks }: Unchangeable,
  change: Parameters<typeof bulkPence>[1],
): Outcome<never> {
  const broken = breaks === null ? [] : (JSON.parse(breaks) as readonly { readonly packPence: number }[])
  for (const pence of [packPence, ...broken.map((one) => one.packPence)]) {
    const after = bulkPence(pence, change)
    if (after.ok) continue
    const says = after.problems.map(({ message }) => message).join(' ')
    return refuse('impossible', `${code}: ${says}`, 'change')
  }
  throw new Error(`The price of ${code} can be changed after all`)
}

/** A rise from nothing has no share, and stands before all others. */
function riseOf(wasPence: number, willPence: number): number {
  return risesBasisPoints(wasPence, willPence) ?? (willPence > wasPence ? Number.MAX_SAFE_INTEGER : 0)
}

function changeOf({ itemId, ...row }: BulkChanged): RowChange {
  const share = risesBasisPoints(row.wasPence, row.willPence)
  return {
    ...row,
    ...(share === null ? {} : { risesBasisPoints: share }),
    ...(itemId === null ? {} : { itemId }),
  }
}
