import { capital } from '../in-words.ts'
import type { Job } from '../../domain/job.ts'
import type { QuoteLine } from '../../domain/quote.ts'

/** Lines of one rate of tax that a customer sees as one sum. */
export type Share = { readonly name: string; readonly rateKey: string; readonly lines: readonly QuoteLine[] }

const wholeJob = 'The job as a whole'

/**
 * The lines of a quote by room, in the job's order, then what rooms share, then travel, options and discounts by their own names.
 * A room whose lines bear different rates of tax has a share for each, so that each rate can be added up.
 */
export function sharesByRoom(
  lines: readonly QuoteLine[],
  { rooms, swaps }: Pick<Job, 'rooms' | 'swaps'>,
): readonly Share[] {
  const roomOf = ({ swapIds, section }: QuoteLine): string | null => {
    if (section === 'travel' || section === 'other') return null
    const ids = new Set(swapIds.map((swapId) => swaps.find((swap) => swap.swapId === swapId)?.roomId ?? null))
    const [only = null] = ids
    return ids.size === 1 ? only : null
  }
  const own = rooms.flatMap(({ roomId, name }) =>
    byRate(
      capital(name),
      lines.filter((line) => roomOf(line) === roomId),
    ),
  )
  const rest = lines.filter((line) => roomOf(line) === null)
  const named = rest.filter(({ section }) => section === 'travel' || section === 'other')
  const worked = new Set(swaps.map(({ roomId }) => roomId)).size
  return [
    ...own,
    ...byRate(
      worked > 1 ? `${wholeJob}, with materials that rooms share` : wholeJob,
      rest.filter((line) => !named.includes(line)),
    ),
    ...named.map((line) => ({ name: line.name, rateKey: line.rateKey, lines: [line] })),
  ]
}

function byRate(name: string, lines: readonly QuoteLine[]): readonly Share[] {
  return [...Map.groupBy(lines, (line) => line.rateKey)].map(([rateKey, some]) => ({
    name,
    rateKey,
    lines: some,
  }))
}
