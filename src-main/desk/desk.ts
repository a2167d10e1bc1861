import type { Store } from '../store/store.ts'
import type { AnswerOf, InputOf, RequestName } from '../contract/requests.ts'
import type { Outcome } from '../domain/outcome.ts'

/** What a use case may reach: today's date, the data file if there is one, and where documents go. */
export type Desk = {
  /** Today as YYYY-MM-DD. */
  readonly today: string
  /** This moment as an ISO date and time. */
  readonly now: () => string
  /** The open data file; null when a door was opened without a data folder. */
  readonly store: Store | null
  readonly dataFolder: string | null
  /** Where a document goes when nobody says. */
  readonly papersFolder: string
  /** Only the terminal lets the person name a file by its path. */
  readonly mayChoosePath: boolean
}

type Answer<N extends RequestName> = Outcome<AnswerOf<N>>

/** A use case: one request answered. */
export type UseCase<N extends RequestName> = (input: InputOf<N>, desk: Desk) => Answer<N> | Promise<Answer<N>>
