import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { estimateLabour } from '../../../../src-main/engine/labour/estimate-labour.ts'
import type { LabourInput } from '../../../../src-main/engine/labour/estimate-labour.ts'

const drill = { name: 'Drill', count: 1, optimisticMin: 4, likelyMin: 6, pessimisticMin: 14 }
const hang = { name: 'Hang', count: 1, optimisticMin: 10, likelyMin: 15, pessimisticMin: 32 }

function estimate(input: LabourInput) {
  const answer = estimateLabour(input)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

describe('estimateLabour', () => {
  it('says the same for four on one line as for one on four lines', () => {
    const once = estimate({ tasks: [{ ...drill, count: 4 }] })
    const four = estimate({ tasks: [drill, drill, drill, drill] })
    expect(once.expectedMin).toBeCloseTo(four.expectedMin, 12)
    expect(once.sdMin).toBeCloseTo(four.sdMin, 12)
    // By hand: 4 x (4 + 24 + 14)/6 = 28; sqrt(4) x 10/6 = 3.333.
    expect([once.expectedMin, once.sdMin.toFixed(3)]).toEqual([28, '3.333'])
  })

  it('adds tasks, and their deviations in quadrature', () => {
    // By hand: 7 + 17 = 24; sqrt((10/6)² + (22/6)²) = 4.0277.
    const answer = estimate({ tasks: [drill, hang] })
    expect([answer.expectedMin, answer.sdMin.toFixed(4), answer.p50Min]).toEqual([24, '4.0277', 24])
  })

  it('multiplies the whole by the shared factor', () => {
    const sharedFactor = { optimistic: 1.5, likely: 1.5, pessimistic: 1.5 }
    const plain = estimate({ tasks: [drill, hang] })
    const slow = estimate({ tasks: [drill, hang], sharedFactor })
    expect(slow.expectedMin).toBeCloseTo(1.5 * plain.expectedMin, 12)
    expect(slow.sdMin).toBeCloseTo(1.5 * plain.sdMin, 12)
  })

  it('does not let the shared factor average out over many tasks', () => {
    const sharedFactor = { optimistic: 0.9, likely: 1, pessimistic: 1.4 }
    const relative = (count: number, input: Partial<LabourInput>) => {
      const { sdMin, expectedMin } = estimate({ tasks: [{ ...drill, count }], ...input })
      return sdMin / expectedMin
    }
    expect(relative(10_000, {})).toBeLessThan(0.003)
    // The factor alone: (0.5/6) / ((0.9 + 4 + 1.4)/6) = 0.0794.
    expect(relative(10_000, { sharedFactor })).toBeCloseTo(0.0794, 3)
  })

  it('keeps each task before the shared factor', () => {
    const answer = estimate({ tasks: [hang], sharedFactor: { optimistic: 2, likely: 2, pessimistic: 2 } })
    expect(answer.tasks[0]).toMatchObject({ name: 'Hang', count: 1, expectedMin: 17 })
  })

  it('takes a count of nothing as no time', () => {
    expect(estimate({ tasks: [{ ...drill, count: 0 }] })).toMatchObject({
      expectedMin: 0,
      sdMin: 0,
      p80Min: 0,
    })
  })

  it('refuses points out of order, with the path of each', () => {
    const answer = estimateLabour({
      tasks: [drill, { ...hang, likelyMin: 40 }, { ...hang, optimisticMin: 16 }, { ...hang, count: -1 }],
      sharedFactor: { optimistic: 1, likely: 0.9, pessimistic: 1.2 },
    })
    const paths = answer.ok ? [] : answer.problems.map(({ code, path }) => `${code} ${path}`)
    expect(paths).toEqual([
      'invalid tasks[1].likelyMin',
      'invalid tasks[2].likelyMin',
      'invalid tasks[3].count',
      'invalid sharedFactor.likely',
    ])
  })

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1])('refuses %s minutes', (minutes) => {
    const answer = estimateLabour({
      tasks: [{ ...drill, optimisticMin: minutes, likelyMin: minutes, pessimisticMin: minutes }],
    })
    expect(answer.ok).toBe(false)
  })

  it('says with which numbers it was worked', () => {
    const { why } = estimate({ tasks: [drill] })
    const leaves = (node: typeof why): readonly (number | string)[] =>
      node.from.length === 0 ? [node.value] : node.from.flatMap(leaves)
    expect(leaves(why)).toEqual(expect.arrayContaining([1, 4, 6, 14]))
  })
})

