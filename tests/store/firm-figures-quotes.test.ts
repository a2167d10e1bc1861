import { describe, expect, it } from 'vitest'
import { because } from '../../src-main/domain/derivation.ts'
import type { Firm } from '../../src-main/domain/firm.ts'
import { readOverrides, setOverride } from '../../src-main/store/figures.ts'
import { readFirm, saveFirm } from '../../src-main/store/firm.ts'
import { removeJob, saveJob } from '../../src-main/store/jobs.ts'
import { readIssued } from '../../src-main/store/quotes.ts'
import type { QuoteSnapshot } from '../../src-main/store/quotes.ts'
import { reading, writing } from '../../src-main/store/store.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { smallCatalogue } from './catalogue-for-tests.ts'
import { issueByHand, now, opened, tempFolder } from './store-for-tests.ts'

const store = async () => opened(await tempFolder())
const firm: Firm = {
  name: 'Sampleton Test Heating',
  addressLines: ['2 Example Row'],
  email: 'office@example.com',
}
const why = because('A quote for a test', 0)

const snapshot: QuoteSnapshot = {
  job: bedroomJob(),
  catalogue: smallCatalogue,
  figures: {
    settings: { 'money.tax': { says: 'Tax', value: 20, unit: '%', source: 'made up for this test' } },
    tasks: {},
    fixings: [],
  },
  quote: {
    lines: [],
    options: [],
    labour: { expectedMin: 0, sdMin: 0, p50Min: 0, p80Min: 0, tasks: [], why },
    totals: { netPence: 0, taxes: [], grossPence: 0, depositPence: 0 },
    gaps: [],
    cautions: [],
    tools: [],
    warmth: [],
    internal: { costPence: 0, marginPence: 0, labourCostPence: 0, purchases: [] },
    why,
  },
}

describe("the firm's details", () => {
  it('are nothing until given, and then the last that were given', async () => {
    const kept = await store()
    expect(await reading(kept, readFirm)).toBeNull()
    await writing(kept, (tx) => saveFirm(tx, { ...firm, phone: '01632 960002' }))
    await writing(kept, (tx) => saveFirm(tx, firm))
    expect(await reading(kept, readFirm)).toEqual(firm)
  })
})

describe("the firm's own figures", () => {
  it('are kept by setting, and go back to the default', async () => {
    const kept = await store()
    await writing(kept, (tx) => setOverride(tx, 'money.ratePencePerHour', 5250))
    await writing(kept, (tx) => setOverride(tx, 'seal.overlapRatio', 0.5))
    await writing(kept, (tx) => setOverride(tx, 'money.ratePencePerHour', 5500))
    expect(await reading(kept, readOverrides)).toEqual({
      'money.ratePencePerHour': 5500,
      'seal.overlapRatio': 0.5,
    })
    await writing(kept, (tx) => setOverride(tx, 'seal.overlapRatio', null))
    expect(await reading(kept, readOverrides)).toEqual({ 'money.ratePencePerHour': 5500 })
  })
})

describe('an issued quote', () => {
  it('comes back as it was', async () => {
    const kept = await store()
    const quoteId = await issueByHand(kept, snapshot, { quoteId: 'Q-2026-0002' })
    expect(await reading(kept, (tx) => readIssued(tx, quoteId))).toEqual({
      quoteId: 'Q-2026-0002',
      number: 'Q-2026-0002',
      revision: 0,
      jobId: 'bedroom-1',
      title: bedroomJob().title,
      customerName: bedroomJob().customer.name,
      issuedOn: '2026-03-02',
      validUntil: '2026-04-01',
      grossPence: 0,
      program: 'a test',
      snapshot,
    })
    expect(await reading(kept, (tx) => readIssued(tx, 'Q-2026-0009'))).toBeNull()
  })

  it('outlives its job', async () => {
    const kept = await store()
    await writing(kept, (tx) => saveJob(tx, bedroomJob(), now()))
    const quoteId = await issueByHand(kept, snapshot)
    await writing(kept, (tx) => removeJob(tx, 'bedroom-1'))
    expect((await reading(kept, (tx) => readIssued(tx, quoteId)))?.snapshot.job).toEqual(bedroomJob())
  })

  it('is never changed and never deleted, whoever tries', async () => {
    const kept = await store()
    await issueByHand(kept, snapshot)
    const change = writing(kept, (tx) => tx.updateTable('issued_quote').set({ gross_pence: 1 }).execute())
    await expect(change).rejects.toThrow('an issued quote is never changed')
    const removal = writing(kept, (tx) => tx.deleteFrom('issued_quote').execute())
    await expect(removal).rejects.toThrow('an issued quote is never deleted')
  })
})
