import { z } from 'zod'
import { job } from '../domain/job.ts'
import {
  issuedQuoteRow,
  numberPattern,
  quoteComparison,
  quoteEvent,
  quoteEventKind,
  quoteState,
} from '../domain/follow-up/quote-life.ts'
import { count, day, key, line, list, note, optionalLine, pence, record } from '../domain/schema.ts'
import { command, query } from './request.ts'

export const quoteIssue = command('quote.issue', {
  doc: 'Gives a quote its number and freezes it: job, prices, answer and the bytes of its PDF. With `revises`, as the next revision.',
  needs: 'data',
  input: record({
    job,
    /** The newest revision of the quote that this one takes the place of. */
    revises: key.optional(),
    reason: note.optional(),
  }),
  output: record({
    quoteId: key,
    number: line,
    revision: count,
    issuedOn: day,
    validUntil: day,
    grossPence: pence,
    /** SHA-256 of the PDF, in hexadecimal. */
    pdfHash: z.string(),
  }),
})

export const quoteList = query('quote.list', {
  doc: 'Issued quotes with how they stand today, the newest first; those of one job where one is named.',
  needs: 'data',
  input: record({ jobId: key.optional(), state: quoteState.optional() }),
  output: record({ quotes: list(issuedQuoteRow, 100_000) }),
})

export const quoteRead = query('quote.read', {
  doc: 'One issued quote: how it stands, all that happened to it, and the job as it was then.',
  needs: 'data',
  input: record({ quoteId: key }),
  output: record({
    quote: issuedQuoteRow,
    events: list(quoteEvent),
    job,
    program: z.string(),
    /** SHA-256 of the PDF; null for a quote that was kept before PDFs were. */
    pdfHash: z.string().nullable(),
  }),
})

export const quoteMark = command('quote.mark', {
  doc: 'Writes down what happened to an issued quote: sent, accepted, declined or withdrawn, on a day and with a reason.',
  needs: 'data',
  input: record({
    quoteId: key,
    kind: quoteEventKind.exclude(['issued', 'replaced']),
    onDay: day.optional(),
    reason: note.optional(),
  }),
  output: record({ quote: issuedQuoteRow }),
})

export const quoteCompare = query('quote.compare', {
  doc: 'What a later quote says that an earlier one does not, line by line: with another issued quote, or with a job as it stands.',
  needs: 'data',
  input: z.union([record({ quoteId: key, with: key }), record({ quoteId: key, job })]),
  output: quoteComparison,
})

const driftLine = record({
  name: line,
  wasCostPence: pence.nullable(),
  isCostPence: pence.nullable(),
  changePence: pence,
  says: z.string(),
})

export const quoteDrift = query('quote.drift', {
  doc: 'What an issued quote would cost and come to with today’s prices, figures and catalogue, line by line.',
  needs: 'data',
  input: record({ quoteId: key }),
  output: record({
    /** What the firm pays for parts. */
    cost: list(driftLine),
    changeCostPence: pence,
    /** What the customer would pay. */
    price: quoteComparison,
    says: z.string(),
    /** What can no longer be bought or made at all; the rest is then not comparable. */
    cannot: list(optionalLine),
  }),
})

/** `out` names a file at the terminal; elsewhere it goes to the papers folder. */
const fileOf = { quoteId: key, out: line.max(1000).optional() }

export const quoteMail = command('quote.mail', {
  doc: 'A mail draft for the customer with the issued PDF attached: a file to open in a mail program, to change and to send.',
  needs: 'data',
  input: record({
    ...fileOf,
    /** To whom, where that is not the customer’s own address. */
    to: line.optional(),
  }),
  output: record({
    path: z.string(),
    bytes: z.int(),
    to: z.string(),
    subject: z.string(),
    /** SHA-256 of the attached PDF: that of the quote as it was issued. */
    pdfHash: z.string(),
  }),
})

export const quoteXml = command('quote.xml', {
  doc: 'An issued quote as XML by the OASIS standard UBL 2.1 (Quotation), with what the customer’s paper shows.',
  needs: 'data',
  input: record(fileOf),
  output: record({ path: z.string(), bytes: z.int() }),
})

export const quoteNextNumber = query('quote.nextNumber', {
  doc: 'The number that the next new quote would get today: by the firm’s own pattern, or by another that is tried.',
  needs: 'data',
  input: record({ quoteNumbers: numberPattern.optional() }),
  output: record({ number: z.string() }),
})
