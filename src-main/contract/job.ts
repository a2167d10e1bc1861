import { z } from 'zod'
import { firm } from '../domain/firm.ts'
import { job } from '../domain/job.ts'
import { day, key, line, list, record } from '../domain/schema.ts'
import { command, query } from './request.ts'

const jobRow = record({
  jobId: key,
  title: line,
  customerName: line,
  place: z.string(),
  createdOn: day,
  savedAt: z.iso.datetime(),
  rooms: z.int(),
  swaps: z.int(),
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

export const jobImport = command('job.import', {
  doc: 'Takes in a job file. A job with the same id is refused unless `replace` says so.',
  needs: 'data',
  input: record({ job, replace: z.boolean().optional() }),
  output: record({ jobId: key, replaced: z.boolean() }),
})

export const jobExport = query('job.export', {
  doc: 'A job as its open file, with the firm it is from.',
  needs: 'data',
  input: record({ jobId: key }),
  output: record({ job }),
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

export const jobSchema = query('job.schema', {
  doc: 'The JSON Schema of a job file, for other programs.',
  input: record({}),
  output: record({ schema: z.record(z.string(), z.unknown()) }),
})
