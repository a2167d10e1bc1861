import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import type { Outcome } from '../../src-main/domain/outcome.ts'
import type { Desk } from '../../src-main/desk/desk.ts'
import { seedCatalogue } from '../../src-main/store/catalogue.ts'
import { addEvent, keepIssued } from '../../src-main/store/quotes.ts'
import type { QuoteSnapshot } from '../../src-main/store/quotes.ts'
import { closeStore, openStore, writing } from '../../src-main/store/store.ts'
import type { Store, StoreOptions } from '../../src-main/store/store.ts'
import { smallCatalogue } from './catalogue-for-tests.ts'

export const now = () => '2026-03-02T09:00:00.000Z'

/** A folder of its own, gone when the test is over. */
export async function tempFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'tailpiece-test-'))
  onTestFinished(() => rm(folder, { recursive: true, force: true }))
  return folder
}

/** What an outcome holds; a refusal fails the test with its sentences. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join(' '))
  return outcome.value
}

/** Opens a store that is closed when the test is over. */
export async function opened(folder: string, options: Partial<StoreOptions> = {}): Promise<Store> {
  const store = valueOf(await openStore({ folder, now, ...options }))
  onTestFinished(() => closeStore(store))
  return store
}

/** A store in a new folder, with the small catalogue in it. */
export async function filledStore(): Promise<Store> {
  const store = await opened(await tempFolder())
  await writing(store, (tx) => seedCatalogue(tx, smallCatalogue, 'test-1'))
  return store
}

export function deskWith(store: Store | null, changes: Partial<Desk> = {}): Desk {
  return {
    today: '2026-03-02',
    now,
    store,
    dataFolder: store?.folder ?? null,
    papersFolder: tmpdir(),
    mayChoosePath: false,
    ...changes,
  }
}

/** Issues a quote by hand, under a name and on a day, with a few bytes for its PDF; gives its name back. */
export async function issueByHand(
  store: Store,
  snapshot: QuoteSnapshot,
  { quoteId = 'Q-2026-0001', issuedOn = '2026-03-02' } = {},
): Promise<string> {
  const head = { number: quoteId, revision: 0, issuedOn, validUntil: '2026-04-01', program: 'a test' }
  const { job, quote } = snapshot
  await writing(store, async (tx) => {
    await keepIssued(tx, {
      ...head,
      quoteId,
      jobId: job.jobId,
      title: job.title,
      customerName: job.customer.name,
      grossPence: quote.totals.grossPence,
      snapshot,
      pdf: Buffer.from('%PDF-1.7 for a test'),
      pages: 1,
    })
    await addEvent(tx, quoteId, { kind: 'issued', onDay: issuedOn, at: now() })
  })
  return quoteId
}
