import { figure } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { daysBefore } from '../../store/day-before.ts'
import type { OnDay } from '../../store/price-list/kept-rows.ts'
import type { Desk } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

/** Today, and the day before which a price must not have begun if it is not to be stale. */
export async function staleBefore(desk: Desk): Promise<Outcome<OnDay>> {
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const days = Math.round(figure(figures.value, 'prices.staleAfterDays'))
  return accept({ day: desk.today, staleBefore: daysBefore(desk.today, days) })
}
