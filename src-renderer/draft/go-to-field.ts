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
    focusWhenThere(fieldOf(path))
  }
}

const usualTries = 12

/**
 * Puts the cursor into a field. Its page may take a moment to be there: the field is looked for a few times before what stands
 * above it will do. A person who is in another box by then is left there.
 */
export function focusWhenThere(field: string, tries = usualTries, from = document.activeElement): void {
  looking += 1
  setTimeout(() => {
    looking -= 1
    const now = document.activeElement
    if (now !== from && now instanceof HTMLElement && now.matches('#main :is(input, select, textarea)'))
      return
    const here = document.getElementById(field)
    if (here !== null && !here.matches(':disabled')) focusOn(here)
    else if (tries > 0) focusWhenThere(field, tries - 1, from)
    else nearestField(field)?.focus()
  }, 50)
}

/** How many fields are looked for at this moment. */
let looking = 0

/** Puts the cursor into a field of a page that has just come, unless the person is anywhere else or was on the way to a field. */
export function focusIfNowhere(field: string): void {
  if (looking === 0 && document.activeElement === document.body) document.getElementById(field)?.focus()
}

/** As the tab key does it: what stands in a box is marked, so that typing replaces it. */
export function focusOn(field: HTMLElement): void {
  field.focus()
  if (field instanceof HTMLInputElement && field.type === 'text') field.select()
}

function nearestField(field: string): HTMLElement | null {
  const here = document.getElementById(field)
  if (here !== null || field === '') return here ?? document.getElementById('main')
  return nearestField(field.replace(/(\.[^.[\]]+|\[\d+\])$/, '').replace(/^[^.[\]]+$/, ''))
}
