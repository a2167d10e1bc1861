import { z } from 'zod'
import { derivation } from '../derivation.ts'
import { count, day, key, line, list, note, pence, record } from '../schema.ts'

/**
 * How a firm numbers its quotes: its own letters, `{year}` or `{yy}` at most once, and once `{n}`, `{nn}` … up to eight, as many
 * digits as the number has at least. `Q-{year}-{nnnn}` gives Q-2026-0001.
 */
export const numberPattern = z
  .string()
  .max(40)
  .regex(/^(?:[A-Za-z0-9]|\{n{1,8}\}|\{year\}|\{yy\})(?:[A-Za-z0-9._-]|\{n{1,8}\}|\{year\}|\{yy\})*$/)
  .refine((text) => (text.match(/\{n/g) ?? []).length === 1 && (text.match(/\{y/g) ?? []).length <= 1)

/** What can happen to a quote. */
export const quoteEventKind = z.enum(['issued', 'sent', 'accepted', 'declined', 'withdrawn', 'replaced'])
export type QuoteEventKind = z.infer<typeof quoteEventKind>

/** How a quote stands: the last that happened to it, or lapsed where its day is past and nobody accepted it. */
export const quoteState = z.enum([
  'issued',
  'sent',
  'accepted',
  'declined',
  'withdrawn',
  'replaced',
  'lapsed',
])
export type QuoteState = z.infer<typeof quoteState>

export const quoteEvent = record({
  kind: quoteEventKind,
  onDay: day,
  at: z.string(),
  reason: note.optional(),
  /** What had changed since it was issued, in pence with tax, when it was accepted. */
  driftPence: pence.optional(),
})
export type QuoteEvent = z.infer<typeof quoteEvent>

/** One issued quote in a list. */
export const issuedQuoteRow = record({
  quoteId: key,
  /** What all its revisions share. */
  number: line,
  revision: count,
  jobId: key,
  title: line,
  customerName: line,
  issuedOn: day,
  validUntil: day,
  grossPence: pence,
  state: quoteState,
  /** The day of the last event; the day after its last valid one when it lapsed. */
  since: day,
})
export type IssuedQuoteRow = z.infer<typeof issuedQuoteRow>

/** One line of two quotes side by side; null where one of them has it not. */
export const lineChange = record({
  name: line,
  section: line,
  was: record({ name: line, quantity: z.number(), unit: line, netPence: pence }).nullable(),
  is: record({ name: line, quantity: z.number(), unit: line, netPence: pence }).nullable(),
  changePence: pence,
  says: z.string(),
})
export type LineChange = z.infer<typeof lineChange>

/** What one quote says that another does not, before tax by line and with tax in all. */
export const quoteComparison = record({
  lines: list(lineChange),
  wasGrossPence: pence,
  isGrossPence: pence,
  wasNetPence: pence,
  isNetPence: pence,
  changeNetPence: pence,
  changeGrossPence: pence,
  why: derivation,
})
export type QuoteComparison = z.infer<typeof quoteComparison>
