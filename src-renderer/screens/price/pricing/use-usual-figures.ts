import { useAsk } from '../../../bridge/use-ask.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'

/** The firm's figures on the day of the quote, by name; empty until they are there. */
export function useUsualFigures(): Readonly<Record<string, number>> {
  const { job, today } = useOpenJob()
  const asked = useAsk('figures.inForce', { on: job.quotedOn ?? today }, { staleMs: Infinity })
  return Object.fromEntries((asked.data?.settings ?? []).map(({ id, value }) => [id, value]))
}
