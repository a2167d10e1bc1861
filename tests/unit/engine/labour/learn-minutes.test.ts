import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import { learnMinutes } from '../../../../src-main/engine/labour/learn-minutes.ts'
import type { Learning } from '../../../../src-main/engine/labour/learn-minutes.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const weight = { count: 4, why: given('Weight', 4) }
const prior = { optimisticMin: 4, likelyMin: 6, pessimisticMin: 12 }
const learn = (actuals: Learning['actuals']) => answered(learnMinutes({ prior, actuals }, weight))

describe('learning from jobs', () => {
  it('leaves the three points as they were while no job was timed', () => {
    // By hand: (4 + 24 + 12)/6 = 6.667; (12 - 4)/6 = 1.333.
    const before = learn([])
    expect([before.expectedMin.toFixed(3), before.sdMin.toFixed(3)]).toEqual(['6.667', '1.333'])
    expect([before.jobs, before.count]).toEqual([0, 0])
  })

  it('weighs a job by how many of the task it had', () => {
    // By hand: (4 x 6.667 + 40 + 12) / (4 + 4 + 1) = 8.741.
    const after = learn([
      { minutes: 40, count: 4 },
      { minutes: 12, count: 1 },
    ])
    expect(after.expectedMin.toFixed(3)).toBe('8.741')
    expect([after.jobs, after.count, after.priorWeightCount]).toEqual([2, 5, 4])
  })

  it('learns the spread from how jobs differ: 8 and 12 minutes about 10 add 8 to 4 x 1.333²', () => {
    // By hand: sqrt((4 x 1.7778 + 4 + 4) / (4 + 1)) = 1.738.
    const after = learn([
      { minutes: 8, count: 1 },
      { minutes: 12, count: 1 },
    ])
    expect(after.sdMin.toFixed(3)).toBe('1.738')
    expect(learn([{ minutes: 20, count: 1 }]).sdMin.toFixed(3)).toBe('1.333')
  })

  it('holds to a prior without spread as firmly as its weight says', () => {
    const sure = { meanMin: 10, sdMin: 0 }
    const after = answered(learnMinutes({ prior: sure, actuals: [{ minutes: 60, count: 4 }] }, weight))
    expect(after).toMatchObject({ expectedMin: 12.5, sdOfMeanMin: 0, fromMin: 12.5, toMin: 12.5 })
  })

  it('names every job, the points and the weight', () => {
    expect(leavesOf(learn([{ minutes: 40, count: 4 }]).why)).toEqual([4, 6, 12, 4, 40, 4])
  })

  it('refuses points out of order, a job of none, minutes below 0, a weight of 0', () => {
    const of = (learning: Partial<Learning>, count = 4) =>
      refused(learnMinutes({ prior, actuals: [], ...learning }, { count, why: weight.why }))
    expect(of({ prior: { ...prior, likelyMin: 20 } }).path).toBe('prior.likelyMin')
    expect(of({ prior: { meanMin: 5, sdMin: -1 } }).path).toBe('prior.meanMin')
    expect(of({ actuals: [{ minutes: 5, count: 0 }] }).path).toBe('actuals[0].count')
    expect(of({ actuals: [{ minutes: -5, count: 1 }] }).path).toBe('actuals[0].minutes')
    expect(of({ actuals: [{ minutes: Number.NaN, count: 1 }] }).path).toBe('actuals[0].minutes')
    expect(of({}, 0).path).toBe('priorWeightCount')
  })
})
