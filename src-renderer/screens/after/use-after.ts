import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import type { AfterJob } from '../../../src-main/domain/follow-up/after-job.ts'
import type { Problem } from '../../../src-main/domain/outcome.ts'
import { call, problemsOf } from '../../bridge/call.ts'
import { askKey } from '../../bridge/use-ask.ts'

export type Planned = AnswerOf<'afterJob.read'>['planned']

/** What is noted of a job, and how it is kept. */
export type Notes = {
  readonly quoteId: string
  readonly planned: Planned
  readonly after: AfterJob
  readonly change: (part: Partial<AfterJob>) => void
  /** Closed for good: everything can be read, nothing changed. */
  readonly shut: boolean
  readonly saving: boolean
  readonly problems: readonly Problem[]
  /** Waits until all that was typed is kept; false where it was refused. */
  readonly settle: () => Promise<boolean>
}

const pauseMs = 500
const nothing: AfterJob = { tasks: [], parts: [], variations: [] }

/** Keeps what is noted whenever typing stops, one save after another, and when the page is left. */
export function useNotes(quoteId: string, read: AnswerOf<'afterJob.read'>): Notes {
  const queries = useQueryClient()
  const [after, setAfter] = useState(read.afterJob ?? nothing)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [handled, setHandled] = useState(after)
  const newest = useRef(after)
  const sent = useRef(after)
  const queue = useRef(Promise.resolve(true))
  newest.current = after

  const save = () => {
    const afterJob = newest.current
    if (sent.current === afterJob) return queue.current
    sent.current = afterJob
    queue.current = queue.current.then(async () => {
      const refusals = await kept(quoteId, afterJob)
      setProblems(refusals)
      setHandled(afterJob)
      if (refusals.length === 0) {
        queries.setQueryData(askKey('afterJob.read', { quoteId }), { ...read, afterJob })
        await queries.invalidateQueries({ queryKey: askKey('afterJob.account', { quoteId }) })
      }
      return refusals.length === 0
    })
    return queue.current
  }
  const saver = useRef(save)
  saver.current = save
  useEffect(() => {
    const later = setTimeout(() => void saver.current(), pauseMs)
    return () => clearTimeout(later)
  }, [after])
  useEffect(() => {
    const leave = () => void saver.current()
    window.addEventListener('pagehide', leave)
    const deaf = window.tailpiece?.on('closing', leave)
    return () => {
      window.removeEventListener('pagehide', leave)
      deaf?.()
      leave()
    }
  }, [])
  return {
    quoteId,
    planned: read.planned,
    after,
    change: (part) => setAfter((was) => ({ ...was, ...part })),
    shut: read.closedOn !== null,
    saving: after !== handled,
    problems,
    settle: () => saver.current(),
  }
}

async function kept(quoteId: string, afterJob: AfterJob): Promise<readonly Problem[]> {
  try {
    await call('afterJob.save', { quoteId, afterJob })
    return []
  } catch (error) {
    return problemsOf(error)
  }
}
