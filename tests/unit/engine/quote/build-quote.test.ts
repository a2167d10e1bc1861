import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { figureWhy } from '../../../../src-main/domain/figures.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { caution, figures, quoteOf, tool } from './work-for-tests.ts'

/** Built anew inside each test, so that each is answerable for it. */
const quote = () => quoteOf()
const found = (lineId: string, of = quote()) => of.lines.find((line) => line.lineId === lineId)

describe('the lines of a quote, summed by hand', () => {
  it('emitter 100.00 + 10 %, parts 5.00 + 20 %, ten half hours at a pound a minute, 24 km at 50 p, a tenth more for the unforeseen', () => {
    expect(
      quote().lines.map(({ lineId, section, netPence, rateKey }) => [lineId, section, netPence, rateKey]),
    ).toEqual([
      ['part-1', 'emitter', 11_000, 'standard'],
      ['part-2', 'parts', 600, 'standard'],
      ['labour-1', 'labour', 18_000, 'standard'],
      ['labour-2', 'labour', 12_000, 'standard'],
      ['travel', 'travel', 1200, 'standard'],
      ['contingency', 'other', 4160, 'standard'],
    ])
  })
  it('come to 469.60, 93.92 of tax at a fifth, and a quarter of 563.52 to put down', () => {
    expect(quote().totals).toMatchObject({ netPence: 46_960, grossPence: 56_352, depositPence: 14_088 })
    expect(quote().totals.taxes).toMatchObject([{ rateKey: 'standard', netPence: 46_960, taxPence: 9392 }])
    expect(quote().totals).not.toHaveProperty('rounding')
    expect(quote().totals).not.toHaveProperty('reverseChargePence')
  })
  it('cost 105.00 of parts, 150.00 of labour and 4.80 of driving, which leaves the rest as margin', () => {
    expect(quote().internal).toMatchObject({
      labourCostPence: 15_000,
      costPence: 10_500 + 15_000 + 480,
      marginPence: 46_960 - 25_980,
    })
    expect(quote().internal.purchases.map(({ lineId }) => lineId)).toEqual(['part-1', 'part-2'])
  })
  it('a part shows how many are needed, what the packs cost and how that is sold, and charges whole packs', () => {
    expect(found('part-2')).toEqual({
      lineId: 'part-2',
      section: 'parts',
      name: 'The vent',
      quantity: 4,
      unit: 'each',
      netPence: 600,
      rateKey: 'standard',
      shared: true,
      swapIds: ['swap-1', 'swap-2'],
      generic: true,
      part: { lineKey: 'vent', itemKind: 'vent', itemId: 'vent' },
      why: because('Cost of the packs x (1 + mark-up).', 600, {
        unit: 'pence',
        from: [
          because('How many are needed.', 3, { unit: 'each', from: [given('Why vent', 3, 'each')] }),
          given('Cost of part-2', 500, 'pence'),
          figureWhy(figures, 'money.markUpPartsBasisPoints'),
        ],
      }),
    })
    expect(found('part-1')).toMatchObject({ generic: false, shared: false, swapIds: ['swap-1'] })
  })
  it('labour is a line for the swap and one for the whole job', () => {
    expect(found('labour-1')).toMatchObject({
      name: 'Labour in the Back bedroom: Test panel',
      quantity: 180,
      unit: 'min',
      shared: false,
      swapIds: ['swap-1'],
      generic: false,
    })
    expect(found('labour-2')).toMatchObject({
      name: 'Labour for the job as a whole: drain, fill, checks and travelling time',
      quantity: 120,
      shared: true,
      swapIds: [],
    })
    const why = found('labour-1')?.why
    expect(why).toMatchObject({
      says: 'Its share of the expected time x what an hour is charged at.',
      value: 18_000,
      unit: 'pence',
    })
    expect(why?.from.slice(1)).toEqual([
      figureWhy(figures, 'money.labourPencePerHour'),
      given('Labour of the whole job', 30_000, 'pence'),
    ])
  })
  it('driving and the allowance show what they are a share of', () => {
    expect(found('travel')).toMatchObject({
      name: 'Travel there and back',
      quantity: 24,
      unit: 'km',
      shared: true,
      swapIds: [],
      generic: false,
      why: because('There and back x what a kilometre is charged at.', 1200, {
        unit: 'pence',
        from: [given('Distance one way', 12, 'km', 'survey'), figureWhy(figures, 'money.travelPencePerKm')],
      }),
    })
    expect(found('contingency')).toMatchObject({
      name: 'Allowance for the unforeseen',
      quantity: 1,
      unit: 'sum',
      why: because('Parts and labour x the allowance.', 4160, {
        unit: 'pence',
        from: [
          given('Parts and labour', 41_600, 'pence'),
          figureWhy(figures, 'money.contingencyBasisPoints'),
        ],
      }),
    })
  })
  it('the total leads to the lines and to the tax', () => {
    expect(quote().why).toMatchObject({ says: 'Net and tax.', value: 56_352, unit: 'pence' })
    expect(quote().why.from[0]).toEqual(
      because('The lines added up.', 46_960, { unit: 'pence', from: quote().lines.map(({ why }) => why) }),
    )
    expect(quote().why.from).toHaveLength(2)
  })
})

