import { describe, expect, it } from 'vitest'
import { answer } from '../../src-main/desk/router.ts'
import { findJobs } from '../../src-main/store/job-search/find-jobs.ts'
import { listJobs, markJob, readJob, saveJob } from '../../src-main/store/jobs.ts'
import { reading, writing } from '../../src-main/store/store.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { deskWith, filledStore, now, opened, tempFolder } from './store-for-tests.ts'

const store = async () => opened(await tempFolder())

/** What a request answers, as plain values. */
async function asked(name: string, input: unknown, kept: Awaited<ReturnType<typeof store>>) {
  return answer(name, input, deskWith(kept))
}

describe('stage and archive of a job in the data file', () => {
  it('are read back in the list, surveying and not archived when nobody said so', async () => {
    const kept = await store()
    await writing(kept, async (tx) => {
      await saveJob(tx, bedroomJob({ jobId: 'new' }), '2026-03-03T10:00:00.000Z')
      await saveJob(tx, bedroomJob({ jobId: 'won', stage: 'accepted' }), '2026-03-02T10:00:00.000Z')
      await saveJob(tx, bedroomJob({ jobId: 'old', stage: 'lost', archived: true }), now())
    })
    const rows = await reading(kept, listJobs)
    expect(rows.map(({ jobId, stage, archived }) => [jobId, stage, archived])).toEqual([
      ['new', 'surveying', false],
      ['won', 'accepted', false],
      ['old', 'lost', true],
    ])
  })

  it('are set without touching anything else, nor the place in the list', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob(), now()))
    const marked = await writing(kept, (tx) => markJob(tx, 'bedroom-1', { archived: true }))
    expect(marked).toEqual({ stage: 'surveying', archived: true })
    await writing(kept, (tx) => markJob(tx, 'bedroom-1', { stage: 'done' }))
    expect(await reading(kept, (tx) => readJob(tx, 'bedroom-1'))).toEqual({
      ...bedroomJob(),
      stage: 'done',
      archived: true,
    })
    expect((await reading(kept, listJobs))[0]?.savedAt).toBe(now())
    expect(await writing(kept, (tx) => markJob(tx, 'nobody', { stage: 'done' }))).toBeNull()
  })

  it('say which job is damaged when the stage is none', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob(), now()))
    await writing(kept, (tx) => tx.updateTable('job').set({ body: '{"stage":"begun"}' }).execute())
    await expect(reading(kept, listJobs)).rejects.toThrow('The job bedroom-1 is not as it was saved')
  })
})

describe('jobs, rooms and swaps', () => {
  it('are found by all words in any order, in capitals or not, rooms by their job too', async () => {
    const kept = await filledStore()
    const other = { name: 'Sam Example', addressLines: ['9 Mill Lane'] }
    await writing(kept, async (tx) => {
      await saveJob(tx, bedroomJob(), '2026-03-02T10:00:00.000Z')
      await saveJob(tx, bedroomJob({ jobId: 'mill', title: 'Hall rail', customer: other }), now())
    })
    const find = (text: string, most = 8) => reading(kept, (tx) => findJobs(tx, text, most))
    expect((await find('RADIATOR bedroom')).jobs.map(({ jobId }) => jobId)).toEqual(['bedroom-1'])
    expect((await find('back hall')).rooms).toEqual([
      {
        jobId: 'mill',
        roomId: 'bedroom',
        name: 'Back bedroom',
        jobTitle: 'Hall rail',
        customerName: 'Sam Example',
      },
    ])
    expect((await find('bedroom')).rooms.map(({ jobId }) => jobId)).toEqual(['bedroom-1', 'mill'])
    expect((await find('bedroom', 1)).rooms).toHaveLength(1)
    expect((await find('swap hall')).swaps.map(({ jobId }) => jobId)).toEqual(['mill'])
    expect(await find('nowhere')).toEqual({ jobs: [], rooms: [], swaps: [] })
    const all = await find('  ')
    expect([all.jobs.length, all.rooms.length, all.swaps.length]).toEqual([2, 0, 0])
  })

  it('are found by letters that mean something to a database, as they stand', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob({ title: "100 % of O'Test's_rail" }), now()))
    const found = async (text: string) => (await reading(kept, (tx) => findJobs(tx, text, 8))).jobs.length
    expect(await found("% o'test's_")).toBe(1)
    expect(await found('_%')).toBe(0)
  })
})

