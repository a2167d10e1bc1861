import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Days } from '../../domain/labour.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

type OnSite = { readonly p50SiteMin: number; readonly p80SiteMin: number; readonly travelMin: number }
type WorkingDay = { readonly hoursPerDay: number; readonly why: Derivation }

/**
 * Whole days for the time on site: minutes / (60 x hours of a working day), rounded up. Each day after the first costs its
 * travel again.
 * @param onSite minutes by the clock without travel, at even odds and what four jobs in five stay under, and one day's travel
 * @param day working hours of a day on site, over 0, and why
 * Refuses a working day of no hours, and minutes that are negative or not finite.
 * @source practice, no published source
 * @example daysOnSite({ p50SiteMin: 420, p80SiteMin: 430, travelMin: 24 }, { hoursPerDay: 7, why: { says: 'x', value: 7, from: [] } }).value.p80Days // => 2
 */
export function daysOnSite(onSite: OnSite, day: WorkingDay): Outcome<Days> {
  const { p50SiteMin, p80SiteMin, travelMin } = onSite
  const dayMin = 60 * day.hoursPerDay
  if (!(Number.isFinite(dayMin) && dayMin > 0)) {
    return refuse('invalid', `A working day must have more than 0 hours; it had ${day.hoursPerDay}.`)
  }
  const wrong = [p50SiteMin, p80SiteMin, travelMin].find((one) => !(Number.isFinite(one) && one >= 0))
  if (wrong !== undefined) return refuse('invalid', `Minutes must be 0 or more; one of them was ${wrong}.`)
  const p50Days = wholeDays(p50SiteMin, dayMin)
  const p80Days = wholeDays(p80SiteMin, dayMin)
  const furtherTravelMin = Math.max(0, p80Days - 1) * travelMin
  const why = because('Days that four jobs in five stay within: time on site / a working day, up.', p80Days, {
    unit: 'days',
    from: [
      given('On site, four jobs in five take less', p80SiteMin, 'min'),
      given('On site, even odds', p50SiteMin, 'min'),
      day.why,
      given('Travel of each further day', travelMin, 'min'),
    ],
  })
  return accept({ p50SiteMin, p80SiteMin, dayMin, p50Days, p80Days, furtherTravelMin, why })
}

/** A hair over a whole day, from sums of fractions, is not another day. */
function wholeDays(minutes: number, dayMin: number): number {
  return Math.ceil(minutes / dayMin - 1e-9) + 0
}
