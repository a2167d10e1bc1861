import { useHotkeys } from '@mantine/hooks'
import type { HotkeyItem } from '@mantine/hooks'
import { useEffect, useMemo, useReducer, useState } from 'react'
import { problemsOf } from '../bridge/call.ts'
import { changeDraft, startDraft } from '../draft/draft.ts'
import type { Draft } from '../draft/draft.ts'
import type { OpenJob } from '../draft/use-draft.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Problem } from '../../src-main/domain/outcome.ts'
import { useAutosave } from './use-autosave.ts'
import { useLiveQuote } from './use-live-quote.ts'

const settleMs = 600

const inBoxesToo: string[] = []

function stepKeys(change: OpenJob['change']): HotkeyItem[] {
  return [
    ['mod+Z', () => change({ kind: 'undo' })],
    ['mod+shift+Z', () => change({ kind: 'redo' })],
    ['mod+Y', () => change({ kind: 'redo' })],
  ]
}

/** An open job: its draft, its autosave, and what the desk says of it. */
export function useJobDraft(loaded: Job, today: string): OpenJob {
  const [draft, change] = useReducer(changeDraft, loaded, startDraft)
  const settled = useSettled(draft)
  const saved = useAutosave(draft.now, settled)
  const keys = useMemo(() => stepKeys(change), [change])
  useHotkeys(keys, inBoxesToo)
  const live = useLiveQuote(draft.now, settled, today)
  const refusals = saved.kind === 'refused' ? saved.problems : none
  const problems = useMemo(() => each([...refusals, ...problemsOf(live.error)]), [refusals, live.error])
  return {
    job: draft.now,
    settled,
    change,
    saved,
    canUndo: draft.past.length > 0,
    canRedo: draft.future.length > 0,
    problems,
    quote: live.quote,
    standing: live.standing,
    quoting: live.quoting,
    today,
  }
}

/** The job once typing has stopped for a moment; at once where nothing is being typed. */
function useSettled({ now, typing }: Draft): Job {
  const [settled, setSettled] = useState(now)
  useEffect(() => {
    if (typing === null) {
      setSettled(now)
      return undefined
    }
    const later = setTimeout(() => setSettled(now), settleMs)
    return () => clearTimeout(later)
  }, [now, typing])
  return settled
}

const none: readonly Problem[] = []

/** Two requests may say the same of one field: once is enough. */
function each(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Map(problems.map((problem) => [`${problem.path} ${problem.message}`, problem]))
  return [...seen.values()]
}
