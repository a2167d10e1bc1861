import { describe, expect, it } from 'vitest'
import { exponentFromTwoRatings } from '../../../../src-main/engine/heat/emitter-exponent.ts'
import { emitterOutput, emitterWatts } from '../../../../src-main/engine/heat/emitter-output.ts'
import { excessTemperatureK, meanExcessK } from '../../../../src-main/engine/heat/excess-temperature.ts'
import { ratingExcess } from '../../../../src-main/engine/heat/rating-excess.ts'
import { answered, refused } from '../../../answered.ts'
import { readOut } from '../../../why-for-tests.ts'

const arithmetic = { mean: 'arithmetic' } as const
const warm = { flowC: 55, returnC: 45, roomC: 20 }
const first = { ratedW: 1000, rating: { flowC: 75, returnC: 65, roomC: 20 } }

describe('the reason of an emitter’s output', () => {
  it('by the arithmetic mean: 30 K of 50 K at n = 1 is 0.6 of 1000 W, and 0.95 of that is 570 W', () => {
    const factors = [{ name: 'Paint', value: 0.95 }]
    const { why, watts, btuPerHour, excessK } = answered(
      emitterOutput({ ratedW: 1000, exponent: 1, ...warm, ...arithmetic, factors }),
    )
    expect([watts, excessK]).toEqual([expect.closeTo(570, 9), 30])
    // 570 × 3.412142 from NIST SP 811: 1 W = 3.412142 Btu/h.
    expect(btuPerHour).toBeCloseTo(1944.92, 2)
    expect(readOut(why)).toEqual([
      'Emitter gives: rated output × (excess / rated excess) ^ exponent × factors: 570 W (EN 442-2)',
      '  Rated output: 1000 W',
      '  Exponent: 1',
      '  As it runs: 30 K',
      '    Emitter over room, arithmetic mean: (flow + return) / 2 - room: 30 K',
      '      Flow: 55 °C',
      '      Return: 45 °C',
      '      Room: 20 °C',
      '  As it was rated: 50 K (EN 442-2: rated at 75/65/20)',
      '    Emitter over room, arithmetic mean: (flow + return) / 2 - room: 50 K',
      '      Flow: 75 °C',
      '      Return: 65 °C',
      '      Room: 20 °C',
      '  Factor: Paint: 0.95',
    ])
  })

  // (70 - 35) / ln(70 / 35) = 35 / 0.693147 = 50.4943; rated: (60 - 30) / ln 2 = 43.2809.
  it('by the logarithmic mean, from its own rating, names no list as the rating’s source', () => {
    const rating = { flowC: 80, returnC: 50, roomC: 20 }
    const { why } = answered(
      emitterOutput({ ratedW: 600, exponent: 1, flowC: 90, returnC: 55, roomC: 20, rating }),
    )
    expect(readOut(why)).toEqual([
      'Emitter gives: rated output × (excess / rated excess) ^ exponent × factors: 700 W (EN 442-2)',
      '  Rated output: 600 W',
      '  Exponent: 1',
      '  As it runs: 50.4943 K',
      '    Emitter over room, logarithmic mean: (flow - return) / ln((flow - room) / (return - room)): 50.4943 K',
      '      Flow: 90 °C',
      '      Return: 55 °C',
      '      Room: 20 °C',
      '  As it was rated: 43.2809 K',
      '    Emitter over room, logarithmic mean: (flow - return) / ln((flow - room) / (return - room)): 43.2809 K',
      '      Flow: 80 °C',
      '      Return: 50 °C',
      '      Room: 20 °C',
    ])
  })
})

