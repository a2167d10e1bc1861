import { z } from 'zod'
import { job } from '../domain/job.ts'
import {
  jobLabour,
  labourAnswer,
  labourTask,
  learned,
  sharedFactor,
  taskActual,
  taskPrior,
} from '../domain/labour.ts'
import { list, record } from '../domain/schema.ts'
import { query } from './request.ts'

export const labourEstimate = query('labour.estimate', {
  doc: 'How long the tasks take: expected, and the time that four jobs in five stay under.',
  input: record({ tasks: list(labourTask, 1000, 1), sharedFactor: sharedFactor.optional() }),
  output: labourAnswer,
})

export const labourJob = query('labour.job', {
  doc: 'The labour of a job: tasks by room, what makes them longer, the crew, start to finish, days.',
  input: record({ job }),
  output: jobLabour,
})

export const labourLearn = query('labour.learn', {
  doc: 'The minutes of a task after what jobs really took, with how many jobs stand behind the figure.',
  input: record({
    prior: taskPrior,
    actuals: list(taskActual),
    /** How many tasks the prior weighs as much as; the firm's setting when absent. */
    priorWeightCount: z.number().gt(0).lte(1000).optional(),
  }),
  output: learned,
})
