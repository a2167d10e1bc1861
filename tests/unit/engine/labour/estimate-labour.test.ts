import { describe, expect, it } from 'vitest'
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
