import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it, onTestFinished } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { job as jobShape } from '../../../src-main/domain/job.ts'
import type { Item } from '../../../src-main/domain/item.ts'
import { bundledCatalogue } from '../../../src-main/desk/bundled-catalogue.ts'
import { customerQuoteView } from '../../../src-main/documents/customer-quote-view.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { keptWork } from '../../../src-main/desk/quoting/work-up.ts'
import { storeOf } from '../../../src-main/desk/store-of.ts'
import { seedCatalogue } from '../../../src-main/store/catalogue.ts'
import { saveJob } from '../../../src-main/store/jobs.ts'
import { closeStore, openStore, writing } from '../../../src-main/store/store.ts'
import { answered } from '../../answered.ts'
import { asked } from './ask-for-tests.ts'
import { deskWith, now, tempFolder, valueOf } from '../store-for-tests.ts'

const job = jobShape.parse(sample)
const today = '2026-11-25'

/** A data file with the shipped catalogue and the sample job in it. */
async function fullDesk(): Promise<Desk> {
  const store = valueOf(await openStore({ folder: await tempFolder(), now }))
  onTestFinished(() => closeStore(store))
  const catalogue = await bundledCatalogue()
  await writing(store, async (tx) => {
    await seedCatalogue(tx, catalogue, 'full')
    await saveJob(tx, job, now())
  })
  return deskWith(store, { today })
}

beforeAll(() => bundledCatalogue())
const [swap] = job.swaps
if (swap === undefined) throw new Error('The sample has a swap')

describe('an item that jobs use', () => {
  it('names them: the emitter that a swap puts up, and a part that the job would buy', async () => {
    const desk = await fullDesk()
    const who = [{ jobId: job.jobId, title: job.title }]
    const { usedBy, history, own } = await asked(desk, 'catalogue.item', { itemId: swap.emitterId })
    expect([usedBy, own]).toEqual([who, false])
    expect(history?.every(({ prices }) => prices.length === 1)).toBe(true)
    const quote = await asked(desk, 'quote.build', { job })
    const emitters = new Set(job.swaps.map(({ emitterId }) => emitterId))
    const part = quote.internal.purchases.find(({ itemId }) => !emitters.has(itemId))
    if (part === undefined) throw new Error('The sample job buys a part')
    expect((await asked(desk, 'catalogue.item', { itemId: part.itemId })).usedBy).toEqual(who)
    const retired = await asked(desk, 'item.retire', { itemId: part.itemId, retired: true })
    expect(retired.usedBy).toEqual(who)
    expect((await asked(desk, 'catalogue.item', { itemId: part.itemId })).usedBy).toEqual([])
    const unused = (await asked(desk, 'catalogue.search', { text: 'towel rail 1800', most: 50 })).items.find(
      ({ item }) => !emitters.has(item.itemId),
    )
    expect((await asked(desk, 'catalogue.item', { itemId: unused?.item.itemId ?? '' })).usedBy).toEqual([])
  })

  it('prints on an issued quote as it was, whatever the firm does to it since', async () => {
    const desk = await fullDesk()
    const { quoteId } = await asked(desk, 'quote.issue', { job })
    const before = answered(await keptWork(quoteId, desk))
    const { item } = await asked(desk, 'catalogue.item', { itemId: swap.emitterId })
    const changed: Item = { ...item, name: 'Quite another thing' }
    await asked(desk, 'item.save', {
      item: changed.kind === 'emitter' ? { ...changed, ratedW: 1, widthMm: 1 } : changed,
    })
    await asked(desk, 'item.retire', { itemId: swap.emitterId, retired: true })
    const after = answered(await keptWork(quoteId, desk))
    expect(after.quote).toEqual(before.quote)
    expect(after.emitters).toEqual(before.emitters)
    expect(after.setOuts).toEqual(before.setOuts)
    expect(after.pickList).toEqual(before.pickList)
    expect(after.emitters[swap.swapId]?.name).toBe(item.name)
  })
})

describe('a bulk change over open work', () => {
  it('says what each job’s parts cost now and would cost, and then they do', async () => {
    const desk = await fullDesk()
    const cost = async () => {
      const { internal } = await asked(desk, 'quote.build', { job })
      return internal.purchases.reduce((sum, { costPence }) => sum + costPence, 0)
    }
    const wasPence = await cost()
    const input = {
      which: { text: 'valve' },
      change: { kind: 'percent', basisPoints: 2500 },
      rounding: { toPence: 1, rule: 'up' },
    } as const
    const { openWork, counts } = await asked(desk, 'price.bulkCompare', input)
    const [first, ...others] = openWork
    expect(others).toEqual([])
    expect(first).toMatchObject({ jobId: job.jobId, title: job.title, wasPence })
    expect(first?.willPence).toBeGreaterThan(wasPence)
    expect((await asked(desk, 'price.bulkApply', input)).counts).toEqual(counts)
    expect(await cost()).toBe(first?.willPence)
  })
})

