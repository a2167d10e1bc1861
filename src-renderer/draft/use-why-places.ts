import type { Leads } from '../parts/why.tsx'
import { useGoToField } from './go-to-field.ts'
import { useOpenJob } from './use-draft.ts'
import { surveyPlace } from './survey-place.ts'

/** The ways from a reason's numbers to the survey, of these swaps first; of any where none is named. */
export function useWhyPlaces(swapIds: readonly string[]): Leads {
  const { job } = useOpenJob()
  const goTo = useGoToField(job)
  return { goTo, placeOf: (leaf) => surveyPlace(leaf, job, swapIds) }
}
