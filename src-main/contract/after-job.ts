import { z } from 'zod'
import { actualPart, afterJob, finalAccount, learnedTask } from '../domain/follow-up/after-job.ts'
import { count, day, key, line, list, record } from '../domain/schema.ts'
import { command, query } from './request.ts'

const plannedTask = record({ taskId: key, name: line, count: z.number(), expectedMin: z.number() })

export const afterJobRead = query('afterJob.read', {
  doc: 'What was noted after the job of an accepted quote, beside what the quote reckoned with: tasks, parts, swaps.',
  needs: 'data',
  input: record({ quoteId: key }),
  output: record({
    afterJob: afterJob.nullable(),
    closedOn: day.nullable(),
    planned: record({
      tasks: list(plannedTask),
      parts: list(actualPart),
      swaps: list(record({ swapId: key, roomName: line, emitterName: line })),
    }),
  }),
})

export const afterJobSave = command('afterJob.save', {
  doc: 'Keeps what happened on the job of an accepted quote: hours, parts, variations, commissioning. Not once it is closed.',
  needs: 'data',
  input: record({ quoteId: key, afterJob }),
  output: record({ quoteId: key, account: finalAccount }),
})

export const afterJobClose = command('afterJob.close', {
  doc: 'Closes the job of an accepted quote: leftovers go back to the van, the hours teach the firm’s labour, the job is done.',
  needs: 'data',
  input: record({ quoteId: key, onDay: day.optional() }),
  output: record({ quoteId: key, closedOn: day, backToVan: count, account: finalAccount }),
})

export const afterJobAccount = query('afterJob.account', {
  doc: 'The final account of an accepted quote with its variations, and what is still to pay.',
  needs: 'data',
  input: record({ quoteId: key }),
  output: finalAccount,
})

export const labourLearned = query('labour.learned', {
  doc: 'What the firm’s own closed jobs taught about each task, and how many jobs stand behind it.',
  needs: 'data',
  input: record({}),
  output: record({ tasks: list(learnedTask) }),
})

/** The papers after a job follow an accepted quote; `out` is for the terminal. */
const paperInput = record({ quoteId: key, out: line.max(1000).optional() })
/** Where the document lies, how many pages it has, and its size in bytes. */
const paper = record({ path: z.string(), pages: z.int(), bytes: z.int() })

export const finalAccountPdf = command('finalAccount.pdf', {
  doc: 'The final account of an accepted quote as a PDF for the customer; marked as a draft until the job is closed.',
  needs: 'data',
  input: paperInput,
  output: paper,
})

export const commissioningPdf = command('commissioning.pdf', {
  doc: 'The commissioning record as a PDF to sign: cleaning, dose, pressure test, balancing, leaks and filling loop.',
  needs: 'data',
  input: paperInput,
  output: paper,
})

export const handoverPdf = command('handover.pdf', {
  doc: 'The handover sheet as a PDF for the customer: valves, venting, care, guarantees, cautions, who to ring.',
  needs: 'data',
  input: paperInput,
  output: paper,
})