describe('an emitter that is refused says what was wrong and what would be right', () => {
  const emitter = { ratedW: 1000, exponent: 1.3, ...warm }
  const paint = { name: 'Paint', value: 1 }
  it.each([
    [{ ratedW: 0 }, 'ratedW', 'The rated output must be more than 0 W; it was 0.'],
    [{ exponent: 0.99 }, 'exponent', 'The exponent must be 1 to 2, usually 1.2 to 1.4; it was 0.99.'],
    [{ exponent: 2.01 }, 'exponent', 'The exponent must be 1 to 2, usually 1.2 to 1.4; it was 2.01.'],
    [
      { factors: [paint, { name: 'Shelf', value: 0 }] },
      'factors[1].value',
      'The factor “Shelf” must be more than 0; it was 0.',
    ],
    [
      { factors: [{ name: 'Shelf', value: -0.5 }] },
      'factors[0].value',
      'The factor “Shelf” must be more than 0; it was -0.5.',
    ],
  ])('%j', (change, path, message) => {
    expect(refused(emitterOutput({ ...emitter, ...change }))).toEqual({ code: 'invalid', path, message })
  })

  it('past all sense from a million million watts, which is let through', () => {
    const at = { exponent: 1, flowC: 75, returnC: 65, roomC: 20 }
    expect(answered(emitterOutput({ ...at, ratedW: 1e12 })).watts).toBe(1e12)
    expect(refused(emitterOutput({ ...at, ratedW: 1.001e12 }))).toEqual({
      code: 'impossible',
      path: 'ratedW',
      message: 'These figures make an output past all sense; check the rated output.',
    })
  })

  it('takes exponents of 1 and of 2 themselves', () => {
    // 30 K of 50 K: 0.6, and 0.6 squared.
    expect(answered(emitterOutput({ ...emitter, exponent: 1, ...arithmetic })).watts).toBeCloseTo(600, 9)
    expect(answered(emitterOutput({ ...emitter, exponent: 2, ...arithmetic })).watts).toBeCloseTo(360, 9)
  })

  it('of a rating hardly above its room; 1 K itself is enough', () => {
    const at = (flowC: number, returnC: number) => ratingExcess({ flowC, returnC, roomC: 20 }, 'arithmetic')
    expect(answered(at(21.5, 20.5)).excessK).toBe(1)
    expect(refused(at(21.4, 20.5))).toEqual({
      code: 'impossible',
      path: 'rating',
      message:
        'The rating must be at least 1 K above its room; lists are made at 75/65/20, 90/70/20 or 55/45/20.',
    })
    expect(refused(ratingExcess({ flowC: 40, returnC: 50, roomC: 20 }, 'arithmetic')).path).toBe(
      'rating.flowC',
    )
  })

  it('of temperatures too far apart to reckon with', () => {
    expect(
      refused(excessTemperatureK({ flowC: 1.7e308, returnC: 1.6e308, roomC: 0, ...arithmetic })),
    ).toEqual({
      code: 'impossible',
      message: 'These temperatures lie too far apart to reckon with.',
    })
  })
})

describe('the bare excess', () => {
  it('is the drop over the logarithm on both sides of where the logarithm is taken in another way', () => {
    // 10 / ln(20 / 10) = 14.4270; 9.9 / ln(19.9 / 10) = 14.3867; 30 / ln(40 / 10) = 21.6404.
    const at = (flowC: number) => meanExcessK({ flowC, returnC: 30, roomC: 20 }, 'logarithmic')
    expect(at(40)).toBeCloseTo(14.427, 4)
    expect(at(39.9)).toBeCloseTo(14.3867, 4)
    expect(at(60)).toBeCloseTo(21.6404, 4)
  })

  it('is nothing where flow is the return, though both are above the room', () => {
    expect(meanExcessK({ flowC: 50, returnC: 50, roomC: 20 }, 'arithmetic')).toBe(0)
    expect(meanExcessK({ flowC: 50, returnC: 20, roomC: 20 }, 'arithmetic')).toBe(0)
    expect(meanExcessK({ flowC: 50, returnC: 20.5, roomC: 20 }, 'arithmetic')).toBe(15.25)
  })
})

describe('the bare equation', () => {
  it('names the rated excess that it cannot work with', () => {
    const point = { ratedW: 1000, exponent: 1, excessK: 10 }
    expect(() => emitterWatts({ ...point, ratedExcessK: -5 })).toThrow(
      'A rated excess must be above 0 K, not -5',
    )
    expect(emitterWatts({ ...point, ratedExcessK: 50, excessK: -1 })).toBe(0)
    expect(emitterWatts({ ...point, ratedExcessK: 50, excessK: 0.05 })).toBeCloseTo(1, 12)
    expect(emitterWatts({ ratedW: 1e308, exponent: 2, ratedExcessK: 1, excessK: 100 })).toBe(Number.MAX_VALUE)
  })
})

