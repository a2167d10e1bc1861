import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
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

describe('the figure with what stands behind it', () => {
  const two = [
    { minutes: 40, count: 4 },
    { minutes: 12, count: 1 },
  ]

  it('lies between bounds that 80 % fall in: 8.7407 +- 1.28155 x 1.3333 / sqrt(9)', () => {
    // By hand: 1.3333 / 3 = 0.44444; x 1.2815516 (tables of Student's t, last row: 1.282) = 0.569578.
    const after = learn(two)
    expect(after.sdOfMeanMin).toBeCloseTo(0.444444, 6)
    expect(after.fromMin).toBeCloseTo(8.171162, 5)
    expect(after.toMin).toBeCloseTo(9.310319, 5)
    // Spread of one: sqrt((4 x 1.7778 + 4 x 0.4² + 1.6²) / (4 + 2 - 1)) = sqrt(10.3111 / 5).
    expect(after.sdMin).toBeCloseTo(1.436044, 5)
  })

  it('is never bounded below nothing: 1 - 12.8 is 0, and 1 + 12.8 stays', () => {
    const wild = { meanMin: 1, sdMin: 10 }
    const learnt = answered(learnMinutes({ prior: wild, actuals: [] }, { count: 1, why: given('Weight', 1) }))
    expect(learnt.fromMin).toBe(0)
    expect(learnt.toMin).toBeCloseTo(13.815516, 5)
  })

  it('says of one job that it is one', () => {
    expect(learn(two.slice(0, 1)).why.says).toBe(
      'The figure before and 1 job, each by how many of the task stand behind it.',
    )
  })

  it('gives its reason: the three points before, the weight, and each job', () => {
    const { why } = learn(two)
    expect(why).toEqual(
      because(
        'The figure before and 2 jobs, each by how many of the task stand behind it.',
        expect.closeTo(8.740741, 5) as number,
        {
          unit: 'min',
          from: [
            because('Before any job was timed.', expect.closeTo(6.666667, 5) as number, {
              unit: 'min',
              from: [
                given('Optimistic, for one', 4, 'min'),
                given('Likely, for one', 6, 'min'),
                given('Pessimistic, for one', 12, 'min'),
              ],
            }),
            weight.why,
            because('Job 1: what one took.', 10, {
              unit: 'min',
              from: [given('Minutes', 40, 'min'), given('For how many', 4)],
            }),
            because('Job 2: what one took.', 12, {
              unit: 'min',
              from: [given('Minutes', 12, 'min'), given('For how many', 1)],
            }),
          ],
        },
      ),
    )
  })

  it('counts one job as one', () => {
    expect(learn([{ minutes: 40, count: 4 }]).why.says).toBe(
      'The figure before and 1 job, each by how many of the task stand behind it.',
    )
  })

  it('gives mean and deviation as its reason where those were given', () => {
    const { why } = answered(learnMinutes({ prior: { meanMin: 10, sdMin: 2 }, actuals: [] }, weight))
    expect(why.from[0]).toEqual(
      because('Before any job was timed.', 10, {
        unit: 'min',
        from: [given('Mean before', 10, 'min'), given('Deviation before', 2, 'min')],
      }),
    )
  })
})

describe('what can be learnt from, and what is refused in words', () => {
  const told = (learning: Partial<Learning>, count = 4) =>
    learnMinutes({ prior, actuals: [], ...learning }, { count, why: weight.why })

  it.each([
    [{ optimisticMin: 0, likelyMin: 0, pessimisticMin: 0 }, 0],
    [{ optimisticMin: 5, likelyMin: 5, pessimisticMin: 5 }, 5],
    [{ meanMin: 0, sdMin: 0 }, 0],
  ])('takes %j, which has no spread, as %i', (even, minutes) => {
    expect(answered(told({ prior: even }))).toMatchObject({ expectedMin: minutes, sdMin: 0 })
  })

  it('takes a job of no minutes, and a count and weight just over nothing', () => {
    expect(answered(told({ actuals: [{ minutes: 0, count: 0.1 }] }, 0.1)).count).toBe(0.1)
  })

  it.each([
    [{ optimisticMin: -1, likelyMin: 6, pessimisticMin: 12 }, '-1, 6, 12'],
    [{ optimisticMin: 7, likelyMin: 6, pessimisticMin: 12 }, '7, 6, 12'],
    [{ optimisticMin: 4, likelyMin: 13, pessimisticMin: 12 }, '4, 13, 12'],
    [{ optimisticMin: 4, likelyMin: 6, pessimisticMin: Infinity }, '4, 6, Infinity'],
  ])('refuses the points of %j', (points, said) => {
    expect(refused(told({ prior: points }))).toEqual({
      code: 'invalid',
      message: `The minutes must rise from optimistic to likely to pessimistic, each 0 or more; they were ${said}.`,
      path: 'prior.likelyMin',
    })
  })

  it.each([
    [{ meanMin: -1, sdMin: 2 }, '-1, 2'],
    [{ meanMin: 5, sdMin: -1 }, '5, -1'],
    [{ meanMin: Infinity, sdMin: 2 }, 'Infinity, 2'],
    [{ meanMin: 5, sdMin: Number.NaN }, '5, NaN'],
  ])('refuses a mean and deviation of %j', (spread, said) => {
    expect(refused(told({ prior: spread }))).toEqual({
      code: 'invalid',
      message: `Mean and deviation must be 0 or more; they were ${said}.`,
      path: 'prior.meanMin',
    })
  })

  it.each([-0.1, Infinity])('refuses a job of %s minutes, by its place', (minutes) => {
    expect(
      refused(
        told({
          actuals: [
            { minutes: 5, count: 1 },
            { minutes, count: 1 },
          ],
        }),
      ),
    ).toEqual({
      code: 'invalid',
      message: `Job 2 must have taken 0 minutes or more; it took ${minutes}.`,
      path: 'actuals[1].minutes',
    })
  })

  it.each([0, Infinity])('refuses a job of %s tasks, by its place', (count) => {
    expect(
      refused(
        told({
          actuals: [
            { minutes: 5, count: 1 },
            { minutes: 5, count },
          ],
        }),
      ),
    ).toEqual({
      code: 'invalid',
      message: `Job 2 must have had more than 0 of the task; it had ${count}.`,
      path: 'actuals[1].count',
    })
  })

  it.each([0, -1, Infinity])('refuses a weight of %s', (count) => {
    expect(refused(told({}, count))).toEqual({
      code: 'invalid',
      message: `The weight of the prior must be more than 0; it was ${count}.`,
      path: 'priorWeightCount',
    })
  })
})
