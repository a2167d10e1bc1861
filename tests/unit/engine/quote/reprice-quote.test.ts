import { describe, expect, it } from 'vitest'
import type { Job } from '../../../../src-main/domain/job.ts'
import { repriceQuote, sameWork } from '../../../../src-main/engine/quote/reprice-quote.ts'
import { answered, refused } from '../../../answered.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { figures, quoteOf } from './work-for-tests.ts'

const usual = { taxTreatment: 'usual', rounding: 'document' } as const
const option = { optionId: 'shelf', name: 'A shelf', netPence: 3000, chosen: true }
const states: readonly (readonly [string, Partial<Job>])[] = [
  ['as it was', {}],
  ['a price by hand', { overrides: [{ lineKey: 'vent', netPence: 900, reason: 'Agreed' }] }],
  ['a price of labour by hand', { overrides: [{ lineKey: 'labour-1', netPence: 5000, reason: 'Agreed' }] }],
  ['tax by line', { pricing: { ...usual, rounding: 'line' } }],
  ['a margin', { pricing: { ...usual, markUps: [{ of: 'vent', by: 'margin', basisPoints: 5000 }] } }],
  [
    'a mark-up of emitters',
    { pricing: { ...usual, markUps: [{ of: 'emitter', by: 'markUp', basisPoints: 1 }] } },
  ],
  [
    'a discount',
    { pricing: { ...usual, discounts: [{ kind: 'percent', name: 'Friend', basisPoints: 500 }] } },
  ],
  ['a category', { pricing: { ...usual, lineCategories: { labour: 'reduced' } } }],
  ['an option', { options: [option] }],
  ['a gap let stand', { waivers: [{ gapKey: 'blank', reason: 'Kept' }] }],
]
const [plain] = states
/** From the plain job to each state, and from each state to the one after it. */
const pairs = states.flatMap(([name, job], index) => {
  const [nextName, next] = states[(index + 1) % states.length] ?? plain ?? ['as it was', {}]
  return [
    ['as it was', name, {}, job],
    [name, nextName, job, next],
  ] as const
})

describe('a quote priced anew is the one that building it from the ground gives', () => {
  it.each(pairs)('from %s to %s', (_from, _to, before, now) => {
    const job = bedroomJob(now)
    expect(answered(repriceQuote(quoteOf(bedroomJob(before)), job, figures))).toEqual(quoteOf(job))
  })
  it('keeps a line whose price did not change as the same object', () => {
    const quote = quoteOf()
    const again = answered(repriceQuote(quote, bedroomJob({ options: [option] }), figures))
    expect(again.lines[0]).toBe(quote.lines[0])
    expect(again.lines[2]).toBe(quote.lines[2])
  })
  it('refuses what building it would refuse', () => {
    const job = bedroomJob({ overrides: [{ lineKey: 'roof', netPence: 5, reason: 'None' }] })
    expect(refused(repriceQuote(quoteOf(), job, figures))).toEqual({
      code: 'invalid',
      path: 'job.overrides[0].lineKey',
      message:
        'The quote has no priced line roof; name a part by the key of its line in takeoff.job, all else by its id in quote.build.',
    })
  })
})

describe('whether two states of a job are the same work', () => {
  const job = bedroomJob()
  const [room] = job.rooms
  const [swap] = job.swaps
  const changed: readonly (readonly [string, boolean, Partial<Job>])[] = [
    ['its title', true, { title: 'Another' }],
    ['an option', true, { options: [option] }],
    ['a price by hand', true, { overrides: [{ lineKey: 'vent', netPence: 9, reason: 'Gift' }] }],
    ['the deposit', true, { figures: { 'money.depositBasisPoints': 1 } }],
    ['the allowance', true, { figures: { 'money.contingencyBasisPoints': 1 } }],
    ['a mark-up', true, { figures: { 'money.markUpPartsBasisPoints': 1 } }],
    ['a margin', true, { figures: { 'money.marginPartsBasisPoints': 1 } }],
    ['what an hour costs', false, { figures: { 'money.labourPencePerHour': 1 } }],
    ['a quantity by hand', false, { overrides: [{ lineKey: 'vent', quantity: 9, reason: 'Spare' }] }],
    ['an item by hand', false, { overrides: [{ lineKey: 'vent', itemId: 'grand', reason: 'Liked' }] }],
    ['a gap filled', false, { fills: [{ gapKey: 'blank', itemId: 'blank' }] }],
    ['the day', false, { quotedOn: '2026-05-01' }],
    ['the site', false, { site: { addressLines: ['2 Example Row'] } }],
    ['the survey', false, { survey: { ...job.survey, hotWork: true } }],
    ['a room', false, { rooms: room === undefined ? [] : [{ ...room, roomC: 20 }] }],
    ['a swap', false, { swaps: swap === undefined ? [] : [{ ...swap, bottomMm: 160 }] }],
  ]
  it.each(changed)('%s: %s', (_, same, more) => {
    expect(sameWork(job, bedroomJob(more))).toBe(same)
    expect(sameWork(bedroomJob(more), job)).toBe(same)
    expect(sameWork(bedroomJob(more), bedroomJob(more))).toBe(true)
  })
  it('the order in which figures were set is no change', () => {
    const one = { 'labour.crewHoursPerDay': 6, 'pipe.kerfMm': 1 }
    const other = { 'pipe.kerfMm': 1, 'labour.crewHoursPerDay': 6 }
    expect(sameWork(bedroomJob({ figures: one }), bedroomJob({ figures: other }))).toBe(true)
  })
})
