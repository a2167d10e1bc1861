import { labourAnswer, labourTask, sharedFactor } from '../domain/labour.ts'
import { list, record } from '../domain/schema.ts'
import { query } from './request.ts'

export const labourEstimate = query('labour.estimate', {
  doc: 'How long the tasks take: expected, and the time that four jobs in five stay under.',
  input: record({ tasks: list(labourTask, 1000, 1), sharedFactor: sharedFactor.optional() }),
  output: labourAnswer,
})
