import { z } from 'zod'
import { fixing, taskMinutes } from '../domain/figures.ts'
import { item } from '../domain/item.ts'
import { job } from '../domain/job.ts'
import { supplier, supplierPrice } from '../domain/price.ts'
import { pickList, quote } from '../domain/quote.ts'
import { day, key, list, record } from '../domain/schema.ts'
import { fromJson, readRow } from './read-row.ts'
import type { ReadTx, WriteTx } from './tables.ts'

const figuresInForce = record({
  settings: z.record(
    z.string(),
    record({ says: z.string(), value: z.number(), unit: z.string(), source: z.string() }),
  ),
  tasks: z.record(z.string(), taskMinutes),
  fixings: list(fixing),
})

/** All that went into a quote and all that came out, so that no later price, figure or program changes it. */
const snapshot = record({
  job,
  catalogue: record({
    items: list(item, 1_000_000),
    suppliers: list(supplier),
    prices: list(supplierPrice, 1_000_000),
    /** What the firm would rather have, as it was then. */
    favourites: list(key, 1_000_000).optional(),
  }),
  figures: figuresInForce,
  quote,
  /** The pick list as it was; absent when it was not worked out. */
  pickList: pickList.optional(),
})
export type QuoteSnapshot = z.infer<typeof snapshot>

const keptQuote = record({ quoteId: key, jobId: key, keptOn: day })
export type KeptQuote = z.infer<typeof keptQuote> & { readonly snapshot: QuoteSnapshot }

/** Keeps a quote for good, under the next number of its year (`Q-2026-0007`), which it gives back. */
export async function keepQuote(tx: WriteTx, keptOn: string, kept: QuoteSnapshot): Promise<string> {
  const quoteId = await nextNumber(tx, keptOn.slice(0, 4))
  await tx
    .insertInto('kept_quote')
    .values({ quote_id: quoteId, job_id: kept.job.jobId, kept_on: keptOn, snapshot: JSON.stringify(kept) })
    .execute()
  return quoteId
}

/** A kept quote, whole; null when there is none of that number. */
export async function readKeptQuote(tx: ReadTx, quoteId: string): Promise<KeptQuote | null> {
  const row = await tx.selectFrom('kept_quote').selectAll().where('quote_id', '=', quoteId).executeTakeFirst()
  if (row === undefined) return null
  const what = `The quote ${quoteId}`
  const whose = readRow(keptQuote, { quoteId, jobId: row.job_id, keptOn: row.kept_on }, what)
  return { ...whose, snapshot: readRow(snapshot, fromJson(row.snapshot, what), what) }
}

async function nextNumber(tx: ReadTx, year: string): Promise<string> {
  const start = `Q-${year}-`
  const rows = await tx
    .selectFrom('kept_quote')
    .select('quote_id')
    .where('quote_id', 'like', `${start}%`)
    .execute()
  const last = Math.max(0, ...rows.map(({ quote_id }) => Number(quote_id.slice(start.length))))
  return `${start}${String(last + 1).padStart(4, '0')}`
}
