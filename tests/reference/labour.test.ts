import { describe, expect, it } from 'vitest'
import { estimateLabour } from '../../src-main/engine/labour/estimate-labour.ts'
import type { LabourInput } from '../../src-main/engine/labour/estimate-labour.ts'

function estimate(input: LabourInput) {
  const answer = estimateLabour(input)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}

const task = (
  name: string,
  [optimisticMin, likelyMin, pessimisticMin]: readonly [number, number, number],
) => ({
  name,
  count: 1,
  optimisticMin,
  likelyMin,
  pessimisticMin,
})

describe('three-point estimates', () => {
  it('expects 8.5 with deviation 1.5 from 5 / 8 / 14', () => {
    // schematex.js.org, three-point example, activity B.
    const answer = estimate({ tasks: [task('B', [5, 8, 14])] })
    expect([answer.expectedMin, answer.sdMin]).toEqual([8.5, 1.5])
  })

  it('adds four activities to 17.83 with deviation 1.69', () => {
    // schematex.js.org, three-point example: te 3.17, 8.5, 4.17, 2 and sigma 0.5, 1.5, 0.5, 0.33. The page prints the points
    // of the second only; those of the others are the whole numbers that give the printed te and sigma.
    const answer = estimate({
      tasks: [task('A', [2, 3, 5]), task('B', [5, 8, 14]), task('C', [3, 4, 6]), task('D', [1, 2, 3])],
    })
    expect(answer.tasks.map((one) => one.expectedMin.toFixed(2))).toEqual(['3.17', '8.50', '4.17', '2.00'])
    expect(answer.expectedMin).toBeCloseTo(17.83, 2)
    expect(answer.sdMin).toBeCloseTo(1.69, 2)
  })

  // A statistics exercise with a worked answer (wizedu.com 717873): 14 activities, the mean and deviation of each, and the
  // critical path A C E H I K M N of 50.83 with deviation 3.346.
  const worked: readonly {
    id: string
    points: readonly [number, number, number]
    mean: string
    sd: string
  }[] = [
    { id: 'A', points: [5, 5, 7], mean: '5.33', sd: '0.33' },
    { id: 'B', points: [1, 2, 5], mean: '2.33', sd: '0.67' },
    { id: 'C', points: [5, 5, 5], mean: '5.00', sd: '0.00' },
    { id: 'D', points: [4, 8, 13], mean: '8.17', sd: '1.50' },
    { id: 'E', points: [1, 10, 17], mean: '9.67', sd: '2.67' },
    { id: 'F', points: [1, 5, 7], mean: '4.67', sd: '1.00' },
    { id: 'G', points: [2, 6, 9], mean: '5.83', sd: '1.17' },
    { id: 'H', points: [4, 4, 6], mean: '4.33', sd: '0.33' },
    { id: 'I', points: [2, 7, 10], mean: '6.67', sd: '1.33' },
    { id: 'J', points: [2, 4, 7], mean: '4.17', sd: '0.83' },
    { id: 'K', points: [6, 10, 13], mean: '9.83', sd: '1.17' },
    { id: 'L', points: [2, 6, 6], mean: '5.33', sd: '0.67' },
    { id: 'M', points: [2, 2, 3], mean: '2.17', sd: '0.17' },
    { id: 'N', points: [7, 7, 12], mean: '7.83', sd: '0.83' },
  ]
  it.each(worked)('expects $mean with deviation $sd for activity $id', ({ id, points, mean, sd }) => {
    const answer = estimate({ tasks: [task(id, points)] })
    expect([answer.expectedMin.toFixed(2), answer.sdMin.toFixed(2)]).toEqual([mean, sd])
  })

  it('adds the critical path of that exercise to 50.83 with deviation 3.346', () => {
    const onPath = worked.filter(({ id }) => 'ACEHIKMN'.includes(id))
    const answer = estimate({ tasks: onPath.map(({ id, points }) => task(id, points)) })
    expect(answer.expectedMin.toFixed(2)).toBe('50.83')
    expect(answer.sdMin.toFixed(3)).toBe('3.346')
  })
})

describe('the 80 % point', () => {
  const answer = estimate({ tasks: [task('One', [0, 30, 60])] })
  const z = (answer.p80Min - answer.expectedMin) / answer.sdMin

  it('is 0.8416 deviations above the mean', () => {
    // Python 3.11 statistics.NormalDist().inv_cdf(0.8) = 0.8416212335729144; NIST/SEMATECH 1.3.6.7.1 tables 0.84 at 0.29955.
    expect(z).toBeCloseTo(0.8416212335729144, 12)
  })

  it('leaves 80 % of a normal below it, by Simpson’s rule over the density', () => {
    const strips = 1000
    const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)
    const weight = (index: number) => (index === 0 || index === strips ? 1 : index % 2 === 1 ? 4 : 2)
    const sum = Array.from({ length: strips + 1 }, (_, i) => weight(i) * density((z * i) / strips))
    const above = sum.reduce((total, part) => total + part, 0) * (z / strips / 3)
    expect(0.5 + above).toBeCloseTo(0.8, 9)
  })
})
