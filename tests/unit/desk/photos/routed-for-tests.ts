import type { AnswerOf, InputOf, RequestName } from '../../../../src-main/contract/requests.ts'
import type { OpenDesk } from '../../../../src-main/desk/open-desk.ts'
import { answer } from '../../../../src-main/desk/router.ts'
import { certain } from '../../../../src-main/domain/outcome.ts'
import type { Outcome } from '../../../../src-main/domain/outcome.ts'

/** An open desk that is asked through its router, as every door does. */
export type Routed = {
  readonly ask: <N extends RequestName>(name: N, input: InputOf<N>) => Promise<AnswerOf<N>>
  readonly say: (name: RequestName, input: unknown) => Promise<Outcome<unknown>>
  readonly close: () => Promise<void>
}

export function routed(opened: Outcome<OpenDesk>): Routed {
  const open = certain(opened)
  const say = (name: RequestName, input: unknown) => answer(name, input, open.desk())
  return {
    say,
    ask: async <N extends RequestName>(name: N, input: InputOf<N>) =>
      certain(await say(name, input)) as AnswerOf<N>,
    close: open.close,
  }
}