describe('an exponent from two ratings', () => {
  // Half the output at half the excess: n = 1. Excesses 50 and 25.
  it('says both ratings and how they make it', () => {
    const second = { ratedW: 500, rating: { flowC: 50, returnC: 40, roomC: 20 } }
    const { exponent, why, mean } = answered(exponentFromTwoRatings({ first, second, ...arithmetic }))
    expect([exponent, mean]).toEqual([1, 'arithmetic'])
    expect(readOut(why)).toEqual([
      'Exponent: ln(first output / second) / ln(first excess / second): 1 (EN 442-2 characteristic equation at two points)',
      '  First rated output: 1000 W',
      '  Emitter over room, arithmetic mean: (flow + return) / 2 - room: 50 K',
      '    Flow: 75 °C',
      '    Return: 65 °C',
      '    Room: 20 °C',
      '  Second rated output: 500 W',
      '  Emitter over room, arithmetic mean: (flow + return) / 2 - room: 25 K',
      '    Flow: 50 °C',
      '    Return: 40 °C',
      '    Room: 20 °C',
    ])
  })

  it('may be 2 (a quarter at half the excess), and goes by the logarithmic mean unless told', () => {
    const second = { ratedW: 250, rating: { flowC: 50, returnC: 40, roomC: 20 } }
    expect(answered(exponentFromTwoRatings({ first, second, ...arithmetic })).exponent).toBe(2)
    expect(answered(exponentFromTwoRatings({ first, second: { ...second, ratedW: 400 } })).mean).toBe(
      'logarithmic',
    )
  })

  it.each([
    [
      { ratedW: 500, rating: { flowC: 75, returnC: 66.9, roomC: 20 } },
      'impossible',
      'second.rating',
      'The two ratings must be at least 1 K apart, such as 75/65/20 and 55/45/20.',
    ],
    [
      { ratedW: 0, rating: warm },
      'invalid',
      'second.ratedW',
      'The rated output must be more than 0 W; it was 0.',
    ],
    [
      // ln(1000 / 100) / ln(50 / 30) = 2.302585 / 0.510826 = 4.51.
      { ratedW: 100, rating: warm },
      'impossible',
      'second.ratedW',
      "The two ratings make an exponent of 4.51; an emitter's lies between 1 and 2. Check that both are of the same emitter.",
    ],
    [
      // ln(1000 / 800) / ln(50 / 30) = 0.223144 / 0.510826 = 0.44.
      { ratedW: 800, rating: warm },
      'impossible',
      'second.ratedW',
      "The two ratings make an exponent of 0.44; an emitter's lies between 1 and 2. Check that both are of the same emitter.",
    ],
    [
      { ratedW: Number.MIN_VALUE, rating: warm },
      'impossible',
      'second.ratedW',
      "The two ratings make an exponent; an emitter's lies between 1 and 2. Check that both are of the same emitter.",
    ],
  ])('is refused for a second rating of %j', (second, code, path, message) => {
    const large = message.includes('exponent;') ? { ...first, ratedW: 1e308 } : first
    expect(refused(exponentFromTwoRatings({ first: large, second, ...arithmetic }))).toEqual({
      code,
      path,
      message,
    })
  })

  it('takes ratings just 1 K apart, and says which rating is out of order', () => {
    // 50 K and 49 K: 980 W of 1000 W is n = 1.
    const second = { ratedW: 980, rating: { flowC: 74, returnC: 64, roomC: 20 } }
    expect(answered(exponentFromTwoRatings({ first, second, ...arithmetic })).exponent).toBeCloseTo(1, 9)
    const odd = { ratedW: 900, rating: { flowC: 40, returnC: 50, roomC: 20 } }
    expect(refused(exponentFromTwoRatings({ first: odd, second })).path).toBe('first.rating.flowC')
    expect(refused(exponentFromTwoRatings({ first: { ...first, ratedW: -1 }, second }))).toEqual({
      code: 'invalid',
      path: 'first.ratedW',
      message: 'The rated output must be more than 0 W; it was -1.',
    })
  })
})
