import { problemsOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { useOpenJob } from '../../draft/use-draft.ts'

/** What the desk says of the house's flow temperature, for the job as it stood when typing stopped. */
export function useHouse() {
  const { settled } = useOpenJob()
  const ready = settled.rooms.length > 0
  const asked = useAsk('job.flow', { job: settled }, { keepOld: true, enabled: ready })
  return { ready, answer: asked.data ?? null, problems: problemsOf(asked.error), asking: asked.isFetching }
}
