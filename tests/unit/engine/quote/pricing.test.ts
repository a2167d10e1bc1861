import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import type { Discount } from '../../../../src-main/domain/pricing.ts'
import type { QuoteLine } from '../../../../src-main/domain/quote.ts'
import { discountLines } from '../../../../src-main/engine/quote/discount-lines.ts'
import { categoryOf, categoryProblems } from '../../../../src-main/engine/quote/line-categories.ts'
import { sellingOf, sellingProblems, soldFor } from '../../../../src-main/engine/quote/selling-price.ts'
import { answered } from '../../../answered.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { figures } from './work-for-tests.ts'

const lineAt = (lineId: string, netPence: number, more: Partial<QuoteLine> = {}): QuoteLine => ({
  lineId,
  section: 'parts',
  name: lineId,
  quantity: 1,
  unit: 'each',
  netPence,
  rateKey: 'standard',
  shared: false,
  swapIds: ['a'],
  generic: false,
  why: given(lineId, netPence, 'pence'),
  ...more,
})
/** 100.00 of emitter, 50.00 of parts at the reduced rate, 250.00 of labour and 20.00 of driving. */
const lines = [
  lineAt('part-1', 10_000, { section: 'emitter' }),
  lineAt('part-2', 5000, { rateKey: 'reduced', swapIds: ['b'] }),
  lineAt('labour-1', 25_000, { section: 'labour', swapIds: ['a', 'b'] }),
  lineAt('travel', 2000, { section: 'travel', swapIds: [] }),
]
const swaps = [
  { swapId: 'a', roomId: 'hall' },
  { swapId: 'b', roomId: 'bath' },
]
const taken = (...discounts: readonly Discount[]) => answered(discountLines(lines, discounts, swaps))
const problemsOf = (...discounts: readonly Discount[]) => {
  const answer = discountLines(lines, discounts, swaps)
  return answer.ok ? [] : answer.problems
}

describe('discounts', () => {
  it('a tenth of all is parted over the rates by their sums: 37.00 of 370.00 and 5.00 of 50.00', () => {
    const off = taken({ kind: 'percent', name: 'Neighbour', basisPoints: 1000 })
    expect(off.map(({ lineId, rateKey, netPence }) => [lineId, rateKey, netPence])).toEqual([
      ['discount-1-standard', 'standard', -3700],
      ['discount-1-reduced', 'reduced', -500],
    ])
    expect(off[0]).toEqual({
      lineId: 'discount-1-standard',
      section: 'other',
      name: 'Discount: Neighbour (10%)',
      quantity: 1,
      unit: 'sum',
      netPence: -3700,
      rateKey: 'standard',
      shared: true,
      swapIds: [],
      generic: false,
      why: because('Discount, as a line of its own.', -3700, {
        unit: 'pence',
        from: [
          given('The lines that it is taken from, before any discount', 37_000, 'pence'),
          given('The share taken off', 1000, 'BasisPoints', 'priced by hand'),
        ],
      }),
    })
  })
  it('of parts are of radiators and materials, of labour of that alone', () => {
    const parts = taken({ kind: 'percent', name: 'Trade', basisPoints: 2000, of: 'parts' })
    expect(parts.map(({ name, netPence }) => [name, netPence])).toEqual([
      ['Discount: Trade (20% of radiators and materials)', -2000],
      ['Discount: Trade (20% of radiators and materials)', -1000],
    ])
    const labour = taken({ kind: 'percent', name: 'Winter', basisPoints: 250, of: 'labour' })
    expect(labour.map(({ name, netPence }) => [name, netPence])).toEqual([
      ['Discount: Winter (2.5% of labour)', -625],
    ])
  })
  it('a sum is taken off once, over all rates: 84.00 as 74.00 and 10.00', () => {
    const off = taken({ kind: 'amount', name: 'Goodwill', pence: 8400 })
    expect(off.map(({ name, netPence }) => [name, netPence])).toEqual([
      ['Discount: Goodwill', -7400],
      ['Discount: Goodwill', -1000],
    ])
    expect(off[1]?.why.from).toEqual([
      given('The lines that it is taken from, before any discount', 5000, 'pence'),
      given('The sum taken off, over all rates of tax', 8400, 'pence', 'priced by hand'),
    ])
  })
  it('of a room are of the lines that stand for its swaps alone', () => {
    const off = taken({ kind: 'percent', name: 'Hall', basisPoints: 5000, roomId: 'hall' })
    expect(off.map(({ netPence }) => netPence)).toEqual([-5000])
  })
  it('that come to less than half a penny are no line', () => {
    const tiny = { kind: 'percent', name: 'Tiny', basisPoints: 1 } as const
    expect(answered(discountLines([lineAt('part-1', 4999)], [tiny]))).toEqual([])
    expect(answered(discountLines([lineAt('part-1', 5000)], [tiny]))).toMatchObject([{ netPence: -1 }])
  })
  it('may take off all that there is', () => {
    expect(taken({ kind: 'amount', name: 'All', pence: 42_000 }).map(({ netPence }) => netPence)).toEqual([
      -37_000, -5000,
    ])
  })
  it('are numbered in their order and do not lessen each other', () => {
    const half = { kind: 'percent', name: 'Half', basisPoints: 2500, of: 'labour' } as const
    expect(taken(half, half).map(({ lineId, netPence }) => [lineId, netPence])).toEqual([
      ['discount-1-standard', -6250],
      ['discount-2-standard', -6250],
    ])
  })
  it('keep a long name within 200 letters', () => {
    const name = 'x'.repeat(200)
    expect(taken({ kind: 'percent', name, basisPoints: 1000 })[0]?.name).toBe(
      `Discount: ${'x'.repeat(184)} (10%)`,
    )
  })
})