describe('what stands beside the price', () => {
  it('gaps, with what is missing and how much, cautions and tools', () => {
    const open = {
      gapKey: 'blank',
      says: 'No blank in the catalogue.',
      itemKind: 'blank',
      quantity: 2,
      unit: 'each',
    }
    expect(quote().gaps).toEqual([open])
    expect(quote().cautions).toEqual([caution])
    expect(quote().tools).toEqual([tool])
    const waived = quoteOf(bedroomJob({ waivers: [{ gapKey: 'blank', reason: 'The old one stays' }] }))
    expect(waived.gaps).toEqual([{ ...open, waived: 'The old one stays' }])
  })
  it('an option is beside the total until it is chosen', () => {
    const option = { optionId: 'shelf', name: 'A shelf', netPence: 3000 }
    const left = quoteOf(bedroomJob({ options: [{ ...option, chosen: false }] }))
    expect(left.options).toEqual([{ ...option, rateKey: 'standard', taxPence: 600, chosen: false }])
    expect(left.totals.netPence).toBe(46_960)
    const taken = quoteOf(bedroomJob({ options: [{ ...option, chosen: true }] }))
    expect(taken.totals.netPence).toBe(49_960)
    expect(found('option-shelf', taken)).toEqual({
      lineId: 'option-shelf',
      section: 'other',
      name: 'A shelf',
      quantity: 1,
      unit: 'sum',
      netPence: 3000,
      rateKey: 'standard',
      shared: true,
      swapIds: [],
      generic: false,
      why: given('Chosen option: A shelf', 3000, 'pence', 'priced by hand'),
    })
  })
  it('a price by hand stands in place of what was worked out and keeps it', () => {
    const overrides = [{ lineKey: 'vent', netPence: 900, reason: 'Agreed' }]
    const line = found('part-2', quoteOf(bedroomJob({ overrides })))
    expect(line).toMatchObject({ netPence: 900, was: { netPence: 600 } })
    expect(line?.why).toMatchObject({
      says: 'Price set by hand. Reason: Agreed',
      value: 900,
      unit: 'pence',
      source: 'changed by hand',
    })
    expect(line?.why.from).toEqual([given('It was', 600, 'pence'), found('part-2')?.why])
  })
  it('no distance is no line for driving and costs nothing', () => {
    const near = quoteOf(bedroomJob({ site: { addressLines: ['1 Example Row'] } }))
    expect(found('travel', near)).toBeUndefined()
    expect(near.internal.costPence).toBe(25_500)
  })
})

describe('warmth of the room', () => {
  it('needs 28.8 m3 x 35 W = 1008 W and says how short the emitter is', () => {
    const [room] = quote().warmth
    expect(room).toMatchObject({
      swapId: 'swap-1',
      roomName: 'Back bedroom',
      needW: 1008,
      rough: true,
      enough: false,
    })
    // EN 442: (10 / ln(37 / 27)) K against (10 / ln(55 / 45)) K, to the power of 1.3, of 1000 W: 556 W.
    expect(room?.says).toBe(
      '452 W short: gives 556 W where the Back bedroom needs 1008 W, by a rough estimate.',
    )
    expect(room?.why).toMatchObject({ value: -452, unit: 'W' })
    expect(room?.why.from).toHaveLength(2)
  })
  it('counts what stays in the room', () => {
    const [room] = bedroomJob().rooms
    if (room === undefined) throw new Error('The bedroom job has a room')
    const warm = quoteOf(bedroomJob({ rooms: [{ ...room, otherEmittersW: 2000 }] })).warmth[0]
    expect(warm?.givesW).toBe(2556)
    expect(warm).toMatchObject({ enough: true })
    expect(warm?.says).toBe('Gives 2556 W where the Back bedroom needs 1008 W, by a rough estimate.')
    expect(warm?.why.from.at(-1)).toEqual(given('Emitters that stay', 2000, 'W', 'survey'))
  })
})

describe('the time behind the price', () => {
  it('is ten tasks of half an hour', () => {
    expect(quote().labour.tasks.map(({ count, expectedMin }) => [count, expectedMin])).toEqual(
      Array.from({ length: 10 }, () => [1, 30]),
    )
    expect(quote().labour.expectedMin).toBe(300)
  })
})
