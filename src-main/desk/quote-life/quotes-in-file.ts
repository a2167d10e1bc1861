import { isDeepStrictEqual } from 'node:util'
import type { FileQuote } from '../../contract/job.ts'
import { problemsIn } from '../../contract/sentences.ts'
import type { Job } from '../../domain/job.ts'
import { accept, refuse, under } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { numberIn, revisionId, seriesOf, usualNumberPattern } from '../../engine/quote/life/quote-number.ts'
import { mayHappen } from '../../engine/quote/life/quote-state.ts'
import { readAfterJob, saveAfterJob } from '../../store/after-jobs.ts'
import {
  addEvent,
  bearerOf,
  checkedSnapshot,
  eventsOf,
  hashOf,
  issuedIdsOf,
  keepIssued,
  readIssuedPdf,
  readIssuedToTheLetter,
  seriesReaches,
} from '../../store/quotes.ts'
import type { QuoteSnapshot } from '../../store/quotes.ts'
import type { ReadTx, WriteTx } from '../../store/tables.ts'

/** The issued quotes of a job as its file carries them, the first issued first. */
export async function quotesOfJob(tx: ReadTx, jobId: string): Promise<readonly FileQuote[]> {
  const quotes: FileQuote[] = []
  for (const quoteId of await issuedIdsOf(tx, jobId)) {
    const quote = await fileQuoteOf(tx, quoteId)
    if (quote !== null) quotes.push(quote)
  }
  return quotes
}

async function fileQuoteOf(tx: ReadTx, quoteId: string): Promise<FileQuote | null> {
  const kept = await readIssuedToTheLetter(tx, quoteId)
  if (kept === null) return null
  const { jobId: _job, title: _title, customerName: _customer, ...frozen } = kept
  const pdf = await readIssuedPdf(tx, quoteId)
  const after = await readAfterJob(tx, quoteId)
  return {
    ...frozen,
    pdf:
      pdf === null
        ? null
        : { base64: Buffer.from(pdf.bytes).toString('base64'), sha256: pdf.hash, pages: pdf.pages },
    events: await eventsOf(tx, quoteId),
    ...(after === null ? {} : { afterJob: { body: after.afterJob, closedOn: after.closedOn } }),
  }
}

/** A quote of a file, looked through. */
export type SoundQuote = {
  readonly given: FileQuote
  readonly snapshot: QuoteSnapshot
  readonly pdf: Uint8Array | null
}
type Ground = { readonly job: Job; readonly today: string }

/** The quotes of a job file, if each one is whole, is of the job, and can have happened as it says; otherwise all that is wrong. */
export function quotesInFile(given: readonly FileQuote[], ground: Ground): Outcome<readonly SoundQuote[]> {
  const seen = new Set<string>()
  const sound: SoundQuote[] = []
  const problems: Problem[] = []
  for (const [at, quote] of given.entries()) {
    const one = under(`quotes[${at}]`, seen.has(quote.quoteId) ? twice(quote) : soundQuote(quote, ground))
    seen.add(quote.quoteId)
    if (one.ok) sound.push(one.value)
    else problems.push(...one.problems)
  }
  return problems.length === 0 ? accept(sound) : { ok: false, problems }
}

function twice({ quoteId }: FileQuote): Outcome<never> {
  return refuse('invalid', `The quote ${quoteId} is in the file twice: it should be there once.`, 'quoteId')
}

function soundQuote(given: FileQuote, ground: Ground): Outcome<SoundQuote> {
  const snapshot = soundSnapshot(given, ground)
  const pdf = soundPdf(given)
  const parts = [soundName(given), snapshot, pdf, soundEvents(given, ground), soundAfter(given, ground)]
  if (snapshot.ok && pdf.ok && parts.every(({ ok }) => ok))
    return accept({ given, snapshot: snapshot.value, pdf: pdf.value })
  return { ok: false, problems: parts.flatMap((part) => (part.ok ? [] : part.problems)) }
}

