import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useLocation } from 'wouter'
import type { AnswerOf, InputOf } from '../../../src-main/contract/requests.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import { call, Refusal } from '../../bridge/call.ts'
import { askKey, useAsk } from '../../bridge/use-ask.ts'
import { newJobId } from '../../parts/new-job-id.ts'
import { newJob } from './new-job.ts'

export type JobRow = AnswerOf<'job.list'>['jobs'][number]

/** The jobs there are, and everything that can be done with the list. */
export function useJobs() {
  const queries = useQueryClient()
  const [, navigate] = useLocation()
  const asked = useAsk('job.list', {})
  const refresh = () => queries.invalidateQueries({ queryKey: ['job.list'] })
  const opened = async (jobId: string) => {
    await refresh()
    navigate(`/job/${jobId}/survey`)
  }
  const start = useMutation({
    mutationFn: async (named: { readonly title: string; readonly customer: string }) => {
      const { today } = await call('app.about', {})
      return call('job.save', { job: newJob({ ...named, today }) })
    },
    onSuccess: ({ jobId }) => opened(jobId),
  })
  const sample = useMutation({
    mutationFn: async () => {
      const { job } = await call('job.sample', {})
      return call('job.save', { job: { ...job, jobId: newJobId() } })
    },
    onSuccess: ({ jobId }) => opened(jobId),
  })
  const remove = useMutation({
    mutationFn: (jobId: string) => call('job.remove', { jobId }),
    onSuccess: refresh,
  })
  const mark = useMutation({
    mutationFn: (marks: InputOf<'job.mark'>) => call('job.mark', marks),
    onSuccess: ({ jobId }) => {
      queries.removeQueries({ queryKey: askKey('job.read', { jobId }) })
      void queries.invalidateQueries({ queryKey: askKey('job.summary', { jobId }) })
      return refresh()
    },
  })
  const copy = useMutation({
    mutationFn: (jobId: string) => call('job.copy', { jobId }),
    onSuccess: refresh,
  })
  const bringIn = useMutation({
    mutationFn: async ({ file, replace }: { readonly file: File; readonly replace: boolean }) =>
      call('job.import', importInput(await file.text(), replace)),
    onSuccess: ({ jobId, leftOut = [] }) => {
      queries.removeQueries({ queryKey: ['job.read', { jobId }] })
      queries.removeQueries({ queryKey: ['photo.read'] })
      // What did not come along is said in the list, before anybody goes on.
      return leftOut.length === 0 ? opened(jobId) : refresh()
    },
  })
  return { asked, start, sample, remove, mark, copy, bringIn }
}

/**
 * A job file as `job.import` takes it; what is in it is for the desk to judge. A file that was written with `job.export` holds the job
 * under a name of its own, with its photos and issued quotes beside it.
 */
function importInput(text: string, replace: boolean): InputOf<'job.import'> {
  const file = parsed(text)
  const again = replace ? { replace } : {}
  if (typeof file !== 'object' || file === null || !('job' in file)) return { job: file as Job, ...again }
  return { ...(file as Pick<InputOf<'job.import'>, 'job' | 'photos' | 'quotes'>), ...again }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch {
    throw new Refusal([
      {
        code: 'invalid',
        message: 'This file is no job file: it does not hold JSON.',
        next: 'Choose a file that was written by Tailpiece or by another program to its job schema (*.job.json).',
      },
    ])
  }
}
