import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import { listJobs, readJob, removeJob, saveJob } from '../../src-main/store/jobs.ts'
import { closeStore, reading, writing } from '../../src-main/store/store.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { now, opened, tempFolder } from './store-for-tests.ts'

const store = async () => opened(await tempFolder())
const [room] = bedroomJob().rooms
const [swap] = bedroomJob().swaps
if (room === undefined || swap === undefined) throw new Error('The bedroom job has a room and a swap')

const word = fc
  .string({ minLength: 1, maxLength: 40, unit: 'grapheme' })
  .filter((text) => text.trim() === text && text !== '')
const lines = word.filter((text) => text.length <= 200)
const ids = (most: number) =>
  fc.uniqueArray(fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._-]{0,20}$/), { minLength: 1, maxLength: most })

/** Small jobs of any names and ids, each swap in a room that is there. */
const anyJob: fc.Arbitrary<Job> = fc
  .record({
    roomIds: ids(4),
    swapIds: ids(5),
    jobId: ids(1),
    title: lines,
    customer: lines,
    note: lines,
    pick: fc.nat(),
  })
  .map(({ roomIds, swapIds, jobId, title, customer, note, pick }) =>
    bedroomJob({
      jobId: jobId[0] ?? 'j',
      title,
      customer: { name: customer, addressLines: [note] },
      rooms: roomIds.map((roomId) => ({ ...room, roomId, name: title, note })),
      swaps: swapIds.map((swapId, at) => ({
        ...swap,
        swapId,
        roomId: roomIds[(at + pick) % roomIds.length] ?? '',
      })),
      options: [{ optionId: 'o', name: note, netPence: pick % 100_000, chosen: pick % 2 === 0 }],
      figures: { 'a.figure': pick / 7 },
    }),
  )
  .filter((job) => jobSchema.safeParse(job).success)

describe('jobs in the data file', () => {
  it('come back as they were saved, whatever is in them', async () => {
    const kept = await store()
    await fc.assert(
      fc.asyncProperty(anyJob, async (job) => {
        await writing(kept, (tx) => saveJob(tx, job, now()))
        expect(await reading(kept, (tx) => readJob(tx, job.jobId))).toEqual(job)
      }),
      { numRuns: 60 },
    )
  })

  it('are still there when the folder is opened again', async () => {
    const first = await store()
    await writing(first, (tx) => saveJob(tx, bedroomJob(), now()))
    await closeStore(first)
    const again = await opened(first.folder)
    expect(await reading(again, (tx) => readJob(tx, 'bedroom-1'))).toEqual(bedroomJob())
  })

  it('lose a room and its swaps when they are saved without them', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob(), now()))
    const emptied = bedroomJob({ rooms: [], swaps: [] })
    await writing(kept, (tx) => saveJob(tx, emptied, now()))
    expect(await reading(kept, (tx) => readJob(tx, 'bedroom-1'))).toEqual(emptied)
    const left = await reading(kept, (tx) => tx.selectFrom('swap').select('swap_id').execute())
    expect(left).toEqual([])
  })

  it('are listed in short, the last saved first', async () => {
    const kept = await store()
    await writing(kept, async (tx) => {
      await saveJob(tx, bedroomJob({ jobId: 'older' }), '2026-03-01T10:00:00.000Z')
      await saveJob(tx, bedroomJob({ jobId: 'newer', rooms: [], swaps: [] }), '2026-03-02T10:00:00.000Z')
    })
    expect(await reading(kept, listJobs)).toEqual([
      expect.objectContaining({ jobId: 'newer', rooms: 0, swaps: 0 }),
      {
        jobId: 'older',
        title: 'Back bedroom radiator',
        customerName: 'Test Customer',
        place: '1 Example Row, Sampleton',
        createdOn: '2026-03-02',
        savedAt: '2026-03-01T10:00:00.000Z',
        rooms: 1,
        swaps: 1,
        stage: 'surveying',
        archived: false,
      },
    ])
  })

  it('go with all their rooms and swaps, and leave other jobs alone', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob(), now()))
    await writing(kept, (tx) => saveJob(tx, bedroomJob({ jobId: 'other' }), now()))
    expect(await writing(kept, (tx) => removeJob(tx, 'bedroom-1'))).toBe(true)
    expect(await writing(kept, (tx) => removeJob(tx, 'bedroom-1'))).toBe(false)
    expect(await reading(kept, (tx) => readJob(tx, 'bedroom-1'))).toBeNull()
    expect(await reading(kept, (tx) => tx.selectFrom('room').select('job_id').execute())).toEqual([
      { job_id: 'other' },
    ])
    expect(await reading(kept, (tx) => tx.selectFrom('swap').select('job_id').execute())).toEqual([
      { job_id: 'other' },
    ])
  })

  it('keep ids that look like numbers as they are', async () => {
    const kept = await store()
    const job = bedroomJob({
      jobId: '00126',
      rooms: [{ ...room, roomId: '007' }],
      swaps: [{ ...swap, roomId: '007', swapId: '01' }],
    })
    await writing(kept, (tx) => saveJob(tx, job, now()))
    await writing(kept, (tx) => saveJob(tx, bedroomJob({ jobId: '126' }), now()))
    expect(await reading(kept, (tx) => readJob(tx, '00126'))).toEqual(job)
  })

  it('say which job is damaged, rather than giving half of it', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob(), now()))
    await writing(kept, (tx) => tx.updateTable('room').set({ body: '{"use":"attic"}' }).execute())
    await expect(reading(kept, (tx) => readJob(tx, 'bedroom-1'))).rejects.toThrow(
      'The job bedroom-1 is not as it was saved',
    )
  })
})
