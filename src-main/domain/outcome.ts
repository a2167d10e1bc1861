/** Why a request was refused. The list is closed: a new reason is a change to the contract. */
export type ProblemCode =
  'invalid' | 'impossible' | 'gap' | 'conflict' | 'not-found' | 'stale' | 'refused' | 'io' | 'internal'

/**
 * One thing that is wrong, in a sentence that says what was wrong and what would be right.
 * `path` names the field (`room.elements[2].areaM2`); `next` says what the person can do.
 */
export type Problem = {
  readonly code: ProblemCode
  readonly message: string
  readonly path?: string
  readonly next?: string
}

/** An answer, or the reasons why there is none. Plain data, so that it crosses to the window whole. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] }

export function accept<T>(value: T): Outcome<T> {
  return { ok: true, value }
}

export function refuse<T = never>(
  code: ProblemCode,
  message: string,
  path?: string,
  next?: string,
): Outcome<T> {
  const problem: Problem = {
    code,
    message,
    ...(path === undefined ? {} : { path }),
    ...(next === undefined ? {} : { next }),
  }
  return { ok: false, problems: [problem] }
}

/** The value of what cannot be refused here; a refusal is then our own mistake, so it throws. */
export function certain<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new Error(outcome.problems.map((problem) => problem.message).join(' '))
}

/** The same problems, each path put under `prefix` (`room` + `elements[0]` = `room.elements[0]`). */
export function under<T>(prefix: string, outcome: Outcome<T>): Outcome<T> {
  if (outcome.ok) return outcome
  const problems = outcome.problems.map((problem) => ({
    ...problem,
    path:
      problem.path === undefined
        ? prefix
        : `${prefix}${problem.path.startsWith('[') ? '' : '.'}${problem.path}`,
  }))
  return { ok: false, problems }
}

/** Marks the end of a closed union: reaching it is our mistake, so it throws. */
export function assertNever(value: never): never {
  throw new Error(`A case is missing for ${JSON.stringify(value)}`)
}
