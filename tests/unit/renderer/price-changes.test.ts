import { describe, expect, it } from 'vitest'
import { given } from '../../../src-main/domain/derivation.ts'
import { stepsOf, valueAt, withValue } from '../../../src-renderer/draft/path.ts'
import { surveyPlace } from '../../../src-renderer/draft/survey-place.ts'
import { percentText, typedPercent } from '../../../src-renderer/draft/typed-number.ts'
import {
  asKind,
  freeOptionId,
  withFill,
  withOverride,
  withSelling,
  withTax,
  withWaiver,
} from '../../../src-renderer/screens/price/job-changes.ts'
import { marginShare } from '../../../src-renderer/screens/price/pricing/margin-share.ts'
import { lostOverrides, whyForCustomer } from '../../../src-renderer/screens/price/priced-line.ts'
import { overrideTyped } from '../../../src-renderer/screens/price/typed-override.ts'
import { bedroomJob } from '../../job-for-tests.ts'

const nothing = { quantity: '', price: '', itemId: undefined, reason: '' }

describe('a change by hand as it is typed', () => {
  it('is read: quantity, item, price in pence, and the reason without its blanks', () => {
    const typed = { quantity: '2.5', price: '£1,012.50', itemId: 'a', reason: '  Spare ' }
    expect(overrideTyped(typed)).toEqual({
      override: { quantity: 2.5, itemId: 'a', netPence: 101_250, reason: 'Spare' },
      faults: {},
    })
    expect(overrideTyped({ ...nothing, price: '0', reason: 'Gift' }).override).toEqual({
      netPence: 0,
      reason: 'Gift',
    })
  })
  it('is refused beside the box that is wrong', () => {
    expect(overrideTyped(nothing).faults).toEqual({
      reason: 'Say in a few words why it is changed.',
      whole: 'Nothing is changed yet: give another quantity, item or price.',
    })
    for (const quantity of ['0', '-1', 'two'])
      expect(overrideTyped({ ...nothing, quantity, reason: 'x' }).faults.quantity).toMatch(/more than 0/)
    for (const price of ['-1', '1.234', 'x'])
      expect(overrideTyped({ ...nothing, price, reason: 'x' }).faults.price).toMatch(/pounds and pence/)
  })
})

describe('a job with something changed', () => {
  const job = bedroomJob()
  it('holds one change by hand for a line, and none once it is taken off', () => {
    const once = withOverride(job, 'vent', { quantity: 2, reason: 'a' })
    const twice = withOverride(once, 'vent', { netPence: 5, reason: 'b' })
    expect(twice.overrides).toEqual([{ lineKey: 'vent', netPence: 5, reason: 'b' }])
    expect(withOverride(twice, 'vent', null).overrides).toEqual([])
  })
  it('fills a gap in place of what let it stand, and leaves it open again', () => {
    const stands = withWaiver(job, 'vent', 'Kept')
    expect(stands.waivers).toEqual([{ gapKey: 'vent', reason: 'Kept' }])
    const filled = withFill(stands, 'vent', { gapKey: 'vent', itemId: 'v' })
    expect([filled.fills, filled.waivers]).toEqual([[{ gapKey: 'vent', itemId: 'v' }], []])
    expect(withFill(filled, 'vent', null).fills).toEqual([])
    expect(withWaiver(stands, 'vent', null).waivers).toEqual([])
  })
  it('prices a kind by mark-up or by margin, never by both', () => {
    const markUp = withSelling(job, 'valve', { by: 'markUp', basisPoints: 3000 })
    const margin = withSelling(markUp, 'valve', { by: 'margin', basisPoints: 2000 })
    expect(margin.pricing?.markUps).toEqual([{ of: 'valve', by: 'margin', basisPoints: 3000 }])
    expect(withSelling(margin, 'valve', null).pricing?.markUps).toEqual([])
  })
  it('gives a part its own tax and takes it back', () => {
    const zero = withTax(job, { of: 'partCategories', name: 'valve x="1"' }, 'zero')
    expect(zero.pricing?.partCategories).toEqual({ 'valve x="1"': 'zero' })
    expect(
      withTax(zero, { of: 'partCategories', name: 'valve x="1"' }, null).pricing?.partCategories,
    ).toEqual({})
  })
  it('turns a percent into a sum and keeps its name and room', () => {
    const percent = { kind: 'percent', name: 'Friend', basisPoints: 900, of: 'labour', roomId: 'r' } as const
    const sum = { kind: 'amount', name: 'Friend', pence: 1000, of: 'labour', roomId: 'r' }
    expect(asKind(percent, 'amount')).toEqual(sum)
  })
  it('names a new option as no other is named', () => {
    const options = [
      { optionId: 'option-2', name: 'a', netPence: 1, chosen: false },
      { optionId: 'option-3', name: 'b', netPence: 1, chosen: false },
    ]
    expect(freeOptionId({ options })).toBe('option-4')
    expect(freeOptionId({})).toBe('option-1')
  })
})

