import { useRef, useState } from 'react'
import type { Job } from '../../../../src-main/domain/job.ts'
import type { Problem } from '../../../../src-main/domain/outcome.ts'
import type { PickList } from '../../../../src-main/domain/quote.ts'
import { sameWork } from '../../../../src-main/engine/quote/reprice-quote.ts'
import { call, problemsOf } from '../../../bridge/call.ts'

/** What is shown straight away needs no sign that it is being worked out. */
const slowAfterMs = 500

type State = {
  readonly kind: 'idle' | 'working' | 'slow' | 'cancelled'
  readonly plan: PickList | null
  readonly forJob: Job | null
  readonly problems: readonly Problem[]
}

/** The cheapest split for the job as it stood when it was asked for. Cancelling stops waiting; an answer that comes later is dropped. */
export function useBuying(job: Job) {
  const [state, setState] = useState<State>({ kind: 'idle', plan: null, forJob: null, problems: [] })
  const asked = useRef(0)
  const ask = async () => {
    asked.current += 1
    const nth = asked.current
    const still = (set: (now: State) => State) => {
      if (asked.current === nth) setState(set)
    }
    still((now) => ({ ...now, kind: 'working', problems: [] }))
    const slow = setTimeout(() => still((now) => ({ ...now, kind: 'slow' })), slowAfterMs)
    try {
      const plan = await call('pickList.build', { job, by: 'cheapestSplit' })
      still(() => ({ kind: 'idle', plan, forJob: job, problems: [] }))
    } catch (error) {
      still((now) => ({ ...now, kind: 'idle', problems: problemsOf(error) }))
    } finally {
      clearTimeout(slow)
    }
  }
  const cancel = () => {
    asked.current += 1
    setState((now) => ({ ...now, kind: 'cancelled' }))
  }
  return {
    plan: state.plan,
    problems: state.problems,
    working: state.kind === 'working' || state.kind === 'slow',
    slow: state.kind === 'slow',
    cancelled: state.kind === 'cancelled',
    outdated: state.forJob !== null && !sameWork(state.forJob, job),
    ask: () => void ask(),
    cancel,
  }
}
