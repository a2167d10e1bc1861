import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { given } from '../../src-main/domain/derivation.ts'
import { liftLimit } from '../../src-main/engine/labour/crew-lift.ts'
import { daysOnSite } from '../../src-main/engine/labour/days-on-site.ts'
import { learnMinutes } from '../../src-main/engine/labour/learn-minutes.ts'
import type { Learning } from '../../src-main/engine/labour/learn-minutes.ts'
import { answered, nonFiniteIn } from '../answered.ts'
import { liftUse } from '../unit/engine/labour/lifts-for-tests.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true })
const prior = fc.record({ meanMin: number(0, 500), sdMin: number(0.001, 100) })
const actual = fc.record({ minutes: number(0, 2000), count: fc.integer({ min: 1, max: 50 }) })
const actuals = fc.array(actual, { maxLength: 30 })
const weight = number(0.5, 100)
const learn = (learning: Learning, count: number) =>
  answered(learnMinutes(learning, { count, why: given('Weight', count) }))

describe('learning from jobs', () => {
  it('gives the prior back while there are none', () => {
    fc.assert(
      fc.property(prior, weight, (before, k) => {
        const after = learn({ prior: before, actuals: [] }, k)
        expect(after.expectedMin).toBeCloseTo(before.meanMin, 9)
        expect(after.sdMin).toBe(before.sdMin)
      }),
    )
  })

  it('lies between the prior and what the jobs took, and holds no number that is none', () => {
    fc.assert(
      fc.property(prior, fc.array(actual, { minLength: 1, maxLength: 30 }), weight, (before, jobs, k) => {
        const after = learn({ prior: before, actuals: jobs }, k)
        const each = jobs.map(({ minutes, count }) => minutes / count)
        expect(after.expectedMin).toBeGreaterThanOrEqual(Math.min(before.meanMin, ...each) - 1e-9)
        expect(after.expectedMin).toBeLessThanOrEqual(Math.max(before.meanMin, ...each) + 1e-9)
        expect(nonFiniteIn(after)).toEqual([])
      }),
    )
  })

  it('is pulled to what many equal jobs took, and its spread dies away', () => {
    fc.assert(
      fc.property(prior, number(0, 500), weight, (before, minutes, k) => {
        const many = Array.from({ length: 2000 }, () => ({ minutes, count: 1 }))
        const after = learn({ prior: before, actuals: many }, k)
        const distance = Math.abs(before.meanMin - minutes)
        expect(Math.abs(after.expectedMin - minutes)).toBeLessThanOrEqual((distance * k) / 2000 + 1e-6)
        expect(after.sdMin).toBeLessThanOrEqual(before.sdMin * Math.sqrt(k / (k + 1998)) + 1e-6)
      }),
      { numRuns: 30 },
    )
  })

  it('is surer of the mean with each job more', () => {
    fc.assert(
      fc.property(prior, actuals, actual, weight, (before, jobs, more, k) => {
        const then = learn({ prior: before, actuals: jobs }, k)
        const now = learn({ prior: before, actuals: [...jobs, more] }, k)
        expect(now.sdOfMeanMin).toBeLessThan(then.sdOfMeanMin)
      }),
    )
  })

  it('does not mind in which order the jobs came', () => {
    fc.assert(
      fc.property(prior, actuals, weight, (before, jobs, k) => {
        const one = learn({ prior: before, actuals: jobs }, k)
        const other = learn({ prior: before, actuals: jobs.toReversed() }, k)
        expect(other.expectedMin).toBeCloseTo(one.expectedMin, 8)
        expect(other.sdMin).toBeCloseTo(one.sdMin, 6)
        expect(other.sdOfMeanMin).toBe(one.sdOfMeanMin)
      }),
    )
  })

  it('says the same after all jobs at once as after one lot and then the rest', () => {
    fc.assert(
      fc.property(prior, actuals, actuals, weight, (before, first, rest, k) => {
        const once = learn({ prior: before, actuals: [...first, ...rest] }, k)
        const half = learn({ prior: before, actuals: first }, k)
        const between = { meanMin: half.expectedMin, sdMin: before.sdMin }
        const then = learn({ prior: between, actuals: rest }, k + half.count)
        expect(then.expectedMin).toBeCloseTo(once.expectedMin, 8)
        expect(then.sdOfMeanMin).toBeCloseTo(once.sdOfMeanMin, 10)
      }),
    )
  })
})

describe('lifting', () => {
  const use = liftUse()
  it('never takes fewer people for more mass, nor for arms stretched out or stairs', () => {
    fc.assert(
      fc.property(number(0, 80), number(0, 40), number(0, 2000), (massKg, more, handsMm) => {
        const easy = liftLimit(massKg, { handsMm }, use)
        expect(liftLimit(massKg + more, { handsMm }, use).people).toBeGreaterThanOrEqual(easy.people)
        expect(liftLimit(massKg, { handsMm, far: true }, use).people).toBeGreaterThanOrEqual(easy.people)
        expect(liftLimit(massKg, { handsMm, stairs: true }, use).people).toBeGreaterThanOrEqual(easy.people)
        expect(easy.twoKg).toBeGreaterThan(easy.oneKg)
        expect(easy.threeKg).toBeGreaterThan(easy.twoKg)
      }),
    )
  })
})

describe('days', () => {
  it('hold the time and waste less than a day', () => {
    fc.assert(
      fc.property(number(0, 50_000), number(1, 16), (minutes, hoursPerDay) => {
        const onSite = { p50SiteMin: minutes, p80SiteMin: minutes, travelMin: 10 }
        const day = { hoursPerDay, why: given('Hours', hoursPerDay) }
        const { p80Days, dayMin } = answered(daysOnSite(onSite, day))
        expect(p80Days * dayMin).toBeGreaterThanOrEqual(minutes - 1e-5)
        expect((p80Days - 1) * dayMin).toBeLessThan(minutes + 1e-5)
      }),
    )
  })
})
