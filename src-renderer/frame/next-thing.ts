import type { Job } from '../../src-main/domain/job.ts'
import type { Problem } from '../../src-main/domain/outcome.ts'
import type { Quote } from '../../src-main/domain/quote.ts'
import { pageOf } from '../draft/go-to-field.ts'
import { gapId, makeId } from '../draft/place-ids.ts'
import { fieldOf } from '../draft/use-draft.ts'
import { words } from './frame.words.ts'

/** Where the work goes on from here: what it is, its page, and what gets the focus there. */
export type NextThing = { readonly says: string; readonly href: string; readonly field: string }

type Open = {
  readonly job: Job
  readonly quote: Quote | null
  readonly problems: readonly Problem[]
}

/** The next thing to do in an open job, seen from the page that is open; null where nothing is left or nothing is known yet. */
export function nextThing({ job, quote, problems }: Open, here: string): NextThing | null {
  const [wrong] = problems
  if (wrong !== undefined) {
    const path = wrong.path ?? ''
    return { says: words.next.putRight, href: pageOf(job, path), field: fieldOf(path) }
  }
  return inSurvey(job, here) ?? afterSurvey(job, quote, here)
}

/** Customer, then system, then a room, then its swap. */
function inSurvey(job: Job, here: string): NextThing | null {
  const survey = `/job/${job.jobId}/survey`
  if (job.rooms.length === 0) {
    return here === survey || here === `/job/${job.jobId}`
      ? { says: words.next.system, href: `${survey}/system`, field: 'survey.system.flowC' }
      : { says: words.next.addRoom, href: `${survey}/add-room`, field: 'new-room-name' }
  }
  const empty = job.rooms.filter(({ roomId }) => !job.swaps.some((swap) => swap.roomId === roomId))
  const room =
    empty.find(({ roomId }) => here === `${survey}/room/${roomId}`) ??
    (job.swaps.length === 0 ? empty[0] : undefined)
  if (room === undefined) return null
  return {
    says: words.next.addSwap(room.name),
    href: `${survey}/add-swap/${room.roomId}`,
    field: 'new-swap-oldName',
  }
}

/** The price, its gaps, and then the quote. */
function afterSurvey(job: Job, quote: Quote | null, here: string): NextThing | null {
  const page = `/job/${job.jobId}`
  const onPrice = here === `${page}/price`
  if (!onPrice && here !== `${page}/papers`) {
    return { says: words.next.price, href: `${page}/price`, field: 'main' }
  }
  if (quote === null) return null
  const gaps = quote.gaps.filter(({ waived }) => waived === undefined)
  const [gap] = gaps
  if (gap !== undefined) {
    return { says: words.next.gaps(gaps.length), href: `${page}/price`, field: gapId(gap.gapKey) }
  }
  return onPrice ? { says: words.next.quote, href: `${page}/papers`, field: makeId('quote.pdf') } : null
}
