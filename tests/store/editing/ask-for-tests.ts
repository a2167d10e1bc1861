import { expect } from 'vitest'
import { requests } from '../../../src-main/contract/requests.ts'
import type { AnswerOf, InputOf, RequestName } from '../../../src-main/contract/requests.ts'
import type { Outcome } from '../../../src-main/domain/outcome.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { answered } from '../../answered.ts'

/** What the router says to a request. */
export async function outcome<N extends RequestName>(
  desk: Desk,
  name: N,
  input: InputOf<N>,
): Promise<Outcome<AnswerOf<N>>> {
  return (await answer(name, input, desk)) as Outcome<AnswerOf<N>>
}

/** The answer to a request, once it has passed the schema that the contract gives for it. */
export async function asked<N extends RequestName>(
  desk: Desk,
  name: N,
  input: InputOf<N>,
): Promise<AnswerOf<N>> {
  const value = answered(await outcome(desk, name, input))
  expect(requests[name].output.safeParse(value).error).toBeUndefined()
  return value
}
