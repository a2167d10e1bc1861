import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { Problem } from '../../../src-main/domain/outcome.ts'
import { call, Refusal } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import type { OwnFigure } from './figure-groups.ts'
import { typedFigure } from './figure-text.ts'
import { words } from './firm.words.ts'

/** What was typed, by figure; null where it goes back to the usual. */
export type TypedFigures = Readonly<Record<string, string | null>>

/** The figures, and the way to keep the firm's own. */
export function useFigures() {
  const queries = useQueryClient()
  const asked = useAsk('figures.own', {})
  const known = asked.data?.figures ?? []
  const save = useMutation({
    mutationFn: (changed: ChangedFigures) => call('figures.save', { figures: numbersOnly(changed, known) }),
    onSuccess: () =>
      // Nearly everything is worked out from figures; the open job itself is not.
      queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'job.read' }),
  })
  return { asked, save }
}

/** By figure: its new value, what was typed where that is no number, or null for the usual. */
export type ChangedFigures = Readonly<Record<string, number | string | null>>

/** The same when all of them are numbers; else a refusal that says which are not, in the words of the screen. */
export function numbersOnly(
  changed: ChangedFigures,
  known: readonly OwnFigure[],
): Readonly<Record<string, number | null>> {
  const problems = Object.entries(changed).flatMap(([id, value]): readonly Problem[] => {
    if (typeof value !== 'string') return []
    const says = known.find((figure) => figure.id === id)?.says ?? id
    return [{ code: 'invalid', message: words.figures.noNumber(says, value), path: `figures.${id}` }]
  })
  if (problems.length > 0) throw new Refusal(problems)
  return changed as Readonly<Record<string, number | null>>
}

/** What was typed as `figures.save` takes it: only what differs from what is in force. An empty box is the usual figure. */
export function changedFigures(figures: readonly OwnFigure[], typed: TypedFigures): ChangedFigures {
  return Object.fromEntries(
    figures.flatMap((figure): readonly (readonly [string, number | string | null])[] => {
      const text = typed[figure.id]
      if (text === undefined) return []
      const value = text === null ? null : (typedFigure(text, figure.unit) ?? null)
      return value === (figure.own ?? null) || (figure.own === null && value === figure.usual)
        ? []
        : [[figure.id, value]]
    }),
  )
}
