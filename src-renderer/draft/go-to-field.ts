import { useLocation } from 'wouter'
import type { Job } from '../../src-main/domain/job.ts'
import { stepsOf } from './path.ts'
import { fieldOf } from './use-draft.ts'

/** The page of the survey on which a field stands. */
export function pageOf(job: Job, path: string): string {
  const [first, at] = stepsOf(fieldOf(path))
  const survey = `/job/${job.jobId}/survey`
  if (first === 'rooms' && typeof at === 'number') return `${survey}/room/${job.rooms[at]?.roomId ?? ''}`
  if (first === 'swaps' && typeof at === 'number') return `${survey}/swap/${job.swaps[at]?.swapId ?? ''}`
  return first === 'survey' ? `${survey}/system` : survey
}

/** Goes to the page of a field and puts the cursor into it, or into the nearest thing above it that is there. */
export function useGoToField(job: Job): (path: string) => void {
  const [, navigate] = useLocation()
  return (path) => {
    navigate(pageOf(job, path))
    setTimeout(() => nearestField(fieldOf(path))?.focus(), 60)
  }
}

function nearestField(field: string): HTMLElement | null {
  const here = document.getElementById(field)
  if (here !== null || field === '') return here ?? document.getElementById('main')
  return nearestField(field.replace(/(\.[^.[\]]+|\[\d+\])$/, '').replace(/^[^.[\]]+$/, ''))
}
