import { describe, expect, it } from 'vitest'
import { emitterOutput as request } from '../../../../src-main/contract/heating/heat.ts'
import { exponentFromTwoRatings } from '../../../../src-main/engine/heat/emitter-exponent.ts'
import { emitterOutput, emitterWatts } from '../../../../src-main/engine/heat/emitter-output.ts'
import { excessTemperatureK, meanExcessK } from '../../../../src-main/engine/heat/excess-temperature.ts'
import { ratingExcess } from '../../../../src-main/engine/heat/rating-excess.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const radiator = { ratedW: 1000, exponent: 1.3 }
const warm = { flowC: 55, returnC: 45, roomC: 20 }

describe('an emitter’s output', () => {
  it('is the rated one at the temperatures it was rated at, by either mean', () => {
    const at = { ...radiator, flowC: 75, returnC: 65, roomC: 20 }
    expect(answered(emitterOutput(at)).watts).toBe(1000)
    expect(answered(emitterOutput({ ...at, mean: 'arithmetic' })).watts).toBe(1000)
  })

  it('goes by the logarithmic mean unless the arithmetic one is asked for, and says which', () => {
    expect(answered(emitterOutput({ ...radiator, ...warm })).mean).toBe('logarithmic')
    const output = answered(emitterOutput({ ...radiator, ...warm, mean: 'arithmetic' }))
    expect(output).toMatchObject({ mean: 'arithmetic', excessK: 30 })
  })

  it('counts from the rating’s own temperatures', () => {
    const rating = { flowC: 55, returnC: 45, roomC: 20 }
    expect(answered(emitterOutput({ ...radiator, ...warm, rating })).watts).toBe(1000)
  })

  it('multiplies the factors and shows each in its reason', () => {
    const factors = [
      { name: 'Towels on the rail', value: 0.7 },
      { name: 'Shelf above', value: 0.9 },
    ]
    const plain = answered(emitterOutput({ ...radiator, ...warm }))
    const less = answered(emitterOutput({ ...radiator, ...warm, factors }))
    expect(less.watts).toBeCloseTo(plain.watts * 0.63, 9)
    expect(less.why.from.map((reason) => reason.says)).toContain('Factor: Towels on the rail')
  })

  it('shows Btu an hour beside watts', () => {
    const output = answered(emitterOutput({ ...radiator, ...warm }))
    expect(output.btuPerHour / output.watts).toBeCloseTo(3.412142, 6)
  })

  it('has every figure that was used at the leaves of its reason', () => {
    const factors = [{ name: 'Paint', value: 0.95 }]
    const { why } = answered(emitterOutput({ ...radiator, ...warm, factors }))
    for (const figure of [1000, 1.3, 55, 45, 20, 75, 65, 0.95]) expect(leavesOf(why)).toContain(figure)
  })

  it('fits the answer of its request', () => {
    expect(request.output.safeParse(answered(emitterOutput({ ...radiator, ...warm }))).error).toBeUndefined()
  })

  it.each([
    [
      { flowC: 45, returnC: 45 },
      'flowC',
      'The flow must be warmer than the return; they are 45 °C and 45 °C.',
    ],
    [
      { flowC: 40, returnC: 45 },
      'flowC',
      'The flow must be warmer than the return; they are 40 °C and 45 °C.',
    ],
    [{ returnC: 20 }, 'returnC', 'The return must be warmer than the room; they are 20 °C and 20 °C.'],
    [{ returnC: 15 }, 'returnC', 'The return must be warmer than the room; they are 15 °C and 20 °C.'],
  ])('refuses %j by a sentence', (change, path, message) => {
    expect(refused(emitterOutput({ ...radiator, ...warm, ...change }))).toEqual({
      code: 'impossible',
      message,
      path,
    })
    const arithmetic = emitterOutput({ ...radiator, ...warm, ...change, mean: 'arithmetic' })
    expect(refused(arithmetic).path).toBe(path)
  })

  it('refuses a rating that is out of order, under its own path', () => {
    const rating = { flowC: 65, returnC: 75, roomC: 20 }
    expect(refused(emitterOutput({ ...radiator, ...warm, rating })).path).toBe('rating.flowC')
  })

  it('refuses a rating that hardly stands above its room', () => {
    const rating = { flowC: 20.5, returnC: 20.1, roomC: 20 }
    expect(refused(emitterOutput({ ...radiator, ...warm, rating }))).toMatchObject({ path: 'rating' })
    expect(refused(ratingExcess(rating, 'arithmetic')).message).toContain('75/65/20')
  })

  it.each([
    [{ ratedW: 0 }, 'ratedW'],
    [{ exponent: 0.9 }, 'exponent'],
    [{ exponent: 2.1 }, 'exponent'],
    [{ factors: [{ name: 'Paint', value: 0 }] }, 'factors[0].value'],
    [{ roomC: NaN }, 'roomC'],
    [{ flowC: Infinity }, 'flowC'],
    [{ ratedW: 1e300 }, 'ratedW'],
  ])('refuses %j, which its request would not let through', (change, path) => {
    expect(refused(emitterOutput({ ...radiator, ...warm, ...change })).path).toBe(path)
  })
})

