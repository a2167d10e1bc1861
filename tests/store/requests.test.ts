import { describe, expect, it } from 'vitest'
import { requests } from '../../src-main/contract/requests.ts'
import type { RequestName } from '../../src-main/contract/requests.ts'
import type { Firm } from '../../src-main/domain/firm.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Outcome, Problem } from '../../src-main/domain/outcome.ts'
import { catalogueItem } from '../../src-main/desk/catalogue/catalogue-item.ts'
import { catalogueSearch } from '../../src-main/desk/catalogue/catalogue-search.ts'
import { priceSet } from '../../src-main/desk/catalogue/price-set.ts'
import { checkJob } from '../../src-main/desk/jobs/check-job.ts'
import { firmRead } from '../../src-main/desk/jobs/firm-read.ts'
import { firmSave } from '../../src-main/desk/jobs/firm-save.ts'
import { jobExport } from '../../src-main/desk/jobs/job-export.ts'
import { jobImport } from '../../src-main/desk/jobs/job-import.ts'
import { jobList } from '../../src-main/desk/jobs/job-list.ts'
import { jobRead } from '../../src-main/desk/jobs/job-read.ts'
import { jobRemove } from '../../src-main/desk/jobs/job-remove.ts'
import { jobSave } from '../../src-main/desk/jobs/job-save.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { smallCatalogue } from './catalogue-for-tests.ts'
import { deskWith, filledStore, now, valueOf } from './store-for-tests.ts'

const desk = async () => deskWith(await filledStore())
const firm: Firm = { name: 'Sampleton Test Heating', addressLines: ['2 Example Row'] }
const [room] = bedroomJob().rooms
const [wall] = room?.walls ?? []
const [swap] = bedroomJob().swaps
if (room === undefined || wall === undefined || swap === undefined)
  throw new Error('The bedroom job is whole')

/** An answer, once it has passed the schema that the contract gives for it. */
function answered<T>(name: RequestName, outcome: Outcome<T>): T {
  const value = valueOf(outcome)
  expect(requests[name].output.safeParse(value).error).toBeUndefined()
  return value
}

function problemsOf(outcome: Outcome<unknown>): readonly Problem[] {
  if (outcome.ok) throw new Error('It was not refused')
  return outcome.problems
}

describe('the job requests', () => {
  it('save, list, read and remove a job', async () => {
    const at = await desk()
    const saved = answered('job.save', await jobSave({ job: bedroomJob() }, at))
    expect(saved).toEqual({ jobId: 'bedroom-1', savedAt: now() })
    expect(answered('job.list', await jobList({}, at)).jobs.map(({ jobId }) => jobId)).toEqual(['bedroom-1'])
    expect(answered('job.read', await jobRead({ jobId: 'bedroom-1' }, at)).job).toEqual(bedroomJob())
    expect(answered('job.remove', await jobRemove({ jobId: 'bedroom-1' }, at))).toEqual({
      jobId: 'bedroom-1',
    })
    expect(problemsOf(await jobRead({ jobId: 'bedroom-1' }, at))).toEqual([
      expect.objectContaining({ code: 'not-found', path: 'jobId' }),
    ])
    expect(problemsOf(await jobRemove({ jobId: 'bedroom-1' }, at))[0]?.code).toBe('not-found')
    expect(problemsOf(await jobExport({ jobId: 'bedroom-1' }, at))[0]?.code).toBe('not-found')
  })

  it('keep nothing of a job that does not hang together', async () => {
    const at = await desk()
    const job = bedroomJob({ swaps: [{ ...swap, roomId: 'attic' }] })
    expect(problemsOf(await jobSave({ job }, at))).toEqual([
      {
        code: 'invalid',
        message: 'Swap swap-1 is in room attic, which the job does not have: it should be bedroom.',
        path: 'job.swaps[0].roomId',
      },
    ])
    expect(problemsOf(await jobImport({ job }, at))[0]?.path).toBe('job.swaps[0].roomId')
    expect(valueOf(await jobList({}, at)).jobs).toEqual([])
  })

  it('import a job once, and again only to replace', async () => {
    const at = await desk()
    const changed = bedroomJob({ title: 'Changed elsewhere' })
    expect(answered('job.import', await jobImport({ job: bedroomJob() }, at)).replaced).toBe(false)
    expect(problemsOf(await jobImport({ job: changed }, at))).toEqual([
      expect.objectContaining({ code: 'conflict', path: 'job.jobId' }),
    ])
    expect(valueOf(await jobRead({ jobId: 'bedroom-1' }, at)).job.title).toBe('Back bedroom radiator')
    expect(answered('job.import', await jobImport({ job: changed, replace: true }, at)).replaced).toBe(true)
    expect(valueOf(await jobRead({ jobId: 'bedroom-1' }, at)).job).toEqual(changed)
  })

  it("export a job with the firm's details, unless it has its own", async () => {
    const at = await desk()
    await jobSave({ job: bedroomJob() }, at)
    expect(answered('job.export', await jobExport({ jobId: 'bedroom-1' }, at)).job).toEqual(bedroomJob())
    expect(answered('firm.read', await firmRead({}, at)).firm).toBeNull()
    expect(answered('firm.save', await firmSave({ firm }, at)).firm).toEqual(firm)
    expect(valueOf(await firmRead({}, at)).firm).toEqual(firm)
    expect(answered('job.export', await jobExport({ jobId: 'bedroom-1' }, at)).job).toEqual(
      bedroomJob({ firm }),
    )
    const own = { ...firm, name: 'Another Test Firm' }
    await jobSave({ job: bedroomJob({ firm: own }) }, at)
    expect(valueOf(await jobExport({ jobId: 'bedroom-1' }, at)).job.firm).toEqual(own)
  })
})

