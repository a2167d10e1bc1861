import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import { workUp } from '../../../src-main/desk/quoting/work-up.ts'
import { migrationList } from '../../../src-main/store/migration-list.ts'
import { listIssued, nextInSeries, readIssued, readIssuedPdf } from '../../../src-main/store/quotes.ts'
import { closeStore, openStore, reading } from '../../../src-main/store/store.ts'
import { deskWith, now, opened, tempFolder, valueOf } from '../store-for-tests.ts'

it('the step to issued quotes keeps every kept quote, and goes on with its numbers', async () => {
  const job = jobSchema.parse(sample)
  const { catalogue, figures, quote, pickList } = valueOf(await workUp(job, deskWith(null)))
  const snapshot = { job, catalogue, figures, quote, pickList }
  const folder = await tempFolder()
  const before = valueOf(await openStore({ folder, now, steps: migrationList.slice(0, 2) }))
  await closeStore(before)
  const raw = new Database(before.file)
  const put = raw.prepare('insert into kept_quote (quote_id, job_id, kept_on, snapshot) values (?, ?, ?, ?)')
  const names = ['Q-2025-0041', 'Q-2026-0001', 'Q-2026-0012'] as const
  for (const name of names) put.run(name, job.jobId, `${name.slice(2, 6)}-03-02`, JSON.stringify(snapshot))
  raw.close()

  const store = await opened(folder)
  const listed = await reading(store, (tx) => listIssued(tx))
  expect(listed.map(({ quoteId }) => quoteId)).toEqual(['Q-2026-0012', 'Q-2026-0001', 'Q-2025-0041'])
  expect(listed[0]).toEqual({
    quoteId: 'Q-2026-0012',
    number: 'Q-2026-0012',
    revision: 0,
    jobId: job.jobId,
    title: job.title,
    customerName: job.customer.name,
    issuedOn: '2026-03-02',
    // Thirty days, as the delivered figures say.
    validUntil: '2026-04-01',
    grossPence: quote.totals.grossPence,
    events: [{ kind: 'issued', onDay: '2026-03-02', at: '2026-03-02T00:00:00.000Z' }],
  })
  const read = await reading(store, (tx) => readIssued(tx, 'Q-2025-0041'))
  expect(read?.snapshot).toEqual(JSON.parse(JSON.stringify(snapshot)))
  expect(await reading(store, (tx) => readIssuedPdf(tx, 'Q-2025-0041'))).toBeNull()
  const next = (series: string) =>
    reading(store, (tx) => nextInSeries(tx, series, (nth) => series.replace('{nnnn}', `${nth}`)))
  expect([await next('Q-2025-{nnnn}'), await next('Q-2026-{nnnn}'), await next('Q-2027-{nnnn}')]).toEqual([
    42, 13, 1,
  ])
})