describe('the excess temperature', () => {
  it('keeps its digits where flow and return are all but the same', () => {
    const { excessK } = answered(excessTemperatureK({ flowC: 50.000000001, returnC: 50, roomC: 20 }))
    expect(excessK).toBeCloseTo(30, 6)
  })

  it('stays a number where the return is all but the room', () => {
    const { excessK } = answered(excessTemperatureK({ flowC: 75, returnC: Number.MIN_VALUE, roomC: 0 }))
    expect(excessK).toBeGreaterThan(0)
    expect(excessK).toBeLessThan(0.2)
  })

  it('is 0 for a search that asks where nothing is given, or where no number is given', () => {
    expect(meanExcessK({ flowC: 30, returnC: 20, roomC: 20 }, 'logarithmic')).toBe(0)
    expect(meanExcessK({ flowC: NaN, returnC: 20, roomC: 10 }, 'arithmetic')).toBe(0)
    expect(meanExcessK({ flowC: Infinity, returnC: 20, roomC: 10 }, 'logarithmic')).toBe(0)
  })
})

describe('the bare equation', () => {
  it('gives nothing without an excess, and throws without a rated one', () => {
    expect(emitterWatts({ ...radiator, ratedExcessK: 50, excessK: 0 })).toBe(0)
    expect(() => emitterWatts({ ...radiator, ratedExcessK: 0, excessK: 10 })).toThrow('above 0 K')
  })
})

describe('an exponent from two ratings', () => {
  const first = { ratedW: 1000, rating: { flowC: 75, returnC: 65, roomC: 20 } }
  const low = { flowC: 55, returnC: 45, roomC: 20 }

  it('is the one that turns the first rating into the second', () => {
    const ratedW = answered(emitterOutput({ ...radiator, exponent: 1.24, ...low })).watts
    const { exponent } = answered(exponentFromTwoRatings({ first, second: { ratedW, rating: low } }))
    expect(exponent).toBeCloseTo(1.24, 9)
  })

  it('does not mind which comes first', () => {
    const second = { ratedW: 520, rating: low }
    const one = answered(exponentFromTwoRatings({ first, second })).exponent
    expect(answered(exponentFromTwoRatings({ first: second, second: first })).exponent).toBeCloseTo(one, 12)
  })

  it.each([
    [{ ratedW: 900, rating: first.rating }, 'second.rating', 'at least 1 K apart'],
    [{ ratedW: 1000, rating: low }, 'second.ratedW', 'between 1 and 2'],
    [{ ratedW: 100, rating: low }, 'second.ratedW', 'between 1 and 2'],
    [{ ratedW: 0, rating: low }, 'second.ratedW', 'more than 0 W'],
    [
      { ratedW: 500, rating: { flowC: 45, returnC: 55, roomC: 20 } },
      'second.rating.flowC',
      'warmer than the return',
    ],
  ])('refuses a second rating of %j', (second, path, part) => {
    const problem = refused(exponentFromTwoRatings({ first, second }))
    expect(problem.path).toBe(path)
    expect(problem.message).toContain(part)
  })
})
