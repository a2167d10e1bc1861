import { useDebouncedValue, useHotkeys } from '@mantine/hooks'
import { useMemo, useReducer } from 'react'
import { problemsOf } from '../bridge/call.ts'
import { useAsk } from '../bridge/use-ask.ts'
import { changeDraft, startDraft } from '../draft/draft.ts'
import type { OpenJob } from '../draft/use-draft.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Problem } from '../../src-main/domain/outcome.ts'
import { useAutosave } from './use-autosave.ts'

const settleMs = 600

/** An open job: its draft, its autosave, and what the desk says of it. */
export function useJobDraft(loaded: Job, today: string): OpenJob {
  const [draft, change] = useReducer(changeDraft, loaded, startDraft)
  const [settled] = useDebouncedValue(draft.now, settleMs)
  const saved = useAutosave(draft.now, settled)
  useHotkeys(
    [
      ['mod+Z', () => change({ kind: 'undo' })],
      ['mod+shift+Z', () => change({ kind: 'redo' })],
      ['mod+Y', () => change({ kind: 'redo' })],
    ],
    [],
  )
  const asked = useAsk('quote.build', { job: settled }, { keepOld: true })
  const refusals = saved.kind === 'refused' ? saved.problems : none
  const problems = useMemo(() => each([...refusals, ...problemsOf(asked.error)]), [refusals, asked.error])
  return {
    job: draft.now,
    settled,
    change,
    saved,
    canUndo: draft.past.length > 0,
    canRedo: draft.future.length > 0,
    problems,
    quote: asked.error === null ? (asked.data ?? null) : null,
    quoting: asked.isFetching || settled !== draft.now,
    today,
  }
}

const none: readonly Problem[] = []

/** Two requests may say the same of one field: once is enough. */
function each(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Map(problems.map((problem) => [`${problem.path} ${problem.message}`, problem]))
  return [...seen.values()]
}
