import { isRequestName, requests } from '../contract/requests.ts'
import type { RequestName } from '../contract/requests.ts'
import { problemsIn } from '../contract/sentences.ts'
import { refuse } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'
import type { Desk } from './desk.ts'
import { useCases } from './use-cases.ts'

/**
 * Answers one request, whichever door it came through: checks the input, asks the use case, and catches what we got
 * wrong, once.
 */
export async function answer(name: string, input: unknown, desk: Desk): Promise<Outcome<unknown>> {
  if (!isRequestName(name)) return unknownRequest(name)
  const request = requests[name]
  const parsed = request.input.safeParse(input)
  if (!parsed.success) return { ok: false, problems: problemsIn(parsed.error, input) }
  if (request.needs === 'data' && desk.store === null) {
    return refuse(
      'refused',
      `${name} needs a data folder, and none is open.`,
      undefined,
      'Name one with --data FOLDER.',
    )
  }
  try {
    return await ask(name, parsed.data, desk)
  } catch (error) {
    return await caught(name, error)
  }
}

function ask(name: RequestName, input: unknown, desk: Desk): Promise<Outcome<unknown>> | Outcome<unknown> {
  const useCase = useCases[name] as (
    input: unknown,
    desk: Desk,
  ) => Promise<Outcome<unknown>> | Outcome<unknown>
  return useCase(input, desk)
}

/** A full disk or a busy file is the world's trouble. Anything else is our own mistake: the trace goes to standard error. */
async function caught(name: string, error: unknown): Promise<Outcome<never>> {
  const { ioProblem } = await import('../store/sqlite/troubles.ts')
  const trouble = ioProblem(error)
  if (trouble !== null) return { ok: false, problems: [trouble] }
  console.error(error)
  return refuse(
    'internal',
    `Something in the program went wrong while answering ${name}. Nothing was changed.`,
  )
}

function unknownRequest(name: string): Outcome<never> {
  const near = nearestNames(name)
  return refuse('not-found', `There is no request called ${name}.`, undefined, `Nearest: ${near.join(', ')}.`)
}

/** The three request names that are the fewest letters away from what was asked. */
export function nearestNames(name: string): readonly string[] {
  return Object.keys(requests)
    .map((known) => ({ known, away: lettersAway(name.toLowerCase(), known.toLowerCase()) }))
    .toSorted((a, b) => a.away - b.away || a.known.localeCompare(b.known))
    .slice(0, 3)
    .map(({ known }) => known)
}

/** Levenshtein's distance: single letters put in, left out or changed. */
function lettersAway(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, index) => index)
  for (let i = 1; i <= from.length; i += 1) {
    const next = [i]
    for (let j = 1; j <= to.length; j += 1) {
      const change = (row[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1)
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1))
    }
    row = next
  }
  return row[to.length] ?? 0
}
