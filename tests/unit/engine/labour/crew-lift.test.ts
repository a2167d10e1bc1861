import { describe, expect, it } from 'vitest'
import { liftLimit } from '../../../../src-main/engine/labour/crew-lift.ts'
import { leavesOf } from '../../../answered.ts'
import { liftUse } from './lifts-for-tests.ts'

const use = liftUse()

describe('what one person should lift', () => {
  it('is 25 kg at the waist, close to the body, and 25 kg itself is still one person’s', () => {
    expect(liftLimit(25, {}, use)).toMatchObject({ oneKg: 25, people: 1, needsAid: false })
    expect(liftLimit(25.1, {}, use).people).toBe(2)
  })

  // HSE lifting filter for men: 10, 20, 25, 20 and 10 kg from above the shoulder down to below the lower leg (25 seen, the
  // other zones from memory); heights of shoulder, elbow, knuckle and shin 1400, 1050, 750, 250 mm, from memory.
  it.each([
    [1700, 10],
    [1200, 20],
    [900, 25],
    [450, 20],
    [100, 10],
  ])('with hands at %i mm is %i kg', (handsMm, kg) => {
    expect(liftLimit(5, { handsMm }, use).oneKg).toBeCloseTo(kg, 9)
  })

  // The same filter with arms stretched out: 5, 10, 15, 10, 5 kg, from memory.
  it.each([
    [1700, 5],
    [1200, 10],
    [900, 15],
    [450, 10],
    [100, 5],
  ])('with hands at %i mm and arms stretched out is %i kg', (handsMm, kg) => {
    expect(liftLimit(4, { handsMm, far: true }, use).oneKg).toBeCloseTo(kg, 9)
  })

  it('follows the firm’s own figure for the waist in every zone: 16 kg makes 12.8 below the knuckle', () => {
    const small = liftUse({ 'lift.onePersonKg': 16 })
    expect(liftLimit(14, { handsMm: 450 }, small)).toMatchObject({ oneKg: 12.8, people: 2 })
  })

  it('is less on stairs: 25 x 0.8 = 20 kg', () => {
    expect(liftLimit(22, { stairs: true }, use)).toMatchObject({ oneKg: 20, people: 2 })
  })
})

describe('what more people should lift', () => {
  it('is two thirds of the sum for two, and half of it for three', () => {
    // HSE guidance on team handling; by hand 2 x 25 x 2/3 = 33.3 and 3 x 25 / 2 = 37.5.
    const { twoKg, threeKg } = liftLimit(30, {}, use)
    expect([twoKg.toFixed(1), threeKg]).toEqual(['33.4', 37.5])
    expect(twoKg).toBeCloseTo(33.33, 1)
  })

  it('wants an aid when it is over that', () => {
    expect(liftLimit(33, {}, use)).toMatchObject({ people: 2, needsAid: false })
    expect(liftLimit(34, {}, use)).toMatchObject({ people: 2, needsAid: true })
  })
})

it('says which figures it used', () => {
  expect(leavesOf(liftLimit(22, { stairs: true, handsMm: 450 }, use).why)).toEqual(
    expect.arrayContaining([22, 25, 20, 450, 0.8, 0.667]),
  )
})
