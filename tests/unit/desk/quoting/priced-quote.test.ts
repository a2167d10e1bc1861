import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import type { Pricing } from '../../../../src-main/domain/pricing.ts'
import { quote as quoteSchema } from '../../../../src-main/domain/quote.ts'
import type { Quote, QuoteLine } from '../../../../src-main/domain/quote.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { quoteBuild } from '../../../../src-main/desk/quoting/quote-build.ts'
import { answered, refused } from '../../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job: Job = jobSchema.parse(sample)
const usual: Pricing = { taxTreatment: 'usual', rounding: 'document' }

const askFor = (pricing: Partial<Pricing>, more: Partial<Job> = {}) =>
  quoteBuild({ job: jobSchema.parse({ ...job, ...more, pricing: { ...usual, ...pricing } }) }, desk)
const built = async (pricing: Partial<Pricing>, more: Partial<Job> = {}): Promise<Quote> =>
  answered(await askFor(pricing, more))
const net = (lines: readonly QuoteLine[]) => lines.reduce((sum, line) => sum + line.netPence, 0)
const plain = answered(await quoteBuild({ job }, desk))

describe('a job that says how it is priced', () => {
  it('costs the same as one that does not, when it says the usual', async () => {
    const quote = await built({})
    expect(quote.lines).toEqual(plain.lines)
    expect(quote.totals).toEqual({ ...plain.totals, rounding: 'document', rule: 'half-up' })
    expect(quoteSchema.parse(quote)).toEqual(quote)
  })

  it('shows each line its own tax when tax is rounded by line, and the lines add up', async () => {
    // A fifth of 3 pence is 0.6, which is 1 by line: five such lines come to 2 pence more than by document.
    const options = [1, 2, 3, 4, 5].map((number) => ({ optionId: `o${number}`, name: 'Small', netPence: 3, chosen: true })) // prettier-ignore
    const quote = await built({ rounding: 'line' }, { options })
    const once = await built({ rounding: 'document' }, { options })
    expect([quote.totals.rounding, once.totals.rounding]).toEqual(['line', 'document'])
    expect(once.totals.taxes[0]?.taxPence).not.toBe(quote.totals.taxes[0]?.taxPence)
    for (const line of quote.lines) expect(line.taxPence).toBe(Math.floor((line.netPence * 20 + 50) / 100))
    const tax = quote.lines.reduce((sum, line) => sum + (line.taxPence ?? 0), 0)
    expect(quote.totals.taxes.map((one) => one.taxPence)).toEqual([tax])
    expect(quote.totals.grossPence).toBe(net(quote.lines) + tax)
  })

  it('refuses tax rounded down line by line, and takes it down once on the document', async () => {
    const problem = refused(await askFor({ rounding: 'line', rule: 'down' }))
    expect(problem.path).toBe('job.pricing.rule')
    const quote = await built({ rule: 'down' })
    expect(quote.totals.taxes[0]?.taxPence).toBe(Math.floor(quote.totals.netPence / 5))
  })
})

describe('categories of tax', () => {
  it('a line goes before its kind, a kind before its section', async () => {
    const valve = plain.lines.find((line) => line.name.startsWith('Thermostatic'))
    const { lines } = await built({
      lineCategories: { parts: 'reduced', valve: 'energySaving', [valve?.lineId ?? '']: 'zero' },
    })
    const keys = (section: string) => new Set(lines.filter((one) => one.section === section).map((one) => one.rateKey)) // prettier-ignore
    expect(lines.find((one) => one.lineId === valve?.lineId)?.rateKey).toBe('zero')
    expect(keys('parts')).toEqual(new Set(['reduced', 'energySaving', 'zero']))
    expect(keys('labour')).toEqual(new Set(['standard']))
  })

  it('energy-saving materials are never assumed: a thermostatic valve bears the standard rate by itself', () => {
    expect(new Set(plain.lines.map((line) => line.rateKey))).toEqual(new Set(['standard']))
  })

  it('the rate follows the day of the quote', async () => {
    const lineCategories = { valve: 'energySaving' } as const
    const taxOn = async (quotedOn: string) =>
      (await built({ lineCategories }, { quotedOn })).totals.taxes.find(
        (tax) => tax.rateKey === 'energySaving',
      )?.basisPoints
    expect([await taxOn('2027-03-31'), await taxOn('2027-04-01')]).toEqual([0, 500])
  })

  it('a category of a line that is not there is refused, and so is an option with an unknown one', async () => {
    const lost = refused(await askFor({ lineCategories: { 'part-999': 'zero' } }))
    expect(lost.path).toBe('job.pricing.lineCategories.part-999')
    const options = [{ optionId: 'a', name: 'A', netPence: 100, taxKey: 'luxury', chosen: false }]
    const unknown = refused(await quoteBuild({ job: { ...job, options } }, desk))
    expect(unknown.path).toBe('job.options[0].taxKey')
    expect(unknown.message).toContain('it should be standard or reduced')
  })

  it('an option has its own, and stays outside the total until it is chosen', async () => {
    const option = { optionId: 'a', name: 'A', netPence: 10_001, taxKey: 'reduced', chosen: false }
    const open = await built({}, { options: [option] })
    expect(open.options).toEqual([
      { optionId: 'a', name: 'A', netPence: 10_001, rateKey: 'reduced', taxPence: 500, chosen: false },
    ])
    const bare = await built({}, { options: [] })
    expect(open.totals).toEqual(bare.totals)
    const taken = await built({}, { options: [{ ...option, chosen: true }] })
    expect(taken.totals.grossPence).toBe(bare.totals.grossPence + 10_501)
  })
})

