import type { Kysely } from 'kysely'

/** One numbered change to the data file's tables. Once landed its text never changes. */
export type Migration = {
  /** Four digits; steps run in the order of the list. */
  readonly id: string
  readonly name: string
  /** Tables whose rows this step adds, removes or moves on purpose; every other table must keep its count. */
  readonly changesRowsOf?: readonly string[]
  // A step sees the tables as they stood when it was written, which today's types no longer describe.
  readonly up: (tx: Kysely<unknown>) => Promise<void>
}

/** A migration with the hash of its text, as the data file records it. */
export type Step = Migration & { readonly hash: string }
