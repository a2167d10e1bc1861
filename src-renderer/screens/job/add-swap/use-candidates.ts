import { useDebouncedValue } from '@mantine/hooks'
import type { InputOf } from '../../../../src-main/contract/requests.ts'
import type { Job, Swap } from '../../../../src-main/domain/job.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { choiceInput } from './choice-input.ts'
import type { NewPlace } from './choice-input.ts'

/** Where the emitter is to hang: a swap of the job, or one that is not in it yet. */
export type Place = Swap | NewPlace

/** How many can be shown with all that they cost. */
export const mostShown = 100

/** The catalogue's emitters for this place that match what was typed: ranked by what they cost fitted, and what is wrong with the rest. */
export function useCandidates(
  job: Job,
  place: Place,
  { text, most }: { readonly text: string; readonly most: number },
) {
  const [sought] = useDebouncedValue(text, 250)
  const shown = Math.min(most, mostShown)
  const input: InputOf<'emitter.choose'> = {
    ...choiceInput(job, place),
    text: sought,
    most: shown,
    mostTold: most,
  }
  const found = useAsk('emitter.choose', input, { keepOld: true })
  /** Whether what was found is for what stands in the box now. */
  return { found, current: sought === text && !found.isPlaceholderData && !found.isFetching }
}
