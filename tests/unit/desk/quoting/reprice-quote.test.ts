import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { figuresInForce } from '../../../../src-main/desk/figures-in-force.ts'
import { quoteBuild } from '../../../../src-main/desk/quoting/quote-build.ts'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import type { Pricing } from '../../../../src-main/domain/pricing.ts'
import { repriceQuote, sameWork } from '../../../../src-main/engine/quote/reprice-quote.ts'
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
const ventKey = 'sundry what="ventKey"'
const usual: Pricing = { taxTreatment: 'usual', rounding: 'document' }
const option = { optionId: 'flush', name: 'Clean the system', netPence: 18_500, chosen: true }

/** Ways of pricing one and the same work. */
const ways: Readonly<Record<string, Partial<Job>>> = {
  'as it was surveyed': {},
  'with mark-up and margin by kind': {
    pricing: {
      ...usual,
      markUps: [
        { of: 'emitter', by: 'margin', basisPoints: 2500 },
        { of: 'parts', by: 'markUp', basisPoints: 5000 },
        { of: 'valve', by: 'margin', basisPoints: 1 },
      ],
    },
  },
  'with discounts': {
    pricing: {
      ...usual,
      discounts: [
        { kind: 'percent', name: 'Neighbour', basisPoints: 1000, of: 'labour' },
        { kind: 'amount', name: 'Bathroom', pence: 1234, roomId: 'bathroom' },
      ],
    },
  },
  'with an option chosen': { options: [option] },
  'with a price by hand': {
    overrides: [
      { lineKey: ventKey, netPence: 0, reason: 'A gift' },
      { lineKey: 'travel', netPence: 100, reason: 'Next door' },
      { lineKey: 'labour-1', netPence: 9_999, reason: 'A round sum' },
    ],
  },
  'with tax by line, rounded by line': {
    pricing: {
      ...usual,
      rounding: 'line',
      lineCategories: { labour: 'reduced' },
      partCategories: { [ventKey]: 'zero' },
    },
  },
  'by reverse charge, halves to even': {
    pricing: { taxTreatment: 'reverseCharge', rounding: 'lineTenths', rule: 'half-even' },
  },
  'with a deposit and an allowance of its own': {
    figures: { 'money.depositBasisPoints': 4000, 'money.contingencyBasisPoints': 750 },
  },
}
const priced = (way: Partial<Job>): Job => jobSchema.parse({ ...job, ...way })
const built = async (way: Partial<Job>) => answered(await quoteBuild({ job: priced(way) }, desk))
const anew = async (from: Partial<Job>, to: Partial<Job>) => {
  const figures = answered(await figuresInForce(desk, desk.today, to.figures))
  return repriceQuote(await built(from), priced(to), figures)
}

describe('a quote priced anew', () => {
  for (const [from, before] of Object.entries(ways)) {
    it(`is what building it gives, whatever the way from one ${from}`, async () => {
      for (const after of Object.values(ways)) {
        expect(sameWork(priced(before), priced(after))).toBe(true)
        expect(answered(await anew(before, after))).toEqual(await built(after))
      }
    })
  }

  it('keeps the lines that did not change as they are, so that they need not be drawn again', async () => {
    const quote = await built({})
    const figures = answered(await figuresInForce(desk, desk.today))
    const after = answered(repriceQuote(quote, priced(ways['with an option chosen'] ?? {}), figures))
    const drawn = quote.lines.filter(({ lineId }) => lineId !== 'travel')
    expect(drawn.every((line) => after.lines.includes(line))).toBe(true)
  })

  it('refuses what building it refuses: more off than there is, and a price of a line that is not there', async () => {
    const amount = { kind: 'amount', name: 'Everything', pence: 99_999_00 } as const
    for (const way of [
      { pricing: { ...usual, discounts: [amount] } },
      { overrides: [{ lineKey: 'roof', netPence: 5, reason: 'x' }] },
      {
        pricing: {
          ...usual,
          markUps: [{ of: 'parts' as const, by: 'margin' as const, basisPoints: 10_000 }],
        },
      },
    ]) {
      expect(refused(await anew({}, way))).toEqual(refused(await quoteBuild({ job: priced(way) }, desk)))
    }
  })

  it('lets a gap stand and takes that back', async () => {
    const gap = { gapKey: 'vent', says: 'The catalogue has no vent.' }
    const figures = answered(await figuresInForce(desk, desk.today))
    const quote = { ...(await built({})), gaps: [gap] }
    const waived = answered(
      repriceQuote(quote, priced({ waivers: [{ gapKey: 'vent', reason: 'Kept' }] }), figures),
    )
    expect(waived.gaps).toEqual([{ ...gap, waived: 'Kept' }])
    expect(answered(repriceQuote(waived, job, figures)).gaps).toEqual([gap])
  })
})

describe('whether two states of a job call for the same work', () => {
  const differs: Readonly<Record<string, Partial<Job>>> = {
    'a room is warmer': { rooms: job.rooms.map((room) => ({ ...room, roomC: room.roomC + 1 })) },
    'a swap is gone': { swaps: job.swaps.slice(1) },
    'the system is flushed': {
      survey: { ...job.survey, system: { ...job.survey.system, flush: true } },
    },
    'the way is longer': { site: { ...job.site, travelKm: 9 } },
    'the quote is of another day': { quotedOn: '2026-01-01' },
    'a gap is filled': { fills: [{ gapKey: 'vent', name: 'Vent', netCostPence: 5 }] },
    'a quantity is changed': { overrides: [{ lineKey: ventKey, quantity: 3, reason: 'x' }] },
    'an item is changed': { overrides: [{ lineKey: ventKey, itemId: 'vent-key-brass', reason: 'x' }] },
    'an hour costs more': { figures: { 'money.labourPencePerHour': 6000 } },
  }
  for (const [name, change] of Object.entries(differs)) {
    it(`says no when ${name}`, () => {
      expect(sameWork(job, { ...job, ...change })).toBe(false)
      expect(sameWork({ ...job, ...change }, { ...job, ...change })).toBe(true)
    })
  }
})

describe('what a priced line says of itself', () => {
  it('names its line of the parts list, and what it was before a person changed it', async () => {
    const quote = await built({
      overrides: [{ lineKey: ventKey, quantity: 3, netPence: 200, reason: 'One for the landlord' }],
    })
    const line = quote.lines.find(({ part }) => part?.lineKey === ventKey)
    expect(line?.part).toEqual({ lineKey: ventKey, itemKind: 'sundry', itemId: 'vent-key-loose' })
    // Three at 59p with 30 % on top are 230p before the price was set by hand.
    expect(line?.was).toEqual({ name: 'Vent key, zinc', quantity: 2, netPence: 230 })
    expect(line?.netPence).toBe(200)
    expect(quote.lines.find(({ lineId }) => lineId === 'travel')?.part).toBeUndefined()
  })

  it('bears the tax of its own part before that of its kind', async () => {
    const quote = await built({
      pricing: { ...usual, lineCategories: { sundry: 'reduced' }, partCategories: { [ventKey]: 'zero' } },
    })
    const rates = quote.lines.filter(({ part }) => part?.itemKind === 'sundry')
    expect(rates.find(({ part }) => part?.lineKey === ventKey)?.rateKey).toBe('zero')
    expect(
      new Set(rates.filter(({ part }) => part?.lineKey !== ventKey).map(({ rateKey }) => rateKey)),
    ).toEqual(new Set(['reduced']))
  })
})
