import { sql } from 'kysely'
import type { RawBuilder } from 'kysely'
import { jobColumns, jobRowOf } from '../jobs.ts'
import type { JobRow } from '../jobs.ts'
import type { ReadTx } from '../tables.ts'

export type RoomFound = {
  readonly jobId: string
  readonly roomId: string
  readonly name: string
  readonly jobTitle: string
  readonly customerName: string
}

export type SwapFound = {
  readonly jobId: string
  readonly swapId: string
  readonly roomName: string
  readonly emitterName: string
  readonly jobTitle: string
}

export type Found = {
  readonly jobs: readonly JobRow[]
  readonly rooms: readonly RoomFound[]
  readonly swaps: readonly SwapFound[]
}

/**
 * Jobs, rooms and swaps that hold every word, in any order, up to `most` of each, the last saved first. Capitals count as small
 * letters from A to Z only, as SQLite has them. Without a word there are jobs alone.
 */
export async function findJobs(tx: ReadTx, text: string, most: number): Promise<Found> {
  const words = text.trim().toLowerCase().split(/\s+/).filter(Boolean)
  const jobs = await jobsWith(tx, words, most)
  if (words.length === 0) return { jobs, rooms: [], swaps: [] }
  return { jobs, rooms: await roomsWith(tx, words, most), swaps: await swapsWith(tx, words, most) }
}

const jobWords = sql<string>`job.title || ' ' || job.customer_name || ' ' || job.place`
const roomWords = sql<string>`${jobWords} || ' ' || room.name`
const swapWords = sql<string>`${roomWords} || ' swap ' || coalesce(item.name, '')`

/** True where every word is somewhere in the text. */
function has(text: RawBuilder<string>, words: readonly string[]): RawBuilder<boolean> {
  const each = words.map((word) => sql`instr(lower(${text}), ${word}) > 0`)
  return each.length === 0 ? sql<boolean>`true` : sql<boolean>`(${sql.join(each, sql` and `)})`
}

async function jobsWith(tx: ReadTx, words: readonly string[], most: number): Promise<readonly JobRow[]> {
  const rows = await tx
    .selectFrom('job')
    .select(jobColumns)
    .where(has(jobWords, words))
    .orderBy('saved_at', 'desc')
    .orderBy('job_id')
    .limit(most)
    .execute()
  return rows.map(jobRowOf)
}

function roomsWith(tx: ReadTx, words: readonly string[], most: number): Promise<readonly RoomFound[]> {
  return tx
    .selectFrom('room')
    .innerJoin('job', 'job.job_id', 'room.job_id')
    .select([
      'room.job_id as jobId',
      'room.room_id as roomId',
      'room.name as name',
      'job.title as jobTitle',
      'job.customer_name as customerName',
    ])
    .where(has(roomWords, words))
    .orderBy('job.saved_at', 'desc')
    .orderBy('room.job_id')
    .orderBy('room.position')
    .limit(most)
    .execute()
}

function swapsWith(tx: ReadTx, words: readonly string[], most: number): Promise<readonly SwapFound[]> {
  return tx
    .selectFrom('swap')
    .innerJoin('job', 'job.job_id', 'swap.job_id')
    .innerJoin('room', (join) =>
      join.onRef('room.job_id', '=', 'swap.job_id').onRef('room.room_id', '=', 'swap.room_id'),
    )
    .leftJoin('item', (join) =>
      join.on('item.item_id', '=', sql<string>`json_extract(swap.body, '$.emitterId')`),
    )
    .select([
      'swap.job_id as jobId',
      'swap.swap_id as swapId',
      'room.name as roomName',
      sql<string>`coalesce(item.name, '')`.as('emitterName'),
      'job.title as jobTitle',
    ])
    .where(has(swapWords, words))
    .orderBy('job.saved_at', 'desc')
    .orderBy('swap.job_id')
    .orderBy('swap.position')
    .limit(most)
    .execute()
}
