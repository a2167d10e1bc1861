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
  if (first === 'house') return `/job/${job.jobId}/house`
  if (typeof first === 'string' && priced.has(first)) return `/job/${job.jobId}/price`
  return first === 'survey' ? `${survey}/system` : survey
}

/** What is changed on the page of parts and price. */
const priced = new Set(['fills', 'waivers', 'overrides', 'options', 'pricing', 'figures'])

/** Goes to the page of a field and puts the cursor into it, or into the nearest thing above it that is there. */
export function useGoToField(job: Job): (path: string) => void {
  const [, navigate] = useLocation()
  return (path) => {
    navigate(pageOf(job, path))
    focusWhenThere(fieldOf(path), 12)
  }
}

/** A page may take a moment to be there: the field is looked for a few times before what stands above it will do. */
function focusWhenThere(field: string, tries: number): void {
  setTimeout(() => {
    const here = document.getElementById(field)
    if (here !== null) here.focus()
    else if (tries > 0) focusWhenThere(field, tries - 1)
    else nearestField(field)?.focus()
  }, 50)
}

function nearestField(field: string): HTMLElement | null {
  const here = document.getElementById(field)
  if (here !== null || field === '') return here ?? document.getElementById('main')
  return nearestField(field.replace(/(\.[^.[\]]+|\[\d+\])$/, '').replace(/^[^.[\]]+$/, ''))
}
