import type { AnswerOf, InputOf, RequestName } from '../../src-main/contract/requests.ts'
import type { Outcome, Problem } from '../../src-main/domain/outcome.ts'

type Bridge = {
  readonly call: (name: string, input: unknown) => Promise<unknown>
  /** Hears what the shell tells the window, until the answer is called. */
  readonly on: (what: 'closing', listener: () => void) => () => void
}

declare global {
  interface Window {
    /** Put there by the desktop shell; a browser has none and asks over HTTP. */
    readonly tailpiece?: Bridge
  }
}

/** The desk said no. An error, so that whoever asks can throw it; the problems are what a person reads. */
export class Refusal extends Error {
  readonly problems: readonly Problem[]
  constructor(problems: readonly Problem[]) {
    super(problems.map((problem) => problem.message).join(' '))
    this.name = 'Refusal'
    this.problems = problems
  }
}

/** Asks the desk through whichever door this window has. */
export async function call<N extends RequestName>(name: N, input: InputOf<N>): Promise<AnswerOf<N>> {
  const outcome = await through<AnswerOf<N>>(name, input)
  if (!outcome.ok) throw new Refusal(outcome.problems)
  return outcome.value
}

/** Whether this window can show a file in its folder: only that of the desktop can. */
export function canShowPapers(): boolean {
  return window.tailpiece !== undefined
}

/** Shows a paper in its folder. The shell answers this itself; no desk is asked. */
export async function showPaper(name: string): Promise<void> {
  const outcome = await through<unknown>('window.showPaper', { name })
  if (!outcome.ok) throw new Refusal(outcome.problems)
}

async function through<T>(name: string, input: unknown): Promise<Outcome<T>> {
  try {
    const bridge = window.tailpiece
    return (bridge === undefined ? await post(name, input) : await bridge.call(name, input)) as Outcome<T>
  } catch {
    return {
      ok: false,
      problems: [
        {
          code: 'io',
          message: 'The program behind this window does not answer.',
          next: 'Start Tailpiece again; what was saved is safe.',
        },
      ],
    }
  }
}

/** A browser lets bodies up to this size go out after their page has closed: all that are under way together. */
const keptAliveBytes = 60_000
let underWayBytes = 0

async function post(name: string, input: unknown): Promise<unknown> {
  const body = JSON.stringify(input)
  const { size } = new Blob([body])
  const keepalive = underWayBytes + size < keptAliveBytes
  const counted = keepalive ? size : 0
  underWayBytes += counted
  try {
    const response = await fetch(`/call/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
      credentials: 'same-origin',
      keepalive,
    })
    return await response.json()
  } finally {
    underWayBytes -= counted
  }
}

/** What was wrong, whatever was thrown. */
export function problemsOf(error: unknown): readonly Problem[] {
  if (error instanceof Refusal) return error.problems
  if (error === null || error === undefined) return []
  return [{ code: 'internal', message: 'Something in the window went wrong.', next: 'Open the page again.' }]
}

/** The same without the names of fields, for a page on which there is no such field to go to. */
export function sentencesOf(error: unknown): readonly Problem[] {
  return problemsOf(error).map(({ path: _path, ...problem }) => problem)
}
