import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { daysOnSite } from '../../../../src-main/engine/labour/days-on-site.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const day = (hoursPerDay: number) => ({ hoursPerDay, why: given('Working hours', hoursPerDay, 'h') })
const days = (p50SiteMin: number, p80SiteMin: number, travelMin = 30) =>
  answered(daysOnSite({ p50SiteMin, p80SiteMin, travelMin }, day(7)))

describe('days on site', () => {
  it('are whole days: seven hours fill one, a minute more begins the next', () => {
    expect(days(420, 421)).toMatchObject({ p50Days: 1, p80Days: 2, dayMin: 420 })
  })

  it('take a hair over a whole day as that day', () => {
    expect(days(420, 420 * (1 + 1e-12)).p80Days).toBe(1)
  })

  it('are none for no work', () => {
    expect(days(0, 0)).toMatchObject({ p50Days: 0, p80Days: 0, furtherTravelMin: 0 })
  })

  it('cost the travel again from the second on: three days of 30 minutes are 60 more', () => {
    expect(days(900, 1000).furtherTravelMin).toBe(60)
  })

  it('name the working day and the minutes', () => {
    expect(leavesOf(days(400, 500).why)).toEqual([500, 400, 7, 30])
  })

  it('give their reason', () => {
    expect(days(400, 500).why).toEqual(
      because('Days that four jobs in five stay within: time on site / a working day, up.', 2, {
        unit: 'days',
        from: [
          given('On site, four jobs in five take less', 500, 'min'),
          given('On site, even odds', 400, 'min'),
          given('Working hours', 7, 'h'),
          given('Travel of each further day', 30, 'min'),
        ],
      }),
    )
  })

  it('cost no travel again where one day does, nor where travel takes no time', () => {
    expect(days(300, 400).furtherTravelMin).toBe(0)
    expect(days(900, 1000, 0)).toMatchObject({ p80Days: 3, furtherTravelMin: 0 })
  })

  it('carry a minute over a day into the next', () => {
    expect(days(421, 840)).toMatchObject({ p50Days: 2, p80Days: 2 })
  })

  it.each([0, -7, Number.NaN, Infinity])('refuse a day of %s hours in words', (hours) => {
    const refusal = refused(daysOnSite({ p50SiteMin: 1, p80SiteMin: 2, travelMin: 0 }, day(hours)))
    expect(refusal).toEqual({
      code: 'invalid',
      message: `A working day must have more than 0 hours; it had ${hours}.`,
    })
  })

  it.each(['p50SiteMin', 'p80SiteMin', 'travelMin'])(
    'refuse %s below nothing or past all time in words',
    (name) => {
      for (const wrong of [-0.5, Infinity]) {
        const onSite = { p50SiteMin: 1, p80SiteMin: 2, travelMin: 3, [name]: wrong }
        expect(refused(daysOnSite(onSite, day(7)))).toEqual({
          code: 'invalid',
          message: `Minutes must be 0 or more; one of them was ${wrong}.`,
        })
      }
    },
  )

  it('refuse a day of no hours, and time that is no time', () => {
    const onSite = { p50SiteMin: 1, p80SiteMin: 2, travelMin: 0 }
    expect(refused(daysOnSite(onSite, day(0))).message).toContain('more than 0 hours; it had 0')
    expect(refused(daysOnSite({ ...onSite, p80SiteMin: Number.NaN }, day(7))).message).toContain('NaN')
  })
})
