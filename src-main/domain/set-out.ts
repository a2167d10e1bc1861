import { z } from 'zod'
import { derivation } from './derivation.ts'
import { key, line, list, placeMm, record, sizeMm } from './schema.ts'
import { side, wallFinish } from './wall.ts'

/** The rectangle that an emitter takes on the wall with its valves, and how far it stands out. */
export const envelope = record({
  leftMm: placeMm,
  rightMm: placeMm,
  bottomMm: placeMm,
  topMm: placeMm,
  frontMm: placeMm,
})

export const clash = record({ with: line, needMm: z.number(), haveMm: z.number(), says: z.string() })

export const fit = record({ fits: z.boolean(), clashes: list(clash), envelope, why: derivation })
export type Fit = z.infer<typeof fit>

/** A hole to drill. `fromCentreMm` is negative to the left of the emitter's centre line. */
export const setOutHole = record({
  id: key,
  bracket: line,
  upper: z.boolean(),
  xMm: placeMm,
  yMm: placeMm,
  fromCentreMm: placeMm,
  drillMm: sizeMm,
  depthMm: sizeMm,
  /** What goes into this hole; when absent, the fixing of the whole set-out. */
  fixing: record({ fixingId: key, name: line, useRatio: z.number() }).optional(),
  /** What it is drilled through; when absent, the wall's own finish. */
  finish: wallFinish.optional(),
  /** From its middle to the nearest edge of the tile it is in; negative in a joint. Absent where there is no tile or no grid. */
  tileEdgeMm: z.number().optional(),
})
export type SetOutHole = z.infer<typeof setOutHole>

/** How a pipe is brought to its valve. */
export const pipeRemedy = z.enum(['none', 'longerTail', 'pull', 'repipe'])
export type PipeRemedy = z.infer<typeof pipeRemedy>

export const pipeOffset = record({
  side,
  /** New valve centre less old pipe centre, along the wall; to the right is positive. */
  offsetMm: z.number(),
  /** New valve entry less the pipe's end, in height; upward is positive. */
  riseMm: z.number(),
  /** New valve less old pipe, out from the wall; 0 where the pipe was not measured. */
  outMm: z.number(),
  remedy: pipeRemedy,
  /** What the remedy takes. */
  elbows: z.int(),
  couplers: z.int(),
  pipeMm: z.number(),
  clips: z.int(),
  /** Length of tail extension, 0 for none. */
  tailMm: z.number(),
  why: derivation,
})
export type PipeOffset = z.infer<typeof pipeOffset>

export const loadAnswer = record({
  shearN: z.number(),
  pullN: z.number(),
  shearUse: z.number(),
  pullUse: z.number(),
  holds: z.boolean(),
  why: derivation,
})
export type LoadAnswer = z.infer<typeof loadAnswer>

export const setOut = record({
  centreMm: placeMm,
  bottomMm: placeMm,
  holes: list(setOutHole),
  /** Where each valve's middle comes. */
  valves: list(record({ side, xMm: placeMm, yMm: placeMm })),
  pipeOffsets: list(pipeOffset),
  /** The fixing chosen for this wall and its load; `needsBoard` when a backing board across the studs is called for. */
  fixing: record({ fixingId: key, name: line, load: loadAnswer, needsBoard: z.boolean() }),
  warnings: list(z.string()),
  why: derivation,
})
export type SetOut = z.infer<typeof setOut>
