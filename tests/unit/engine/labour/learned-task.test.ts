import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import type { TaskMinutes } from '../../../../src-main/domain/figures.ts'
import { estimateLabour } from '../../../../src-main/engine/labour/estimate-labour.ts'
import { slowerRatio, taughtTask } from '../../../../src-main/engine/labour/learned-task.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const drill: TaskMinutes = {
  taskId: 'drill',
  name: 'Drill one hole',
  optimisticMin: 4,
  likelyMin: 6,
  pessimisticMin: 12,
  source: 'delivered',
}
const weight = { count: 4, why: given('Weight', 4) }
const took = (minutes: number, count: number) => ({ taskId: 'drill', name: 'Drill one hole', minutes, count })

describe('a task that the firm’s own jobs timed', () => {
  it('takes what the conjugate normal update says: (4 x 20/3 + 40 + 12) / (4 + 5)', () => {
    // By hand: (26.6667 + 52) / 9 = 8.740741; deviation of one (12 - 4)/6 = 1.3333, of the mean 1.3333/3 = 0.444444;
    // 80 % within 1.281552 of them (Student's t, last row: 1.282) = 0.569579.
    const { learned } = answered(taughtTask(drill, [took(40, 4), took(12, 1)], weight))
    expect(learned).toMatchObject({ taskId: 'drill', name: 'Drill one hole', jobs: 2 })
    expect(learned.priorMin).toBeCloseTo(6.666667, 6)
    expect(learned.expectedMin).toBeCloseTo(8.740741, 6)
    expect(learned.fromMin).toBeCloseTo(8.171162, 5)
    expect(learned.toMin).toBeCloseTo(9.310319, 5)
    expect(leavesOf(learned.why)).toEqual([4, 6, 12, 4, 40, 4, 12, 1])
    expect(learned.why.says).toBe(
      'The figure before and 2 jobs, each by how many of the task stand behind it.',
    )
  })

  it('puts minutes in force whose three points have that mean and keep their shape', () => {
    // 8.740741 / 6.666667 = 1.311111: 4, 6, 12 become 5.244444, 7.866667, 15.733333, whose (o + 4m + p)/6 is 8.740741.
    const { inForce } = answered(taughtTask(drill, [took(40, 4), took(12, 1)], weight))
    const { optimisticMin, likelyMin, pessimisticMin } = inForce
    expect([optimisticMin, likelyMin, pessimisticMin].map((one) => one.toFixed(6))).toEqual([
      '5.244444',
      '7.866667',
      '15.733333',
    ])
    expect((optimisticMin + 4 * likelyMin + pessimisticMin) / 6).toBeCloseTo(8.740741, 6)
    expect(inForce).toMatchObject({ taskId: 'drill', name: 'Drill one hole' })
  })

  it('gets quicker where jobs were: (4 x 20/3 + 10)/(4 + 4) = 4.583333', () => {
    const { learned, inForce } = answered(taughtTask(drill, [took(10, 4)], weight))
    expect(learned.expectedMin).toBeCloseTo(4.583333, 6)
    expect(inForce.likelyMin).toBeCloseTo((6 * 4.5833333) / 6.6666667, 5)
  })

  it('says how many jobs stand behind it', () => {
    const source = (jobs: number) =>
      answered(
        taughtTask(
          drill,
          Array.from({ length: jobs }, () => took(6, 1)),
          weight,
        ),
      ).inForce.source
    expect(source(1)).toBe("the firm's own one job, with the delivered minutes as a start")
    expect(source(3)).toBe("the firm's own 3 jobs, with the delivered minutes as a start")
  })

  it('stays at nothing where nobody expects it to take time', () => {
    const none = { ...drill, optimisticMin: 0, likelyMin: 0, pessimisticMin: 0 }
    const { inForce, learned } = answered(taughtTask(none, [took(8, 4)], weight))
    expect([inForce.optimisticMin, inForce.likelyMin, inForce.pessimisticMin]).toEqual([0, 0, 0])
    expect(learned.priorMin).toBe(0)
  })

  it('refuses what cannot be learnt from', () => {
    expect(refused(taughtTask(drill, [took(8, 0)], weight)).path).toBe('actuals[0].count')
  })
})

describe('how much longer than plain a task was reckoned', () => {
  it('is expected minutes over plain ones: 50 / (3 x 20/3) = 2.5', () => {
    expect(slowerRatio({ count: 3, expectedMin: 50 }, drill)).toBeCloseTo(2.5, 12)
    expect(slowerRatio({ count: 3, expectedMin: 20 }, drill)).toBeCloseTo(1, 12)
  })

  it('is 1 where there is nothing to compare', () => {
    const none = { optimisticMin: 0, likelyMin: 0, pessimisticMin: 0 }
    expect(slowerRatio({ count: 3, expectedMin: 50 }, none)).toBe(1)
    expect(slowerRatio({ count: 0, expectedMin: 50 }, drill)).toBe(1)
    expect(slowerRatio({ count: 3, expectedMin: 0 }, drill)).toBe(1)
  })

  it('lets a slow wall teach nothing where the job took what was reckoned', () => {
    // 3 holes reckoned at 50 minutes took 50: as 7.5 plain ones of 6.6667 each, the figure stays.
    const ratio = slowerRatio({ count: 3, expectedMin: 50 }, drill)
    const { learned } = answered(taughtTask(drill, [took(50, 3 * ratio)], weight))
    expect(learned.expectedMin).toBeCloseTo(learned.priorMin, 9)
  })
})

describe('minutes that were learnt, in an estimate', () => {
  const { name, optimisticMin, likelyMin, pessimisticMin } = drill
  const points = { name, count: 2, optimisticMin, likelyMin, pessimisticMin }

  it('say beside each of the three points where they are from', () => {
    const { tasks } = answered(estimateLabour({ tasks: [{ ...points, source: 'three jobs' }] }))
    expect(tasks[0]?.why.from).toEqual([
      given('How many', 2),
      given('Optimistic, for one', 4, 'min', 'three jobs'),
      given('Likely, for one', 6, 'min', 'three jobs'),
      given('Pessimistic, for one', 12, 'min', 'three jobs'),
    ])
  })

  it('say nothing of it where nobody does', () => {
    const { tasks } = answered(estimateLabour({ tasks: [points] }))
    expect(tasks[0]?.why.from.filter(({ source }) => source !== undefined)).toEqual([])
  })
})
