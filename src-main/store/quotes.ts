import { createHash } from 'node:crypto'
import { sql } from 'kysely'
import { z } from 'zod'
import { fixing, taskMinutes } from '../domain/figures.ts'
import { item } from '../domain/item.ts'
import { job } from '../domain/job.ts'
import { supplier, supplierPrice } from '../domain/price.ts'
import { pickList, quote } from '../domain/quote.ts'
import { quoteEvent } from '../domain/follow-up/quote-life.ts'
import type { IssuedQuoteRow, QuoteEvent } from '../domain/follow-up/quote-life.ts'
import { key, list, record } from '../domain/schema.ts'
import { fromJson, fieldsOf, readRow } from './read-row.ts'
import { unreadableRow } from './sqlite/troubles.ts'
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

/** An issued quote without its state, which depends on the day it is asked. */
export type IssuedHead = Omit<IssuedQuoteRow, 'state' | 'since'>

export type IssuedQuote = IssuedHead & {
  readonly snapshot: QuoteSnapshot
  /** The version of the program that worked it out. */
  readonly program: string
}

const headColumns = [
  'quote_id as quoteId',
  'number',
  'revision',
  'job_id as jobId',
  'title',
  'customer_name as customerName',
  'issued_on as issuedOn',
  'valid_until as validUntil',
  'gross_pence as grossPence',
] as const

/** The number that is next in a series, were it given now. A number that stands already, by another pattern, is passed over. */
export async function nextInSeries(
  tx: ReadTx,
  series: string,
  numberOf: (nth: number) => string,
): Promise<number> {
  const row = await tx
    .selectFrom('number_series')
    .select('last')
    .where('series', '=', series)
    .executeTakeFirst()
  let nth = (row?.last ?? 0) + 1
  while (await numberStands(tx, numberOf(nth))) nth += 1
  return nth
}

async function numberStands(tx: ReadTx, number: string): Promise<boolean> {
  const found = await tx
    .selectFrom('issued_quote')
    .select('quote_id')
    .where((where) => where.or([where('number', '=', number), where('quote_id', '=', number)]))
    .executeTakeFirst()
  return found !== undefined
}

/** Notes that a series has come to `nth`. */
export async function takeNumber(tx: WriteTx, series: string, nth: number): Promise<void> {
  await tx
    .insertInto('number_series')
    .values({ series, last: nth })
    .onConflict((conflict) => conflict.column('series').doUpdateSet({ last: nth }))
    .execute()
}

/** Notes that a series has come to `nth` at least; one that is further on stays where it is. */
export async function seriesReaches(tx: WriteTx, series: string, nth: number): Promise<void> {
  const row = await tx
    .selectFrom('number_series')
    .select('last')
    .where('series', '=', series)
    .executeTakeFirst()
  if ((row?.last ?? 0) < nth) await takeNumber(tx, series, nth)
}

/** The bytes of the PDF; none for a quote that was kept before PDFs were. */
type Printed =
  { readonly pdf: Uint8Array; readonly pages: number } | { readonly pdf: null; readonly pages: null }
type Frozen = IssuedQuote & Printed

/** Keeps a quote for good: what went in, what came out, and the bytes of its PDF with their hash. */
export async function keepIssued(tx: WriteTx, frozen: Frozen): Promise<void> {
  await tx
    .insertInto('issued_quote')
    .values({
      quote_id: frozen.quoteId,
      number: frozen.number,
      revision: frozen.revision,
      job_id: frozen.jobId,
      title: frozen.title,
      customer_name: frozen.customerName,
      issued_on: frozen.issuedOn,
      valid_until: frozen.validUntil,
      gross_pence: frozen.grossPence,
      program: frozen.program,
      snapshot: JSON.stringify(frozen.snapshot),
      pdf: frozen.pdf,
      pdf_hash: frozen.pdf === null ? null : hashOf(frozen.pdf),
      pages: frozen.pages,
    })
    .execute()
}

/** SHA-256 of some bytes, in hexadecimal. */
export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}

/** An issued quote, whole; null when there is none of that name. */
export async function readIssued(tx: ReadTx, quoteId: string): Promise<IssuedQuote | null> {
  const row = await tx
    .selectFrom('issued_quote')
    .select([...headColumns, 'program', 'snapshot'])
    .where('quote_id', '=', quoteId)
    .executeTakeFirst()
  if (row === undefined) return null
  const what = `The quote ${quoteId}`
  return { ...row, snapshot: readRow(snapshot, fromJson(row.snapshot, what), what) }
}

/** What a file gives as a snapshot, checked as every kept one is. */
export function checkedSnapshot(value: unknown): ReturnType<typeof snapshot.safeParse> {
  return snapshot.safeParse(value)
}

/** An issued quote whose snapshot is, to the letter, what was kept; null when there is none of that name. */
export async function readIssuedToTheLetter(
  tx: ReadTx,
  quoteId: string,
): Promise<(IssuedHead & { readonly program: string; readonly snapshot: Record<string, unknown> }) | null> {
  const row = await tx
    .selectFrom('issued_quote')
    .select([...headColumns, 'program', 'snapshot'])
    .where('quote_id', '=', quoteId)
    .executeTakeFirst()
  return row === undefined ? null : { ...row, snapshot: fieldsOf(row.snapshot, `The quote ${quoteId}`) }
}

