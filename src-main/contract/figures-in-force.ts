import { z } from 'zod'
import { day, key, line, list, record } from '../domain/schema.ts'
import { query } from './request.ts'

export const figuresInForce = query('figures.inForce', {
  doc: "Every figure that a job of a day is worked out with, the firm's own in place of those delivered.",
  input: record({ on: day }),
  output: record({
    settings: list(
      record({
        id: key,
        says: line,
        unit: line,
        least: z.number(),
        most: z.number(),
        value: z.number(),
        source: line,
      }),
    ),
  }),
})
