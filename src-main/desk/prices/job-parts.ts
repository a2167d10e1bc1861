import type { Catalogue } from '../../domain/catalogue.ts'
import type { Job } from '../../domain/job.ts'
import type { Purchase } from '../../domain/quote.ts'
import { jobFacts } from '../../engine/takeoff/job-facts.ts'
import { takeOff } from '../../engine/takeoff/take-off.ts'
import type { Desk } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'
import { prepareFrom } from '../quoting/work-up.ts'

/** What a job would buy at a catalogue's prices; null when it can't be worked up, as half a survey can't. */
export async function partsBought(
  job: Job,
  catalogue: Catalogue,
  desk: Desk,
): Promise<readonly Purchase[] | null> {
  const figures = await figuresInForce(desk, desk.today, job.figures)
  if (!figures.ok) return null
  const prepared = prepareFrom({ job, quotedOn: desk.today, figures: figures.value, catalogue })
  if (!prepared.ok) return null
  const { placed, shelf } = prepared.value
  return takeOff(jobFacts(job, placed, figures.value), shelf, figures.value).purchases
}

/** What all of it costs, before tax. */
export function costOf(purchases: readonly Purchase[]): number {
  return purchases.reduce((sum, { costPence }) => sum + costPence, 0)
}