function soundName({ quoteId, number, revision, issuedOn, validUntil }: FileQuote): Outcome<true> {
  const name = revisionId(number, revision)
  if (quoteId !== name) {
    const message = `Revision ${revision} of the number ${number} is called ${name}, not ${quoteId}.`
    return refuse('invalid', message, 'quoteId')
  }
  if (validUntil >= issuedOn) return accept(true)
  const message = `A quote of ${issuedOn} can’t be valid until ${validUntil}; give that day or a later one.`
  return refuse('invalid', message, 'validUntil')
}

function soundSnapshot({ snapshot, grossPence }: FileQuote, { job }: Ground): Outcome<QuoteSnapshot> {
  const checked = checkedSnapshot(snapshot)
  if (!checked.success) return under('snapshot', { ok: false, problems: problemsIn(checked.error, snapshot) })
  const { jobId } = checked.data.job
  if (jobId !== job.jobId) {
    const message = `This is a quote for the job ${jobId}, and the file’s job is ${job.jobId}: a quote goes with its own job.`
    const next = 'Take the file in as it was written, or its job without the quotes.'
    return refuse('invalid', message, 'snapshot.job.jobId', next)
  }
  const { grossPence: worked } = checked.data.quote.totals
  if (worked === grossPence) return accept(checked.data)
  return refuse('invalid', `The quote itself comes to ${worked} pence, not ${grossPence}.`, 'grossPence')
}

const base64Text = /^[A-Za-z0-9+/]*={0,2}$/

function soundPdf({ pdf }: FileQuote): Outcome<Uint8Array | null> {
  if (pdf === null) return accept(null)
  const { base64, sha256 } = pdf
  const path = 'pdf.base64'
  if (base64.length % 4 !== 0 || !base64Text.test(base64))
    return refuse('invalid', 'The PDF is not written in base64: letters, figures, + and / in fours.', path)
  const bytes = Buffer.from(base64, 'base64')
  if (bytes.subarray(0, 5).toString('latin1') !== '%PDF-')
    return refuse('invalid', 'These bytes are no PDF: one begins with %PDF-.', path)
  const has = hashOf(bytes)
  if (has === sha256) return accept(bytes)
  const message = `The PDF has changed since it was issued: its SHA-256 is ${has}, and the file says ${sha256}.`
  return refuse('invalid', message, path)
}

/** Whether all of it can have happened: its issue on its day, and each thing after what was before it. */
function soundEvents({ events, issuedOn, validUntil }: FileQuote, { today }: Ground): Outcome<true> {
  for (const [at, event] of events.entries()) {
    const path = `events[${at}]`
    const { kind, onDay, reason } = event
    if ((kind === 'issued') !== (at === 0)) {
      const message =
        at === 0
          ? `What happens to a quote begins with its issue, not with “${kind}”.`
          : 'A quote is issued once; what comes after that is something else.'
      return refuse('invalid', message, `${path}.kind`)
    }
    const may =
      kind === 'issued'
        ? soundIssue({ onDay, issuedOn, today })
        : mayHappen({ events: events.slice(0, at), validUntil }, { kind, onDay, reason }, today)
    if (!may.ok) return under(path, may)
  }
  return accept(true)
}

type Issue = { readonly onDay: string; readonly issuedOn: string; readonly today: string }

function soundIssue({ onDay, issuedOn, today }: Issue): Outcome<true> {
  if (onDay !== issuedOn)
    return refuse('invalid', `The quote is of ${issuedOn}, so it was not issued on ${onDay}.`, 'onDay')
  if (onDay <= today) return accept(true)
  return refuse('invalid', `${onDay} is still to come; give a day up to today.`, 'onDay')
}