describe('a line', () => {
  it('tells the customer how many are needed, and neither cost nor mark-up', () => {
    const needed = given('How many are needed.', 2, 'each')
    const why = { says: 'Cost', value: 130, from: [needed, given('Cost of the packs', 100, 'pence')] }
    const part = { lineKey: 'vent', itemKind: 'vent' } as const
    expect(whyForCustomer({ part, why })).toBe(needed)
    const byHand = { says: 'By hand', value: 5, from: [given('It was', 130, 'pence'), why] }
    expect(whyForCustomer({ part, why: byHand, was: { netPence: 130 } })).toBe(needed)
    expect(whyForCustomer({ why })).toBeNull()
  })
  it('that is gone leaves its change by hand behind', () => {
    const overrides = ['vent', 'travel', 'roof'].map((lineKey) => ({ lineKey, netPence: 1, reason: 'x' }))
    const lines = [
      { lineId: 'part-1', part: { lineKey: 'vent', itemKind: 'vent' } as const },
      { lineId: 'travel' },
    ]
    expect(lostOverrides(overrides, lines).map(({ lineKey }) => lineKey)).toEqual(['roof'])
  })
})

describe('a share', () => {
  it('is typed in percent and kept in hundredths of a percent', () => {
    expect(['12.5', '12,5 %', '0', '33.33'].map(typedPercent)).toEqual([1250, 1250, 0, 3333])
    expect(['', '1.234', '-5', 'x'].map(typedPercent)).toEqual([undefined, '1.234', '-5', 'x'])
    expect([percentText(1250), percentText(undefined), percentText('x')]).toEqual(['12.5', '', 'x'])
  })
  it('of a margin is told to a tenth of a percent', () => {
    expect([marginShare(2500, 10_000), marginShare(-1, 3), marginShare(5, 0)]).toEqual([
      '25.0 %',
      '-33.3 %',
      '–',
    ])
  })
})

describe('a path with a name that has dots', () => {
  it('is read, and its value set and taken away', () => {
    const path = 'figures["money.depositBasisPoints"]'
    expect(stepsOf(path)).toEqual(['figures', 'money.depositBasisPoints'])
    const job = withValue(bedroomJob(), path, 4000)
    expect(job.figures).toEqual({ 'money.depositBasisPoints': 4000 })
    expect(valueAt(job, path)).toBe(4000)
    expect(withValue(job, path, undefined).figures).toEqual({})
  })
})

describe('the place of a number in the survey', () => {
  const job = bedroomJob()
  const [swap] = job.swaps
  const pipe = swap?.pipes[0]
  const place = (says: string, value: number | string) => surveyPlace(given(says, value), job)
  it('is the field that holds it: of the job, a swap, a pipe, a room and a wall', () => {
    expect(place('Flow temperature', job.survey.system.flowC)).toBe('survey.system.flowC')
    expect(place(`The ${pipe?.side} pipe, from the left end of the wall`, pipe?.xMm ?? 0)).toBe(
      'swaps[0].pipes[0].xMm',
    )
    expect(place('Room', job.rooms[0]?.roomC ?? 0)).toBe('rooms[0].roomC')
    expect(place('Width of the wall', job.rooms[0]?.walls[0]?.widthMm ?? 0)).toBe('rooms[0].walls[0].widthMm')
    expect(place('Bottom edge above the floor', swap?.bottomMm ?? 0)).toBe('swaps[0].bottomMm')
  })
  it('is none for what no field holds, another value, or a figure that was worked out', () => {
    expect(place('Mark-up on emitters', 2000)).toBeNull()
    expect(place('Room', -40)).toBeNull()
    expect(surveyPlace({ says: 'Room', value: 1, from: [given('x', 1)] }, job)).toBeNull()
    expect(surveyPlace(given('Bottom edge above the floor', swap?.bottomMm ?? 0), job, ['other'])).toBeNull()
  })
})
