import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { hangingCrew, liftLimit } from '../../../../src-main/engine/labour/crew-lift.ts'
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

describe('the reason of a lift', () => {
  it('names the place of the hands, what one lifts there, and its figures', () => {
    expect(liftLimit(20, {}, use).why).toEqual(
      because('Hands between elbow and knuckle: up to 25 kg for one.', 1, {
        from: [
          given('Mass, dry', 20, 'kg'),
          use.why('lift.onePersonKg'),
          use.why('lift.elbowToKnuckleKg'),
          use.why('lift.elbowToKnuckleKg'),
        ],
      }),
    )
  })

  it('names stairs, the height of the hands and the share of a pair, each where it counts', () => {
    const hold = { handsMm: 1200, stairs: true, far: true }
    // 25 x 10/25 x 0.8 = 8 kg.
    expect(liftLimit(9, hold, use).why).toEqual(
      because('Hands between shoulder and elbow: up to 8 kg for one.', 2, {
        from: [
          given('Mass, dry', 9, 'kg'),
          use.why('lift.onePersonKg'),
          use.why('lift.shoulderToElbowFarKg'),
          use.why('lift.elbowToKnuckleKg'),
          given('Height of the hands', 1200, 'mm'),
          use.why('lift.stairsRatio'),
          use.why('lift.pairRatio'),
        ],
      }),
    )
  })

  it('gives kilograms to a tenth: 17 x 20/25 = 13.6', () => {
    const small = liftUse({ 'lift.onePersonKg': 17 })
    expect(liftLimit(1, { handsMm: 450 }, small).why.says).toBe(
      'Hands between knuckle and lower leg: up to 13.6 kg for one.',
    )
  })

  it.each([
    [1401, 'above the shoulder'],
    [1400, 'between shoulder and elbow'],
    [1051, 'between shoulder and elbow'],
    [1050, 'between elbow and knuckle'],
    [750, 'between elbow and knuckle'],
    [749, 'between knuckle and lower leg'],
    [250, 'between knuckle and lower leg'],
    [249, 'below the middle of the lower leg'],
  ])('puts hands at %i mm %s, by heights of 1400, 1050, 750 and 250 mm', (handsMm, where) => {
    const heights = liftUse({
      'lift.shoulderMm': 1400,
      'lift.elbowMm': 1050,
      'lift.knuckleMm': 750,
      'lift.shinMm': 250,
    })
    expect(liftLimit(1, { handsMm }, heights).why.says).toContain(`Hands ${where}: up to`)
  })

  it('wants an aid only over what two lift: half each makes 25 kg for two', () => {
    const halves = liftUse({ 'lift.pairRatio': 0.5 })
    expect(liftLimit(25, {}, halves).needsAid).toBe(false)
    expect(liftLimit(25.1, {}, halves).needsAid).toBe(true)
  })
})

describe('who hangs an emitter', () => {
  it('is one, where carrying and hanging are both within the guideline', () => {
    const crew = hangingCrew({ emitterMassKg: 20, storey: 0, handsMm: 900 }, use)
    expect(crew).toEqual({
      people: 1,
      whys: [liftLimit(20, { handsMm: 900 }, use).why, liftLimit(20, {}, use).why],
    })
  })

  it('is two, where only the stairs ask for it, up or down', () => {
    expect(hangingCrew({ emitterMassKg: 21, storey: 0 }, use).people).toBe(1)
    expect(hangingCrew({ emitterMassKg: 21, storey: 1 }, use).people).toBe(2)
    expect(hangingCrew({ emitterMassKg: 21, storey: -1 }, use).people).toBe(2)
  })

  it('is two, where only the hanging asks for it: above the shoulder, or with arms stretched out', () => {
    expect(hangingCrew({ emitterMassKg: 12, storey: 0, handsMm: 1700 }, use).people).toBe(2)
    expect(hangingCrew({ emitterMassKg: 16, storey: 0, tightAccess: true }, use).people).toBe(2)
  })
})
