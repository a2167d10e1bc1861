import type { JobStage } from '../../../src-main/domain/job.ts'
import type { JobRow } from './use-jobs.ts'

/** Which jobs are shown: those of one stage, all, or those that were put away. */
export type Shown = JobStage | 'all' | 'archived'

/** The jobs whose title, customer or place hold every word. */
export function matching(jobs: readonly JobRow[], text: string): readonly JobRow[] {
  const words = text.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean)
  return jobs.filter((job) => {
    const all = `${job.title} ${job.customerName} ${job.place}`.toLocaleLowerCase('en-GB')
    return words.every((word) => all.includes(word))
  })
}

/** The jobs of one choice. What was put away is in no other choice. */
export function ofChoice(jobs: readonly JobRow[], shown: Shown): readonly JobRow[] {
  if (shown === 'archived') return jobs.filter((job) => job.archived)
  return jobs.filter((job) => !job.archived && (shown === 'all' || job.stage === shown))
}