describe('a price file over open work', () => {
  it('says to the penny what it does to a job that buys two of one thing and one of another', async () => {
    const desk = { ...(await fullDesk()), mayChoosePath: true }
    const { internal } = await asked(desk, 'quote.build', { job })
    const bought = (code: string) =>
      internal.purchases.find(({ packs }) => packs.some((pack) => pack.code === code))
    const [elbow, emitter] = [bought('EL-CO-15'), bought('PA-DO-FI-600X1000')]
    // The job buys two elbows at 1.55 and one radiator at 59.88 from one supplier.
    expect([elbow?.costPence, emitter?.costPence]).toEqual([310, 5988])
    expect(elbow?.supplierId).toBe(emitter?.supplierId)
    const supplierId = emitter?.supplierId ?? ''
    const path = join(storeOf(desk).folder, 'list.csv')
    // The elbow falls by 40p, the radiator rises by 9p, and the third is nothing that the job buys.
    await writeFile(
      path,
      'Code,Description,Price\nEL-CO-15,Elbow,1.15\nPA-DO-FI-600X1000,Radiator,59.97\nZZ-1,Thing,9.00\n',
    )
    const { reading } = await asked(desk, 'priceFile.look', { file: { path } })
    const compared = await asked(desk, 'priceFile.compare', {
      file: { path },
      supplierId,
      reading,
      part: true,
    })
    expect(compared.counts).toMatchObject({ new: 1, changed: 2, missing: 0 })
    const wasPence = internal.purchases.reduce((sum, { costPence }) => sum + costPence, 0)
    // Two elbows at 40p less are 80p less, and a radiator at 9p more: 71p less in all.
    expect(compared.openWork).toEqual([
      { jobId: job.jobId, title: job.title, wasPence, willPence: wasPence - 71 },
    ])
  })
})

describe('an old price', () => {
  const lineOf = (quote: AnswerOf<'quote.build'>) => quote.lines.find(({ section }) => section === 'emitter')

  it('is marked on the quote under construction once it is older than the limit, by a day', async () => {
    const desk = await fullDesk()
    // The shipped prices begin on 5 January 2026; 365 days later it is 5 January 2027.
    const young = await asked(desk, 'quote.build', { job: { ...job, quotedOn: '2027-01-05' } })
    expect(young.lines.filter(({ stale }) => stale === true)).toEqual([])
    const old = await asked(desk, 'quote.build', { job: { ...job, quotedOn: '2027-01-06' } })
    expect(lineOf(old)).toMatchObject({ stale: true })
    expect(lineOf(old)?.staleSays).toMatch(
      /^The price of \S+ at .+ began on 2026-01-05, 366 days ago, and the firm takes a price on trust for 365: ask for a new one\.$/,
    )
    expect(old.lines.filter(({ section, stale }) => section === 'labour' && stale === true)).toEqual([])
  })

  it('is young again under the job’s own limit, and is marked on the item by the firm’s', async () => {
    const desk = await fullDesk()
    const longer = {
      ...job,
      quotedOn: '2027-01-06',
      figures: { ...job.figures, 'prices.staleAfterDays': 366 },
    }
    expect(lineOf(await asked(desk, 'quote.build', { job: longer }))?.stale).toBeUndefined()
    const item = { itemId: swap.emitterId }
    const young = await asked({ ...desk, today: '2027-01-05' }, 'catalogue.item', item)
    expect(young.prices.some(({ stale }) => stale === true)).toBe(false)
    const old = await asked({ ...desk, today: '2027-01-06' }, 'catalogue.item', item)
    expect(old.prices.every(({ stale, staleSays }) => stale === true && staleSays !== undefined)).toBe(true)
  })

  it('never reaches what is kept or what the customer reads', async () => {
    const desk = { ...(await fullDesk()), today: '2027-06-01' }
    const { quoteId } = await asked(desk, 'quote.issue', { job })
    const kept = answered(await keptWork(quoteId, desk))
    expect(JSON.stringify(kept.quote)).not.toContain('on trust')
    const quote = await asked(desk, 'quote.build', { job })
    expect(JSON.stringify(quote)).toContain('on trust')
    const view = customerQuoteView({
      job: kept.job,
      quote,
      firm: { name: 'Sampleton Test Heating', addressLines: [] },
      takeOffLines: kept.takeOff.lines,
      setOuts: kept.setOuts,
      emitters: kept.emitters,
      reference: quoteId,
      quotedOn: kept.quotedOn,
      validDays: 30,
      taxBasisPoints: {},
    })
    expect(JSON.stringify(view)).not.toContain('on trust')
  })
})
