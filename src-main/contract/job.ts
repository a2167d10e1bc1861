import { z } from 'zod'
import { figureOverrides } from '../domain/figures.ts'
import { firm } from '../domain/firm.ts'
import { afterJob } from '../domain/follow-up/after-job.ts'
import { quoteEvent } from '../domain/follow-up/quote-life.ts'
import { job, jobStage } from '../domain/job.ts'
import { count, day, key, line, list, pence, record } from '../domain/schema.ts'
import { command, query } from './request.ts'
import { filePhoto, mostFilePhotos } from './survey.ts'

const jobRow = record({
  jobId: key,
  title: line,
  customerName: line,
  place: z.string(),
  createdOn: day,
  savedAt: z.iso.datetime(),
  rooms: z.int(),
  swaps: z.int(),
  stage: jobStage,
  archived: z.boolean(),
})

export const jobList = query('job.list', {
  doc: 'The jobs in the data folder, the last saved first.',
  needs: 'data',
  input: record({}),
  output: record({ jobs: list(jobRow, 100_000) }),
})

export const jobRead = query('job.read', {
  doc: 'One job, whole.',
  needs: 'data',
  input: record({ jobId: key }),
  output: record({ job }),
})

export const jobSave = command('job.save', {
  doc: 'Keeps a job as it stands, new or changed.',
  needs: 'data',
  input: record({ job }),
  output: record({ jobId: key, savedAt: z.iso.datetime() }),
})

export const jobRemove = command('job.remove', {
  doc: 'Removes a job for good.',
  needs: 'data',
  input: record({ jobId: key }),
  output: record({ jobId: key }),
})

export const jobSummary = query('job.summary', {
  doc: 'What one job comes to with tax, how many gaps are open in its parts list, and the next thing to do.',
  needs: 'data',
  input: record({ jobId: key }),
  output: record({
    /** Null while there is nothing to price, or while it cannot be priced. */
    grossPence: pence.nullable(),
    gaps: count,
    /** Null when there is nothing left to do. */
    next: z.string().nullable(),
  }),
})

export const jobMark = command('job.mark', {
  doc: 'Says how far a job has come, and puts it away or takes it out again; what is not named stays.',
  needs: 'data',
  input: record({ jobId: key, stage: jobStage.optional(), archived: z.boolean().optional() }),
  output: record({ jobId: key, stage: jobStage, archived: z.boolean() }),
})

export const jobCopy = command('job.copy', {
  doc: 'Begins a new job with the survey of another: its title marked as a copy, not quoted yet.',
  needs: 'data',
  input: record({ jobId: key }),
  output: record({ jobId: key, title: line }),
})

const roomFound = record({ jobId: key, roomId: key, name: line, jobTitle: line, customerName: line })
const swapFound = record({ jobId: key, swapId: key, roomName: line, emitterName: z.string(), jobTitle: line })

export const jobFind = query('job.find', {
  doc: 'Jobs, rooms and swaps that have every word, in any order: by title, customer, place, room and emitter.',
  needs: 'data',
  input: record({ text: z.string().max(200), most: z.int().gte(1).lte(50).optional() }),
  output: record({ jobs: list(jobRow), rooms: list(roomFound), swaps: list(swapFound) }),
})

/** An issued quote in a job file: all that was frozen, and all that happened to it since. */
export const fileQuote = record({
  quoteId: key,
  number: line,
  revision: count,
  issuedOn: day,
  validUntil: day,
  grossPence: pence,
  /** The version of the program that worked it out. */
  program: line,
  /** Job, prices, figures and answer as they were then. */
  snapshot: z.record(z.string(), z.unknown()),
  /** The PDF as it went out, with the SHA-256 of its bytes in hexadecimal; null for a quote that was kept before PDFs were. */
  pdf: record({ base64: z.string(), sha256: z.string(), pages: z.int().gte(1).lte(1000) }).nullable(),
  events: list(quoteEvent, 1000, 1),
  /** What was noted after its job, where anything was. */
  afterJob: record({ body: afterJob, closedOn: day.nullable() }).optional(),
})
export type FileQuote = z.infer<typeof fileQuote>

const mostFileQuotes = 1000

export const jobImport = command('job.import', {
  doc: 'Takes in a job file, with its photos and issued quotes where they are in it: all or nothing. A job with the same id is refused unless `replace` says so; a quote whose number is taken is left out, and named.',
  needs: 'data',
  input: record({
    job,
    photos: list(filePhoto, mostFilePhotos).optional(),
    quotes: list(fileQuote, mostFileQuotes).optional(),
    replace: z.boolean().optional(),
  }),
  /** How many photos and quotes were taken in, where the file had any, and which quotes were not. */
  output: record({
    jobId: key,
    replaced: z.boolean(),
    photos: count.optional(),
    quotes: count.optional(),
    /** A sentence for each quote that was not taken in, or that is here already with another history. */
    leftOut: list(z.string(), mostFileQuotes).optional(),
  }),
})

export const jobExport = query('job.export', {
  doc: 'A job as its open file, with the firm it is from; with its photos and its issued quotes where they are asked for, up to the 20 MB that a job file may have.',
  needs: 'data',
  input: record({
    jobId: key,
    photos: z.boolean().optional(),
    /** Only the photos of these rooms. */
    photosOf: list(key, 200).optional(),
    /** With its issued quotes, what happened to them and what was noted after the job. */
    quotes: z.boolean().optional(),
  }),
  output: record({
    job,
    photos: list(filePhoto, mostFilePhotos).optional(),
    quotes: list(fileQuote, mostFileQuotes).optional(),
  }),
})

export const jobSample = query('job.sample', {
  doc: 'A sample job, plainly invented: a bathroom and a bedroom.',
  input: record({}),
  output: record({ job }),
})

export const firmRead = query('firm.read', {
  doc: "The firm's own details, if they were given.",
  needs: 'data',
  input: record({}),
  output: record({ firm: firm.nullable() }),
})

export const firmSave = command('firm.save', {
  doc: "Keeps the firm's own details.",
  needs: 'data',
  input: record({ firm }),
  output: record({ firm }),
})

const ownFigure = record({
  id: key,
  says: line,
  unit: line,
  least: z.number(),
  most: z.number(),
  /** What stands when the firm has none of its own. */
  usual: z.number(),
  source: line,
  /** The firm's own; null where it goes by the usual one. */
  own: z.number().nullable(),
})

export const figuresOwn = query('figures.own', {
  doc: "Every figure as it stands today: the usual one with its source, and the firm's own where it has one.",
  needs: 'data',
  input: record({}),
  output: record({ on: day, figures: list(ownFigure) }),
})

export const figuresSave = command('figures.save', {
  doc: "Keeps the firm's own figures, all or none; null goes back to the usual one.",
  needs: 'data',
  input: record({ figures: z.record(key, z.number().nullable()) }),
  output: record({ own: figureOverrides }),
})

export const jobSchema = query('job.schema', {
  doc: 'The JSON Schema of a job file, for other programs.',
  input: record({}),
  output: record({ schema: z.record(z.string(), z.unknown()) }),
})
