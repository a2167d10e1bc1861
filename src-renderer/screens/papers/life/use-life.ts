import { useQueryClient } from '@tanstack/react-query'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { useAsk, useCommand } from '../../../bridge/use-ask.ts'
import type { JobStage } from '../../../../src-main/domain/job.ts'

/** The open job's issued quotes, and what can be done about them. */
export function useLife() {
  const { job, change } = useOpenJob()
  const queries = useQueryClient()
  const quotes = useAsk('quote.list', { jobId: job.jobId })
  const again = () =>
    Promise.all(
      ['quote.list', 'quote.read', 'job.list', 'job.summary'].map((name) =>
        queries.invalidateQueries({ queryKey: [name] }),
      ),
    )
  // The open job is saved as a whole, so it must know the stage that the desk gave it.
  const toStage = (stage: JobStage) => {
    change({ kind: 'set', path: 'stage', value: stage })
    change({ kind: 'settle' })
  }
  const issue = useCommand('quote.issue', again)
  const mark = useCommand('quote.mark', again)
  return { job, quotes, issue, mark, toStage }
}

export type Life = ReturnType<typeof useLife>
