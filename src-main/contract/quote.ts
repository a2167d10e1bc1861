import { z } from 'zod'
import { job } from '../domain/job.ts'
import { pickList, quote } from '../domain/quote.ts'
import { key, line, record } from '../domain/schema.ts'
import { takeOff } from '../domain/take-off.ts'
import { command, query } from './request.ts'
import { inVan } from './suppliers.ts'

export const takeoffSwap = query('takeoff.swap', {
  doc: 'Every part that one swap needs, with what the job needs once marked as shared.',
  input: record({ job, swapId: key }),
  output: takeOff,
})

export const takeoffJob = query('takeoff.job', {
  doc: 'Every part that the whole job needs, shared work counted once.',
  input: record({ job }),
  output: takeOff,
})

export const quoteBuild = query('quote.build', {
  doc: 'The priced quote of a job, with what stands behind each line.',
  input: record({ job }),
  output: quote,
})

/**
 * How a pick list is made: what is in the van is taken first; each line from whoever is cheapest for it (when absent), or the
 * cheapest split with carriage, free carriage and minimum orders. The quote's cost stays as it is.
 */
const how = {
  vanStock: inVan.optional(),
  by: z.enum(['cheapestEach', 'cheapestSplit']).optional(),
}

export const pickListBuild = query('pickList.build', {
  doc: 'What goes into the van for a job, supplier by supplier, van stock first, with tools and the pipe cut list.',
  input: record({ job, ...how }),
  output: pickList,
})

const paperInput = z.union([
  record({ job, out: line.max(1000).optional() }),
  record({ quoteId: key, out: line.max(1000).optional() }),
])
/** Where the document lies, how many pages it has, and its size in bytes. */
const paper = record({ path: z.string(), pages: z.int(), bytes: z.int() })

const printed = <N extends string>(name: N, doc: string) =>
  command(name, { doc, input: paperInput, output: paper })

export const quotePdf = printed('quote.pdf', 'The quote as a PDF for the customer.')
export const pickListPdf = command('pickList.pdf', {
  doc: 'The pick list as a PDF for the van; van stock first, and split over suppliers where that is asked.',
  input: z.union([
    record({ job, out: line.max(1000).optional(), ...how }),
    record({ quoteId: key, out: line.max(1000).optional(), ...how }),
  ]),
  output: paper,
})
export const setOutPdf = printed(
  'setOut.pdf',
  'The set-out sheets as a PDF: one page a swap, where to drill.',
)

export const paperRead = query('paper.read', {
  doc: 'The bytes of a document or an export made before, by its file name.',
  input: record({
    name: z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._ -]{0,150}\.(?:pdf|csv|xlsx|xml|eml|json)$/),
  }),
  output: record({ name: z.string(), base64: z.string() }),
})