describe('the reason of an estimate', () => {
  // Four of (0 + 4 x 6 + 12)/6 = 6 are 24, deviation sqrt(4) x 12/6 = 4. The factor is (1 + 4 x 1.5 + 5)/6 = 2, deviation 4/6.
  const fill = { name: 'Fill', count: 4, optimisticMin: 0, likelyMin: 6, pessimisticMin: 12 }
  const sharedFactor = { optimistic: 1, likely: 1.5, pessimistic: 5 }
  const pert = 'PERT three-point estimate: (o + 4m + p)/6 and (p - o)/6'
  const part = because('Fill: 4 × (o + 4m + p)/6', 24, {
    unit: 'min',
    source: pert,
    from: [
      given('How many', 4),
      given('Optimistic, for one', 0, 'min'),
      given('Likely, for one', 6, 'min'),
      given('Pessimistic, for one', 12, 'min'),
    ],
  })
  const factorPart = because('Factor on the whole job: (o + 4m + p)/6', 2, {
    source: pert,
    from: [given('Optimistic factor', 1), given('Likely factor', 1.5), given('Pessimistic factor', 5)],
  })
  const near = (value: number) => expect.closeTo(value, 4) as number
  const deviate = given(
    'Normal deviate of 80 %',
    near(0.8416),
    undefined,
    'NIST/SEMATECH e-Handbook 1.3.6.7.1',
  )
  const spreadSays = 'Standard deviation: tasks in quadrature; the factor on the whole does not average out'
  const p80Says = 'Four jobs in five take less: expected + 0.8416 standard deviations'

  it('says that the tasks add up: 24, deviation 4, and 24 + 0.8416 x 4 = 27.3665', () => {
    const answer = estimate({ tasks: [fill] })
    expect(answer.tasks).toEqual([{ name: 'Fill', count: 4, expectedMin: 24, sdMin: 4, why: part }])
    expect(answer.why).toEqual(
      because(p80Says, near(27.3665), {
        unit: 'min',
        from: [
          because('The tasks add up', 24, { unit: 'min', from: [part] }),
          because(spreadSays, 4, { unit: 'min', from: [part] }),
          deviate,
        ],
      }),
    )
  })

  it('names the factor too: 48, and sqrt((2 x 4)² + (24 x 4/6)² + (4/6 x 4)²) = 18.0862', () => {
    const answer = estimate({ tasks: [fill], sharedFactor })
    expect(answer).toMatchObject({ expectedMin: 48, p50Min: 48, sdMin: near(18.0862), p80Min: near(63.2217) })
    expect(answer.why).toEqual(
      because(p80Says, near(63.2217), {
        unit: 'min',
        from: [
          because('The tasks add up, times the factor on the whole job', 48, {
            unit: 'min',
            from: [part, factorPart],
          }),
          because(spreadSays, near(18.0862), { unit: 'min', from: [part, factorPart] }),
          deviate,
        ],
      }),
    )
  })
})

describe('what an estimate refuses, in words', () => {
  const problemsOf = (input: LabourInput) => {
    const answer = estimateLabour(input)
    return answer.ok ? [] : answer.problems
  }
  const even = { name: 'Wait', count: 1, optimisticMin: 0, likelyMin: 0, pessimisticMin: 0 }

  it('names the task and the minutes that it had', () => {
    expect(problemsOf({ tasks: [{ ...hang, likelyMin: 40 }] })).toEqual([
      {
        code: 'invalid',
        message:
          'The minutes of “Hang” must rise from optimistic to likely to pessimistic, each 0 or more; they were 10, 40, 32.',
        path: 'tasks[0].likelyMin',
      },
    ])
  })

  it.each([-1, Number.NaN, Infinity])('names the task that is there %s times', (count) => {
    expect(problemsOf({ tasks: [{ ...hang, count }] })).toEqual([
      {
        code: 'invalid',
        message: `How many of “Hang” must be 0 or more; it was ${count}.`,
        path: 'tasks[0].count',
      },
    ])
  })

  it('names the factor on the whole job', () => {
    const sharedFactor = { optimistic: 1, likely: 1.3, pessimistic: 1.2 }
    expect(problemsOf({ tasks: [], sharedFactor })).toEqual([
      {
        code: 'invalid',
        message:
          'The factor on the whole job must rise from optimistic to likely to pessimistic, each 0 or more; it was 1, 1.3, 1.2.',
        path: 'sharedFactor.likely',
      },
    ])
  })

  it('takes three points that are one, and nothing at all', () => {
    expect(problemsOf({ tasks: [even], sharedFactor: { optimistic: 0, likely: 0, pessimistic: 0 } })).toEqual(
      [],
    )
    expect(estimate({ tasks: [] })).toMatchObject({ expectedMin: 0, sdMin: 0, p80Min: 0, tasks: [] })
  })

  it('refuses below nothing though the points rise', () => {
    expect(problemsOf({ tasks: [{ ...even, optimisticMin: -1 }] })).toHaveLength(1)
  })
})
