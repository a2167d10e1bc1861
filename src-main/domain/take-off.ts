import { z } from 'zod'
import { derivation } from './derivation.ts'
import { itemKind, unit, wantedSpec } from './item.ts'
import { key, line, list, record, sizeMm, count } from './schema.ts'

export const takeOffKind = z.enum([...itemKind.options, 'emitter'])
export type TakeOffKind = z.infer<typeof takeOffKind>

/** Lengths of pipe that a line is made of, for the cut list. */
export const pipePiece = record({ id: line, lengthMm: sizeMm, count: count.gte(1) })
export type PipePiece = z.infer<typeof pipePiece>

/** One line of the parts list. `gap` says why the catalogue cannot supply it. */
export const takeOffLine = record({
  lineKey: line,
  name: line,
  itemKind: takeOffKind,
  spec: wantedSpec,
  quantity: z.number().gt(0),
  unit,
  itemId: key.optional(),
  generic: z.boolean(),
  gap: z.string().optional(),
  /** What the catalogue lacked, where a person filled the gap. */
  filled: z.string().optional(),
  /** What it was before a person changed it. */
  was: record({ name: line, quantity: z.number() }).optional(),
  /** True for what the job needs once, however many swaps it has. */
  shared: z.boolean(),
  swapIds: list(key),
  pieces: list(pipePiece).optional(),
  why: derivation,
})
export type TakeOffLine = z.infer<typeof takeOffLine>

/** Something in the emitter's box that is used, so that nobody buys it. */
export const fromBoxLine = record({ name: line, itemKind, quantity: z.number().gt(0), why: derivation })

export const caution = record({ cautionId: key, says: z.string(), because: derivation })
export type Caution = z.infer<typeof caution>

export const tool = record({ toolId: key, name: line, why: derivation })
export type Tool = z.infer<typeof tool>

export const takeOff = record({
  lines: list(takeOffLine),
  fromBox: list(fromBoxLine),
  cautions: list(caution),
  tools: list(tool),
  why: derivation,
})
export type TakeOff = z.infer<typeof takeOff>
