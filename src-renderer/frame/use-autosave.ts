import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import type { Job } from '../../src-main/domain/job.ts'
import { call, problemsOf } from '../bridge/call.ts'
import { askKey } from '../bridge/use-ask.ts'
import type { Saved } from '../draft/use-draft.ts'

/** Keeps the job in the data file whenever typing stops, one save after another, and when the job is left. */
export function useAutosave(now: Job, settled: Job): Saved {
  const queries = useQueryClient()
  const [saved, setSaved] = useState<Saved>({ kind: 'saved', at: null })
  const newest = useRef(now)
  const handled = useRef(now)
  const queue = useRef<Promise<void>>(Promise.resolve())
  newest.current = now

  const save = (job: Job) => {
    handled.current = job
    queue.current = queue.current.then(async () => {
      try {
        const { savedAt } = await call('job.save', { job })
        queries.setQueryData(askKey('job.read', { jobId: job.jobId }), { job })
        void queries.invalidateQueries({ queryKey: ['job.list'] })
        void queries.invalidateQueries({ queryKey: askKey('job.summary', { jobId: job.jobId }) })
        if (handled.current === job) setSaved({ kind: 'saved', at: savedAt })
      } catch (error) {
        if (handled.current === job) setSaved({ kind: 'refused', problems: problemsOf(error) })
      }
    })
  }
  const saver = useRef(save)
  saver.current = save

  useEffect(() => {
    if (settled !== handled.current) saver.current(settled)
  }, [settled])
  useEffect(() => {
    const leave = () => {
      if (newest.current !== handled.current) saver.current(newest.current)
    }
    window.addEventListener('pagehide', leave)
    const deaf = window.tailpiece?.on('closing', leave)
    return () => {
      window.removeEventListener('pagehide', leave)
      deaf?.()
      leave()
    }
  }, [])
  return now === handled.current ? saved : { kind: 'waiting' }
}