describe('what is asked about the list of jobs', () => {
  it('a copy is a job of its own and leaves the other as it was', async () => {
    const kept = await store()
    const from = bedroomJob({ stage: 'accepted', quotedOn: '2026-03-02' })
    await writing(kept, (tx) => saveJob(tx, from, now()))
    const made = await asked('job.copy', { jobId: 'bedroom-1' }, kept)
    expect(made).toMatchObject({ ok: true, value: { title: 'Back bedroom radiator (copy)' } })
    const rows = await reading(kept, listJobs)
    expect(rows.map(({ title }) => title).toSorted()).toEqual([
      'Back bedroom radiator',
      'Back bedroom radiator (copy)',
    ])
    expect(new Set(rows.map(({ jobId }) => jobId)).size).toBe(2)
    expect(await reading(kept, (tx) => readJob(tx, 'bedroom-1'))).toEqual(from)
  })

  it('the sum and the next step of a job are those of its quote', async () => {
    const kept = await filledStore()
    const { value } = (await asked('job.sample', {}, kept)) as { value: { job: { jobId: string } } }
    const { openDesk } = await import('../../src-main/desk/open-desk.ts')
    const whole = await openDesk({ dataFolder: await tempFolder(), mayChoosePath: false })
    if (!whole.ok) throw new Error('The desk did not open')
    const desk = { ...whole.value.desk(), today: '2026-03-02' }
    await answer('job.save', { job: value.job }, desk)
    const quote = await answer('quote.build', { job: value.job }, desk)
    const summary = await answer('job.summary', { jobId: value.job.jobId }, desk)
    await whole.value.close()
    if (!quote.ok) throw new Error('The sample job has a price')
    const { totals } = quote.value as { readonly totals: { readonly grossPence: number } }
    expect(summary).toEqual({
      ok: true,
      value: { grossPence: totals.grossPence, gaps: 0, next: 'Make the quote' },
    })
  })

  it('a job without swaps has no sum, and one that is not there is refused', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob({ swaps: [] }), now()))
    expect(await asked('job.summary', { jobId: 'bedroom-1' }, kept)).toEqual({
      ok: true,
      value: { grossPence: null, gaps: 0, next: 'Add a swap' },
    })
    for (const name of ['job.summary', 'job.copy', 'job.mark']) {
      expect(await asked(name, { jobId: 'nobody' }, kept)).toMatchObject({
        ok: false,
        problems: [{ code: 'not-found', path: 'jobId' }],
      })
    }
  })
})

describe("the firm's own figures, as they are asked for", () => {
  const rate = 'money.labourPencePerHour'
  const ownRate = async (kept: Awaited<ReturnType<typeof store>>) => {
    const got = await asked('figures.own', {}, kept)
    const { figures } = (got as { readonly value: { readonly figures: readonly { readonly id: string }[] } })
      .value
    return figures.find(({ id }) => id === rate)
  }

  it('stand beside the usual ones with their source, and go back to them', async () => {
    const kept = await store()
    expect(await ownRate(kept)).toMatchObject({ usual: 5200, own: null, source: 'from memory' })
    await asked('figures.save', { figures: { [rate]: 5500 } }, kept)
    expect(await ownRate(kept)).toMatchObject({ usual: 5200, own: 5500 })
    expect(await asked('figures.save', { figures: { [rate]: null } }, kept)).toEqual({
      ok: true,
      value: { own: {} },
    })
  })

  it('are kept all or none', async () => {
    const kept = await store()
    const saved = await asked(
      'figures.save',
      { figures: { [rate]: 5500, 'money.depositBasisPoints': 10_001 } },
      kept,
    )
    expect(saved).toMatchObject({ ok: false, problems: [{ path: 'figures.money.depositBasisPoints' }] })
    expect(await ownRate(kept)).toMatchObject({ own: null })
  })
})
