import { createContext, useContext } from 'react'
import type { Job } from '../../src-main/domain/job.ts'
import type { Problem } from '../../src-main/domain/outcome.ts'
import type { Quote } from '../../src-main/domain/quote.ts'
import type { Change } from './draft.ts'

/** Whether what is on the screen is in the data file. */
export type Saved =
  | { readonly kind: 'saved'; readonly at: string | null }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }

/** What every part of an open job reaches. */
export type OpenJob = {
  readonly job: Job
  /** The job as it stood when nothing had been typed for a moment: what the desk is asked about. */
  readonly settled: Job
  readonly change: (change: Change) => void
  readonly saved: Saved
  readonly canUndo: boolean
  readonly canRedo: boolean
  readonly problems: readonly Problem[]
  readonly quote: Quote | null
  /** The last quote that there was, where what has been typed since is refused or is still being worked out. */
  readonly standing: Quote | null
  readonly quoting: boolean
  readonly today: string
}

export const OpenJobContext = createContext<OpenJob | null>(null)

export function useOpenJob(): OpenJob {
  const open = useContext(OpenJobContext)
  if (open === null) throw new Error('No job is open here')
  return open
}

/** A problem's path as a field of the job: the desk's `job.rooms[0]` is our `rooms[0]`. */
export function fieldOf(path: string | undefined): string {
  return (path ?? '').replace(/^job\.?/, '')
}

/** The sentences about one field. */
export function useProblemsAt(path: string): string | undefined {
  const { problems } = useOpenJob()
  const here = problems.filter((problem) => problem.path !== undefined && fieldOf(problem.path) === path)
  return here.length === 0 ? undefined : here.map((problem) => problem.message).join(' ')
}