/** The issued quotes of a job by name, in the order in which they were issued. */
export async function issuedIdsOf(tx: ReadTx, jobId: string): Promise<readonly string[]> {
  const rows = await tx
    .selectFrom('issued_quote')
    .select('quote_id')
    .where('job_id', '=', jobId)
    .orderBy(sql`rowid`)
    .execute()
  return rows.map(({ quote_id }) => quote_id)
}

/** Which issued quote bears one of these as its name or its number; null when none does. */
export async function bearerOf(tx: ReadTx, names: readonly string[]): Promise<string | null> {
  const row = await tx
    .selectFrom('issued_quote')
    .select('quote_id')
    .where((where) => where.or([where('number', 'in', names), where('quote_id', 'in', names)]))
    .orderBy(sql`rowid`)
    .executeTakeFirst()
  return row?.quote_id ?? null
}

/** The PDF of an issued quote as it went out. Null for one that was kept before PDFs were; damage is an error. */
export async function readIssuedPdf(
  tx: ReadTx,
  quoteId: string,
): Promise<{ readonly bytes: Uint8Array; readonly pages: number; readonly hash: string } | null> {
  const row = await tx
    .selectFrom('issued_quote')
    .select(['pdf', 'pdf_hash', 'pages'])
    .where('quote_id', '=', quoteId)
    .executeTakeFirst()
  if (row === undefined || row.pdf === null || row.pdf_hash === null || row.pages === null) return null
  if (hashOf(row.pdf) !== row.pdf_hash)
    throw unreadableRow(`The PDF of the quote ${quoteId}`, 'it has changed since it was issued')
  return { bytes: row.pdf, pages: row.pages, hash: row.pdf_hash }
}

/** Issued quotes in short with what happened to them, the newest first; those of one job where one is named. */
export async function listIssued(
  tx: ReadTx,
  jobId?: string,
): Promise<readonly (IssuedHead & { readonly events: readonly QuoteEvent[] })[]> {
  const heads = await tx
    .selectFrom('issued_quote')
    .select(headColumns)
    .$if(jobId !== undefined, (query) => query.where('job_id', '=', jobId ?? ''))
    .orderBy('issued_on', 'desc')
    .orderBy(sql`issued_quote.rowid`, 'desc')
    .execute()
  const events = await tx
    .selectFrom('quote_event')
    .innerJoin('issued_quote', 'issued_quote.quote_id', 'quote_event.quote_id')
    .select(['quote_event.quote_id as quoteId', 'kind', 'on_day', 'at', 'reason', 'body'])
    .$if(jobId !== undefined, (query) => query.where('issued_quote.job_id', '=', jobId ?? ''))
    .orderBy('event_no')
    .execute()
  const byQuote = Map.groupBy(events, ({ quoteId }) => quoteId)
  return heads.map((head) => ({ ...head, events: (byQuote.get(head.quoteId) ?? []).map(eventOf) }))
}

/** What happened to a quote, in order. */
export async function eventsOf(tx: ReadTx, quoteId: string): Promise<readonly QuoteEvent[]> {
  const rows = await tx
    .selectFrom('quote_event')
    .select(['quote_id as quoteId', 'kind', 'on_day', 'at', 'reason', 'body'])
    .where('quote_id', '=', quoteId)
    .orderBy('event_no')
    .execute()
  return rows.map(eventOf)
}

/** Writes down what happened to a quote. */
export async function addEvent(tx: WriteTx, quoteId: string, event: QuoteEvent): Promise<void> {
  const { kind, onDay, at, reason, ...body } = event
  await tx
    .insertInto('quote_event')
    .values({
      quote_id: quoteId,
      kind,
      on_day: onDay,
      at,
      reason: reason ?? null,
      body: Object.keys(body).length === 0 ? null : JSON.stringify(body),
    })
    .execute()
}

type EventRow = {
  readonly quoteId: string
  readonly kind: string
  readonly on_day: string
  readonly at: string
  readonly reason: string | null
  readonly body: string | null
}

function eventOf({ quoteId, kind, on_day, at, reason, body }: EventRow): QuoteEvent {
  const what = `What happened to the quote ${quoteId}`
  const more = body === null ? {} : fieldsOf(body, what)
  return readRow(
    quoteEvent,
    { kind, onDay: on_day, at, ...(reason === null ? {} : { reason }), ...more },
    what,
  )
}

/** The newest revision of a number; null when the number was never given. */
export async function newestRevision(tx: ReadTx, number: string): Promise<IssuedHead | null> {
  const row = await tx
    .selectFrom('issued_quote')
    .select(headColumns)
    .where('number', '=', number)
    .orderBy('revision', 'desc')
    .limit(1)
    .executeTakeFirst()
  return row ?? null
}