describe('the check of a job', () => {
  const pathsOf = (job: Job) => {
    const outcome = checkJob(job, smallCatalogue)
    return outcome.ok ? [] : outcome.problems.map(({ code, path }) => [code, path])
  }

  it('finds every swap that points at nothing', () => {
    expect(pathsOf(bedroomJob())).toEqual([])
    expect(pathsOf(bedroomJob({ swaps: [{ ...swap, wallId: 'north' }] }))).toEqual([
      ['invalid', 'job.swaps[0].wallId'],
    ])
    const swaps = [swap, { ...swap, swapId: 'swap-2', roomId: 'attic', emitterId: 'none' }]
    expect(pathsOf(bedroomJob({ swaps }))).toEqual([
      ['invalid', 'job.swaps[1].roomId'],
      ['not-found', 'job.swaps[1].emitterId'],
    ])
    const pipe = { ...swap, emitterId: 'test-pipe-15' }
    expect(pathsOf(bedroomJob({ swaps: [pipe] }))).toEqual([['invalid', 'job.swaps[0].emitterId']])
  })

  it('finds every id that is there twice', () => {
    expect(pathsOf(bedroomJob({ rooms: [room, room] }))).toEqual([['invalid', 'job.rooms[1].roomId']])
    expect(pathsOf(bedroomJob({ rooms: [{ ...room, walls: [wall, wall] }] }))).toEqual([
      ['invalid', 'job.rooms[0].walls[1].wallId'],
    ])
    expect(pathsOf(bedroomJob({ swaps: [swap, swap] }))).toEqual([['invalid', 'job.swaps[1].swapId']])
    const option = { optionId: 'a', name: 'An option', netPence: 100, chosen: false }
    expect(pathsOf(bedroomJob({ options: [option, option] }))).toEqual([
      ['invalid', 'job.options[1].optionId'],
    ])
  })
})

describe('the catalogue requests over a data file', () => {
  it('search, and show an item with what each supplier asks today, the lowest first', async () => {
    const at = await desk()
    const found = answered('catalogue.search', await catalogueSearch({ text: '600 1000' }, at))
    expect(found.items).toEqual([{ item: smallCatalogue.items[0], fromPence: 9500 }])
    const shown = answered('catalogue.item', await catalogueItem({ itemId: 'test-panel-600x1000' }, at))
    expect(shown.prices.map(({ supplier, price }) => [supplier.name, price.code, price.packPence])).toEqual([
      ['Southmoor Test Supplies', 'SM-4410', 9500],
      ['Northfield Test Supplies', '00126', 9850],
    ])
    expect(problemsOf(await catalogueItem({ itemId: 'none' }, at))[0]).toMatchObject({
      code: 'not-found',
      path: 'itemId',
    })
  })

  it('set a price from today when no day is said', async () => {
    const at = await desk()
    const input = { itemId: 'test-panel-600x1000', supplierId: 'north', packHolds: 1, packPence: 9100 }
    const { price, before } = answered('price.set', await priceSet(input, at))
    expect([price.code, price.validFrom, before?.validFrom]).toEqual(['00126', '2026-03-02', '2026-01-01'])
    const found = valueOf(await catalogueSearch({ text: '600 1000' }, at))
    expect(found.items[0]?.fromPence).toBe(9100)
    const yesterday = valueOf(await catalogueSearch({ text: '600 1000' }, { ...at, today: '2026-03-01' }))
    expect(yesterday.items[0]?.fromPence).toBe(9500)
  })

  it('cannot set a price without a data file', async () => {
    const input = { itemId: 'test-panel-600x1000', supplierId: 'north', packHolds: 1, packPence: 9100 }
    expect(() => priceSet(input, deskWith(null))).toThrow('needs a data folder')
  })
})
