import type { Job } from '../../domain/job.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import type { WorkedUp } from '../quoting/work-up.ts'

type Known = Pick<WorkedUp, 'firm' | 'takeOff' | 'quote'>

/** The next thing to do for a job, in one sentence; null when it is over. `worked` is null while there is nothing to price. */
export function nextStep(job: Job, worked: Outcome<Known> | null): string | null {
  const stage = job.stage ?? 'surveying'
  if (stage === 'done' || stage === 'lost') return null
  if (job.rooms.length === 0) return 'Add a room'
  if (job.swaps.length === 0 || worked === null) return 'Add a swap'
  if (!worked.ok) return toPutRight(worked.problems)
  const missing = missingInWords(openGapLines(worked.value))
  if (missing !== null) return missing
  if (stage === 'quoted') return 'Wait for the customer’s answer'
  if (stage === 'accepted') return 'Order the parts'
  return worked.value.firm === null ? 'Give your firm’s details' : 'Make the quote'
}

/** The lines that nobody can supply yet and that were not left out on purpose. */
export function openGapLines({
  takeOff,
  quote,
}: Pick<Known, 'takeOff' | 'quote'>): readonly Pick<TakeOffLine, 'itemId'>[] {
  const open = new Set(quote.gaps.filter((gap) => gap.waived === undefined).map((gap) => gap.gapKey))
  return takeOff.lines.filter((line) => line.gap !== undefined && open.has(line.lineKey))
}

function toPutRight(problems: readonly Problem[]): string {
  if (problems.some(({ path }) => /^job\.swaps\[\d+\]\.emitterId$/.test(path ?? '')))
    return 'Choose an emitter'
  const count = problems.length
  return `Put the survey right: ${count === 1 ? 'one thing is' : `${count} things are`} wrong`
}

/** A gap with an item lacks only its price; one without is in no catalogue. */
function missingInWords(lines: readonly Pick<TakeOffLine, 'itemId'>[]): string | null {
  if (lines.length === 0) return null
  const parts = lines.length === 1 ? '1 part is' : `${lines.length} parts are`
  const unknown = lines.filter((line) => line.itemId === undefined).length
  if (unknown === 0) return `${parts} missing a price`
  if (unknown === lines.length) return `${parts} not in the catalogue`
  return `${parts} not in the catalogue, or without a price`
}
