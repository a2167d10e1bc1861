import { z } from 'zod'
import { figureOverrides, fixing } from '../domain/figures.ts'
import { day, key, line, list, record } from '../domain/schema.ts'
import { query } from './request.ts'

/** A figure as it stands on one day. */
const inForce = record({ says: line, value: z.number(), unit: line, source: line })

export const wallFigures = query('wall.figures', {
  doc: 'The figures by which an emitter is placed and set out on a wall, as they stand for a job on a day.',
  input: record({ on: day.optional(), figures: figureOverrides.optional() }),
  output: record({ settings: z.record(key, inForce).readonly(), fixings: list(fixing) }),
})
