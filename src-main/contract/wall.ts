import { z } from 'zod'
import { emitterShape } from '../domain/item.ts'
import { fit, loadAnswer, setOut } from '../domain/set-out.ts'
import { distanceMm, list, massKg, placeMm, record, sizeMm } from '../domain/schema.ts'
import { centreChoice, pipe, wall } from '../domain/wall.ts'
import { query } from './request.ts'

/** The room that valves take: beside the emitter, and below it down to the pipe. Absent: the firm's figures. */
export const valveSpace = record({ sideMm: distanceMm.optional(), dropMm: distanceMm.optional() })

const placed = {
  wall,
  emitter: emitterShape,
  valves: valveSpace,
  centre: centreChoice,
  bottomMm: distanceMm,
  /** A curved rail stands out a little more. */
  curved: z.boolean().optional(),
  /** Mass of a person leaning on it; absent: the firm's figure. 0 where nobody leans. */
  extraKg: massKg.optional(),
}

export const wallFit = query('wall.fit', {
  doc: 'Whether an emitter fits a wall, and what it hits.',
  input: record({ ...placed, pipes: list(pipe, 4).optional() }),
  output: fit,
})

export const wallSetOut = query('wall.setOut', {
  doc: 'Where to drill, and how each pipe is brought to its valve.',
  input: record({
    ...placed,
    pipes: list(pipe, 4),
    /** Holes of old fixings, where they were measured. */
    oldHoles: list(record({ xMm: placeMm, yMm: placeMm, diameterMm: sizeMm.lte(100) }), 40).optional(),
  }),
  output: setOut,
})

const newtons = z.number().gt(0).lte(100_000)

export const fixingLoad = query('fixing.load', {
  doc: 'What each fixing carries, beside what it may carry.',
  input: record({
    dryKg: massKg.gt(0),
    waterLitres: z.number().gte(0).lte(500),
    extraKg: massKg,
    projectionToCentreMm: placeMm.gte(0),
    bracketRiseMm: sizeMm,
    upperFixings: z.int().gte(1).lte(100),
    allFixings: z.int().gte(1).lte(100),
    allowedShearN: newtons,
    allowedPullN: newtons,
  }),
  output: loadAnswer,
})