function soundAfter({ quoteId, events, afterJob }: FileQuote, { today }: Ground): Outcome<true> {
  if (afterJob === undefined) return accept(true)
  if (!events.some(({ kind }) => kind === 'accepted')) {
    const message = `${quoteId} was never accepted, so there is no job to note anything of.`
    return refuse('conflict', message, 'afterJob')
  }
  const { closedOn } = afterJob
  if (closedOn === null || closedOn <= today) return accept(true)
  return refuse('invalid', `${closedOn} is still to come; give a day up to today.`, 'afterJob.closedOn')
}

/** How many quotes were taken in, and a sentence for each that was not. */
export type QuotesTaken = { readonly quotes: number; readonly leftOut: readonly string[] }

/** Takes in what this data file does not have yet. What stands already stays as it is. */
export async function takeInQuotes(
  tx: WriteTx,
  sound: readonly SoundQuote[],
  savedAt: string,
): Promise<QuotesTaken> {
  // All are looked up before the first is written: revisions share their number.
  const looked: { readonly quote: SoundQuote; readonly here: Here }[] = []
  for (const quote of sound) looked.push({ quote, here: await whatIsHere(tx, quote.given) })
  const fresh = looked.filter(({ here }) => here === 'nothing').map(({ quote }) => quote)
  for (const quote of fresh) await takeIn(tx, quote, savedAt)
  const leftOut = looked.flatMap(({ here }) => (typeof here === 'string' ? [] : [here.says]))
  return { quotes: fresh.length, leftOut }
}

type Here = 'nothing' | 'the same' | { readonly says: string }

async function whatIsHere(tx: ReadTx, given: FileQuote): Promise<Here> {
  const { quoteId, number } = given
  const bearer = await bearerOf(tx, [number, quoteId])
  if (bearer === null) return 'nothing'
  const { events, afterJob, ...frozen } = given
  const kept = await fileQuoteOf(tx, quoteId)
  if (kept !== null) {
    const { events: keptEvents, afterJob: keptAfter, ...keptFrozen } = kept
    if (isDeepStrictEqual(frozen, keptFrozen))
      return isDeepStrictEqual([events, afterJob], [keptEvents, keptAfter])
        ? 'the same'
        : { says: `${quoteId} is here already; what happened to it stays as it is noted here.` }
  }
  const named = bearer === quoteId ? `another quote called ${quoteId}` : `${bearer}, of the number ${number}`
  return { says: `${quoteId} was left out: this data file has ${named}, already.` }
}

async function takeIn(tx: WriteTx, { given, snapshot, pdf }: SoundQuote, savedAt: string): Promise<void> {
  const { events, afterJob, pdf: inFile, ...head } = given
  const { job } = snapshot
  const { quoteId, number, issuedOn } = head
  const printed = pdf === null || inFile === null ? { pdf: null, pages: null } : { pdf, pages: inFile.pages }
  await keepIssued(tx, {
    ...head,
    ...printed,
    jobId: job.jobId,
    title: job.title,
    customerName: job.customer.name,
    // To the letter as it came, so that it goes out again as it was.
    snapshot: given.snapshot as QuoteSnapshot,
  })
  for (const event of events) await addEvent(tx, quoteId, event)
  if (afterJob !== undefined)
    await saveAfterJob(tx, quoteId, { afterJob: afterJob.body, savedAt, closedOn: afterJob.closedOn })
  const series = seriesOf(job.firm?.quoteNumbers ?? usualNumberPattern, issuedOn)
  const nth = nthIn(series, number)
  if (nth !== null) await seriesReaches(tx, series, nth)
}

/** Which number of a series this is; null when it is none of it. */
export function nthIn(series: string, number: string): number | null {
  const [before = '', after = ''] = series.split(/\{n+\}/)
  if (!number.startsWith(before) || !number.endsWith(after)) return null
  const digits = number.slice(before.length, number.length - after.length)
  const nth = /^\d{1,15}$/.test(digits) ? Number(digits) : 0
  return nth > 0 && numberIn(series, nth) === number ? nth : null
}