describe('a discount that cannot be taken is refused with where and why', () => {
  it('more than there is', () => {
    expect(problemsOf({ kind: 'amount', name: 'Big', pence: 42_001 })).toEqual([
      {
        code: 'invalid',
        message:
          'The discount Big takes off 42001 pence where there are only 42000; take off no more than that.',
        path: 'job.pricing.discounts[0]',
      },
    ])
  })
  it('of a room without a line of its own', () => {
    const fine = { kind: 'amount', name: 'Fine', pence: 1 } as const
    expect(problemsOf(fine, { kind: 'amount', name: 'Loft', pence: 5, roomId: 'loft' })).toEqual([
      {
        code: 'invalid',
        message:
          'The discount Loft is of room loft, which has no priced line of its own; name a room that has a swap.',
        path: 'job.pricing.discounts[1].roomId',
      },
    ])
  })
  it('together more than there is', () => {
    const most = { kind: 'percent', name: 'Most', basisPoints: 6000 } as const
    expect(problemsOf(most, most)).toEqual([
      {
        code: 'invalid',
        message: 'The discounts together take off more than what they are taken from; make them smaller.',
        path: 'job.pricing.discounts',
      },
    ])
  })
})

const priced = (pricing: Partial<NonNullable<Job['pricing']>>, more: Partial<Job> = {}): Job =>
  bedroomJob({ pricing: { taxTreatment: 'usual', rounding: 'document', ...pricing }, ...more })

describe('the category of tax of a line', () => {
  const valve = { lineId: 'part-1', section: 'parts', itemKind: 'valve', lineKey: 'valve 15' } as const
  const of = (pricing: Partial<NonNullable<Job['pricing']>>) => categoryOf(valve, priced(pricing), figures)

  it('is the standard one where nobody says otherwise', () => {
    expect(of({})).toBe('standard')
    expect(categoryOf(valve, bedroomJob(), figures)).toBe('standard')
  })
  it('goes from the very part to the line, the kind and the section', () => {
    const section = { parts: 'exempt' } as const
    const kind = { ...section, valve: 'zero' } as const
    const line = { ...kind, 'part-1': 'reduced' } as const
    expect(of({ lineCategories: section })).toBe('exempt')
    expect(of({ lineCategories: kind })).toBe('zero')
    expect(of({ lineCategories: line })).toBe('reduced')
    expect(of({ lineCategories: line, partCategories: { 'valve 15': 'energySaving' } })).toBe('energySaving')
    expect(of({ lineCategories: { labour: 'zero' }, partCategories: { 'valve 22': 'zero' } })).toBe(
      'standard',
    )
  })
  it('of an option is what the option says, if that is one', () => {
    const option = { optionId: 'x', name: 'X', netPence: 1, chosen: true }
    const shelf = { lineId: 'option-x', section: 'other' } as const
    const said = (taxKey: string) =>
      categoryOf(shelf, bedroomJob({ options: [{ ...option, taxKey }] }), figures)
    expect(said('reduced')).toBe('reduced')
    expect(said('holiday')).toBe('standard')
  })
  it('is turned under reverse charge', () => {
    expect(of({ taxTreatment: 'reverseCharge' })).toBe('reverseCharge')
  })
  it('named for nothing is refused, and so is an option with none', () => {
    const option = { optionId: 'x', name: 'X', netPence: 1, chosen: true }
    const job = priced(
      { lineCategories: { roof: 'zero', valve: 'zero', travel: 'zero', other: 'zero', 'option-x': 'zero' } },
      { options: [option, { ...option, optionId: 'y', taxKey: 'holiday' }] },
    )
    expect(categoryProblems(job, ['part-1'])).toEqual([
      {
        code: 'invalid',
        path: 'job.pricing.lineCategories.roof',
        message:
          'There is no line, kind of part or section called roof to give a category of tax; quote.build names the lines.',
      },
      {
        code: 'invalid',
        path: 'job.options[1].taxKey',
        message:
          'The option X bears holiday, which is no category of tax; it should be standard or reduced or zero or energySaving or exempt or reverseCharge or reverseChargeReduced.',
      },
    ])
    expect(categoryProblems(priced({ lineCategories: { 'part-1': 'zero' } }), ['part-1'])).toEqual([])
  })
})

