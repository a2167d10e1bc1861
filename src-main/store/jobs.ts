import { sql } from 'kysely'
import { job as jobSchema, jobStage } from '../domain/job.ts'
import type { Job, JobStage, Room, Swap } from '../domain/job.ts'
import { fieldsOf, readRow } from './read-row.ts'
import type { ReadTx, WriteTx } from './tables.ts'

export type JobRow = {
  readonly jobId: string
  readonly title: string
  readonly customerName: string
  /** The site's address on one line. */
  readonly place: string
  readonly createdOn: string
  readonly savedAt: string
  readonly rooms: number
  readonly swaps: number
  readonly stage: JobStage
  readonly archived: boolean
}

/** What a job's row in a list is read from. Stage and archive lie in the job's body. */
export const jobColumns = [
  'job.job_id as jobId',
  'job.title as title',
  'job.customer_name as customerName',
  'job.place as place',
  'job.created_on as createdOn',
  'job.saved_at as savedAt',
  sql<number>`(select count(*) from room where room.job_id = job.job_id)`.as('rooms'),
  sql<number>`(select count(*) from swap where swap.job_id = job.job_id)`.as('swaps'),
  sql<string | null>`json_extract(job.body, '$.stage')`.as('stage'),
  sql<number | null>`json_extract(job.body, '$.archived')`.as('archived'),
] as const

type ListedRow = Omit<JobRow, 'stage' | 'archived'> & {
  readonly stage: string | null
  readonly archived: number | null
}

/** A list's row as it is known outside: a stage that is not said is the first. */
export function jobRowOf(row: ListedRow): JobRow {
  const what = `The job ${row.jobId}`
  const stage = readRow(jobStage, row.stage ?? firstStage, what)
  return { ...row, stage, archived: row.archived === 1 }
}

const firstStage: JobStage = 'surveying'

/** Every job in short, the last saved first. */
export async function listJobs(tx: ReadTx): Promise<readonly JobRow[]> {
  const rows = await tx
    .selectFrom('job')
    .select(jobColumns)
    .orderBy('saved_at', 'desc')
    .orderBy('job_id')
    .execute()
  return rows.map(jobRowOf)
}

export type JobMarks = { readonly stage?: JobStage | undefined; readonly archived?: boolean | undefined }

/** Sets a job's stage and whether it is put away, and nothing else: it keeps its place in the list. Null when there is no such job. */
export async function markJob(
  tx: WriteTx,
  jobId: string,
  marks: JobMarks,
): Promise<{ readonly stage: JobStage; readonly archived: boolean } | null> {
  const job = await readJob(tx, jobId)
  if (job === null) return null
  const stage = marks.stage ?? job.stage ?? firstStage
  const archived = marks.archived ?? job.archived ?? false
  const { jobId: _id, title: _title, createdOn: _on, rooms: _rooms, swaps: _swaps, ...body } = job
  await tx
    .updateTable('job')
    .set({ body: JSON.stringify({ ...body, stage, archived }) })
    .where('job_id', '=', jobId)
    .execute()
  return { stage, archived }
}

/** One job, whole; null when there is none of that id. */
export async function readJob(tx: ReadTx, jobId: string): Promise<Job | null> {
  const row = await tx.selectFrom('job').selectAll().where('job_id', '=', jobId).executeTakeFirst()
  if (row === undefined) return null
  const what = `The job ${jobId}`
  const rooms = await tx
    .selectFrom('room')
    .selectAll()
    .where('job_id', '=', jobId)
    .orderBy('position')
    .execute()
  const swaps = await tx
    .selectFrom('swap')
    .selectAll()
    .where('job_id', '=', jobId)
    .orderBy('position')
    .execute()
  const whole = {
    ...fieldsOf(row.body, what),
    jobId,
    title: row.title,
    createdOn: row.created_on,
    rooms: rooms.map((room) => ({ ...fieldsOf(room.body, what), roomId: room.room_id, name: room.name })),
    swaps: swaps.map((swap) => ({
      ...fieldsOf(swap.body, what),
      swapId: swap.swap_id,
      roomId: swap.room_id,
    })),
  }
  return readRow(jobSchema, whole, what)
}

/** Keeps a job as it stands. Its rooms and swaps replace those that were there. */
export async function saveJob(tx: WriteTx, job: Job, savedAt: string): Promise<void> {
  const { jobId, title, createdOn, rooms, swaps, ...body } = job
  const row = {
    title,
    customer_name: job.customer.name,
    place: job.site.addressLines.join(', '),
    created_on: createdOn,
    saved_at: savedAt,
    body: JSON.stringify(body),
  }
  await tx
    .insertInto('job')
    .values({ job_id: jobId, ...row })
    .onConflict((conflict) => conflict.column('job_id').doUpdateSet(row))
    .execute()
  // The room's swaps go with it.
  await tx.deleteFrom('room').where('job_id', '=', jobId).execute()
  if (rooms.length > 0)
    await tx
      .insertInto('room')
      .values(rooms.map((room, at) => roomRow(jobId, room, at)))
      .execute()
  if (swaps.length > 0)
    await tx
      .insertInto('swap')
      .values(swaps.map((swap, at) => swapRow(jobId, swap, at)))
      .execute()
}

/** Removes a job with its rooms and swaps; false when there was none. Quotes kept of it stay. */
export async function removeJob(tx: WriteTx, jobId: string): Promise<boolean> {
  const removed = await tx.deleteFrom('job').where('job_id', '=', jobId).executeTakeFirst()
  return removed.numDeletedRows > 0n
}

function roomRow(jobId: string, { roomId, name, ...body }: Room, position: number) {
  return { job_id: jobId, room_id: roomId, position, name, body: JSON.stringify(body) }
}

function swapRow(jobId: string, { swapId, roomId, ...body }: Swap, position: number) {
  return { job_id: jobId, swap_id: swapId, room_id: roomId, position, body: JSON.stringify(body) }
}