describe('reverse charge', () => {
  it('leaves no tax in the total and says what the customer accounts for: a fifth of the net', async () => {
    const { totals } = await built({ taxTreatment: 'reverseCharge' })
    expect(totals.grossPence).toBe(totals.netPence)
    expect(totals.netPence).toBe(plain.totals.netPence)
    expect(
      totals.taxes.map(({ rateKey, basisPoints, taxPence }) => [rateKey, basisPoints, taxPence]),
    ).toEqual([['reverseCharge', 0, 0]])
    expect(totals.reverseChargePence).toBe(plain.totals.taxes[0]?.taxPence)
    expect(totals.depositPence).toBe(Math.floor((totals.netPence * 25 + 50) / 100))
  })

  it('leaves lines without tax as they are', async () => {
    const { lines } = await built({ taxTreatment: 'reverseCharge', lineCategories: { emitter: 'exempt' } })
    expect(new Set(lines.map((line) => line.rateKey))).toEqual(new Set(['exempt', 'reverseCharge']))
  })
})

describe('discounts', () => {
  it('are lines below nothing; the lines they are taken from stay as they were', async () => {
    const quote = await built({
      discounts: [
        { kind: 'percent', name: 'Neighbour', basisPoints: 1000, of: 'labour' },
        { kind: 'amount', name: 'Returning customer', pence: 2500 },
      ],
    })
    const labour = net(plain.lines.filter((line) => line.section === 'labour'))
    expect(quote.lines.slice(0, -2)).toEqual(plain.lines)
    expect(quote.lines.slice(-2).map((line) => line.netPence)).toEqual([0 - Math.floor((labour + 5) / 10), -2500]) // prettier-ignore
    expect(quote.lines.at(-2)?.name).toBe('Discount: Neighbour (10% of labour)')
    expect(quote.totals.netPence).toBe(net(quote.lines))
    expect(quote.internal.costPence).toBe(plain.internal.costPence)
    expect(quote.internal.costPence + quote.internal.marginPence).toBe(quote.totals.netPence)
  })

  it('bear the tax of what they are taken from, to the penny', async () => {
    const quote = await built({
      lineCategories: { emitter: 'zero' },
      discounts: [{ kind: 'amount', name: 'Round', pence: 1001 }],
    })
    const off = quote.lines.filter((line) => line.lineId.startsWith('discount-'))
    expect(off.map((line) => line.rateKey)).toEqual(['standard', 'zero'])
    expect(net(off)).toBe(-1001)
    const before = (rateKey: string) => net(quote.lines.filter((line) => line.rateKey === rateKey && line.netPence > 0)) // prettier-ignore
    const due = (1001 * before('standard')) / (before('standard') + before('zero'))
    expect(Math.abs(0 - (off[0]?.netPence ?? 0) - due)).toBeLessThan(1)
  })

  it('of more than there is are refused, alone and together', async () => {
    const big = { kind: 'amount', name: 'Big', pence: 99_999_999 } as const
    expect(refused(await askFor({ discounts: [big] })).path).toBe('job.pricing.discounts[0]')
    const most = { kind: 'percent', name: 'Most', basisPoints: 6000 } as const
    expect(refused(await askFor({ discounts: [most, most] })).path).toBe('job.pricing.discounts')
  })
})

describe('mark-up and margin', () => {
  const costOf = (quote: Quote, line: QuoteLine) =>
    quote.internal.purchases.find((one) => one.lineId === line.lineId)?.costPence ?? 0
  const parts = (quote: Quote) => quote.lines.filter((line) => line.section === 'parts')

  it('a kind is priced by one of them: parts by a margin of 20 % cost 1.25 times what they cost us', async () => {
    const quote = await built({ markUps: [{ of: 'parts', by: 'margin', basisPoints: 2000 }] })
    for (const line of parts(quote))
      expect(line.netPence).toBe(Math.floor((costOf(quote, line) * 125 + 50) / 100))
    const emitters = (one: Quote) => one.lines.filter((line) => line.section === 'emitter')
    expect(emitters(quote)).toEqual(emitters(plain))
  })

  it('the narrower goes before the wider', async () => {
    const quote = await built({
      markUps: [
        { of: 'parts', by: 'margin', basisPoints: 2000 },
        { of: 'valve', by: 'markUp', basisPoints: 0 },
      ],
    })
    const valve = parts(quote).find((line) => line.name.startsWith('Thermostatic'))
    if (valve === undefined) throw new Error('The sample has a thermostatic valve')
    expect(valve.netPence).toBe(costOf(quote, valve))
    expect(JSON.stringify(valve.why)).not.toContain('argin')
  })

  it('the firm may price by margin instead: its mark-up is then not used', async () => {
    const figures = { 'money.marginPartsBasisPoints': 5000, 'money.markUpPartsBasisPoints': 9000 }
    const quote = answered(await quoteBuild({ job: { ...job, figures } }, desk))
    for (const line of parts(quote)) {
      expect(line.netPence).toBe(costOf(quote, line) * 2)
      expect(JSON.stringify(line.why)).not.toContain('Mark-up')
    }
  })

  it('a margin of the whole price and a kind priced twice are refused', async () => {
    const whole = { of: 'valve', by: 'margin', basisPoints: 10_000 } as const
    expect(refused(await askFor({ markUps: [whole] })).path).toBe('job.pricing.markUps[0].basisPoints')
    const once = { ...whole, basisPoints: 1 }
    expect(refused(await askFor({ markUps: [once, once] })).path).toBe('job.pricing.markUps[1].of')
  })
})