describe('mark-up and margin', () => {
  const margin = (kind: string, value: number) => ({
    ...figures,
    settings: {
      ...figures.settings,
      [`money.margin${kind}BasisPoints`]: {
        says: 'Margin',
        value,
        unit: 'BasisPoints' as const,
        source: 'the firm',
      },
    },
  })
  it("is the firm's mark-up of emitters or of parts", () => {
    expect(sellingOf('emitter', figures, undefined)).toMatchObject({ by: 'markUp', basisPoints: 1000 })
    expect(sellingOf('valve', figures, undefined)).toMatchObject({ by: 'markUp', basisPoints: 2000 })
  })
  it("is the firm's margin where it has set one above nothing", () => {
    expect(sellingOf('emitter', margin('Emitter', 2500), undefined)).toEqual({
      by: 'margin',
      basisPoints: 2500,
      why: given('Margin', 2500, 'BasisPoints', 'the firm'),
    })
    expect(sellingOf('valve', margin('Emitter', 2500), undefined)).toMatchObject({ by: 'markUp' })
    expect(sellingOf('valve', margin('Parts', 1), undefined)).toMatchObject({ by: 'margin', basisPoints: 1 })
    expect(sellingOf('valve', margin('Parts', 0), undefined)).toMatchObject({
      by: 'markUp',
      basisPoints: 2000,
    })
  })
  it("is the job's own of that kind first, then of all parts, which emitters are not", () => {
    const { pricing } = priced({
      markUps: [
        { of: 'parts', by: 'margin', basisPoints: 3000 },
        { of: 'valve', by: 'markUp', basisPoints: 500 },
      ],
    })
    expect(sellingOf('valve', figures, pricing)).toEqual({
      by: 'markUp',
      basisPoints: 500,
      why: given('Mark-up on valve, for this job', 500, 'BasisPoints', "the job's own figure"),
    })
    expect(sellingOf('vent', figures, pricing)).toEqual({
      by: 'margin',
      basisPoints: 3000,
      why: given('Margin on parts, for this job', 3000, 'BasisPoints', "the job's own figure"),
    })
    expect(sellingOf('emitter', figures, pricing)).toMatchObject({ by: 'markUp', basisPoints: 1000 })
  })
  it('sells 80.00 for 100.00 at a margin of a fifth and for 96.00 at a mark-up of a fifth', () => {
    const cost = given('Cost', 8000, 'pence')
    const why = given('A fifth', 2000, 'BasisPoints')
    expect(soldFor(8000, { by: 'margin', basisPoints: 2000, why }, [cost])).toEqual(
      because('Cost of the packs / (1 - margin).', 10_000, { unit: 'pence', from: [cost, why] }),
    )
    expect(soldFor(8000, { by: 'markUp', basisPoints: 2000, why }, [cost])).toEqual(
      because('Cost of the packs x (1 + mark-up).', 9600, { unit: 'pence', from: [cost, why] }),
    )
  })
  it('refuses one kind twice and a margin of the whole price', () => {
    const { pricing } = priced({
      markUps: [
        { of: 'valve', by: 'markUp', basisPoints: 10_000 },
        { of: 'valve', by: 'margin', basisPoints: 9999 },
        { of: 'vent', by: 'margin', basisPoints: 10_000 },
      ],
    })
    expect(sellingProblems(pricing)).toEqual([
      {
        code: 'invalid',
        message: 'valve is priced twice; give it one mark-up or one margin.',
        path: 'job.pricing.markUps[1].of',
      },
      {
        code: 'invalid',
        message:
          'A margin is a share of the price and must be under 10000 basis points (100 %); it was 10000.',
        path: 'job.pricing.markUps[2].basisPoints',
      },
    ])
    expect(sellingProblems(undefined)).toEqual([])
  })
})
