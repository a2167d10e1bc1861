import type { Database } from 'better-sqlite3'
import type { AnswerOf, InputOf } from '../../contract/requests.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import {
  inOne,
  isListed,
  knownSupplier,
  priceState,
  withConnection,
} from '../../store/sqlite/price-file/price-file-work.ts'
import { keepReading, take } from '../../store/sqlite/price-file/take.ts'
import type { Watch } from '../running/watch.ts'
import { fileKeyOf } from './file-key.ts'
import { firstDayOf, listedOnOf, readFile } from './read-file.ts'
import type { FileTask } from './read-file.ts'
import { stopped } from './stopped.ts'

export type ApplyTask = FileTask & {
  readonly kind: 'apply'
  /** From the comparison. */
  readonly fileHash: string
  /** This moment as an ISO date and time. */
  readonly at: string
  readonly links: NonNullable<InputOf<'priceFile.apply'>['links']>
}
export type Applied = AnswerOf<'priceFile.apply'>

/** Takes a price file into the list, in one transaction. */
export function applyFile(task: ApplyTask, watch: Watch): Promise<Outcome<Applied>> {
  return withConnection(task.file, (db) => applyOver(db, task, watch))
}

/** The same over a connection that is there already. */
export async function applyOver(db: Database, task: ApplyTask, watch: Watch): Promise<Outcome<Applied>> {
  const known = knownSupplier(db, task.supplierId)
  if (!known.ok) return known
  const read = await readFile(db, task, watch)
  if (!read.ok) return read
  const { counts, fileHash, state } = read.value
  if (fileHash !== task.fileHash) return changedFile(task)
  const changes = counts.new + counts.changed + counts.missing
  const unknown = task.links.findIndex(({ code }) => !isListed(db, task.supplierId, code))
  if (unknown >= 0) return unknownCode(task, unknown)
  if (changes === 0 && task.links.length === 0) return confirmed(db, task, counts)
  return inOne(db, async () => {
    if (priceState(db) !== state) return changedMeanwhile()
    const itemIds = [...task.links.map(({ itemId }) => itemId), ...linkedBefore(db, task)]
    const changeNo = take(
      db,
      {
        supplierId: task.supplierId,
        says: task.source.name,
        at: task.at,
        goneFrom: firstDayOf(task),
        fileHash,
        fileKey: fileKeyOf(task),
        reading: task.reading,
        listedOn: listedOnOf(task),
        counts,
        links: task.links,
      },
      (done) => watch.goesOn('Writing the list', done),
    )
    if (changeNo === null) return stopped()
    if (itemIds.length > 0) {
      const { reindexLinked } = await import('../../store/sqlite/price-file/reindex-linked.ts')
      await reindexLinked(db, itemIds)
    }
    return accept({ changeNo, counts })
  })
}

/** A list that changes nothing says that its prices still hold, and is no change to be listed or undone. */
function confirmed(db: Database, task: ApplyTask, counts: Applied['counts']): Promise<Outcome<Applied>> {
  return inOne(db, () => {
    keepReading(db, { ...task, listedOn: listedOnOf(task) })
    return Promise.resolve(accept({ changeNo: null, counts }))
  })
}

/** Items that lose a row to another by a link. */
function linkedBefore(db: Database, { supplierId, links }: ApplyTask): readonly string[] {
  const itemOf = db
    .prepare<[string, string], string | null>(
      'select item_id from supplier_row where supplier_id = ? and code = ?',
    )
    .pluck()
  return links.flatMap(({ code }) => itemOf.get(supplierId, code) ?? [])
}

function changedFile({ source }: ApplyTask): Outcome<never> {
  const says = `“${source.name}” is no longer the file that was compared. Compare it again, and then take it in.`
  return refuse('stale', says, 'fileHash')
}

function unknownCode({ links, source }: ApplyTask, at: number): Outcome<never> {
  const says = `“${source.name}” has no row ${links[at]?.code} that could be linked to an item.`
  return refuse('not-found', says, `links[${at}].code`)
}

function changedMeanwhile(): Outcome<never> {
  return refuse(
    'conflict',
    'The prices were changed while the file was read. Nothing of it was taken: try again.',
  )
}
