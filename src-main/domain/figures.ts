import { z } from 'zod'
import { day, key, line, list, record, sizeMm } from './schema.ts'
import { specShapes } from './item.ts'
import { wallBuild, wallFinish } from './wall.ts'
import { given } from './derivation.ts'
import type { Derivation } from './derivation.ts'

/** A number the rules use, with its unit, its range and its dated values, each with a source. */
export const setting = record({
  id: key,
  says: line,
  unit: line,
  least: z.number(),
  most: z.number(),
  values: list(record({ from: day, value: z.number(), source: line }), 50, 1),
})
export type Setting = z.infer<typeof setting>

/** Three-point minutes of one labour task, per unit of its count. */
export const taskMinutes = record({
  taskId: key,
  name: line,
  optimisticMin: z.number().gte(0).lte(10_000),
  likelyMin: z.number().gte(0).lte(10_000),
  pessimisticMin: z.number().gte(0).lte(10_000),
  source: line,
})
export type TaskMinutes = z.infer<typeof taskMinutes>

/** A way of fixing to a wall: what goes in, which hole it wants, and what one fixing may carry there. */
export const fixing = record({
  fixingId: key,
  name: line,
  builds: list(wallBuild, 5, 1),
  finishes: list(wallFinish, 4).optional(),
  /** True when it must be driven into a stud. */
  intoStud: z.boolean().optional(),
  holeMm: sizeMm,
  depthMm: sizeMm,
  plug: record({ bitMm: specShapes.plug.bitMm, lengthMm: specShapes.plug.lengthMm }).optional(),
  anchor: record({ bitMm: specShapes.anchor.bitMm }).optional(),
  screw: record({ diameterMm: specShapes.screw.diameterMm, lengthMm: specShapes.screw.lengthMm }).optional(),
  allowedShearN: specShapes.anchor.allowedShearN,
  allowedPullN: specShapes.anchor.allowedPullN,
  source: line,
})
export type Fixing = z.infer<typeof fixing>

/** A firm's own values in place of the defaults, by setting id. */
export const figureOverrides = z.record(key, z.number()).readonly()
export type FigureOverrides = z.infer<typeof figureOverrides>

/** A setting's value on one day, ready for use. */
export type FigureInForce = {
  readonly says: string
  readonly value: number
  readonly unit: string
  readonly source: string
}

/** Every parameter the engine may use, as it stands on the day of the job. */
export type Figures = {
  readonly settings: Readonly<Record<string, FigureInForce>>
  readonly tasks: Readonly<Record<string, TaskMinutes>>
  readonly fixings: readonly Fixing[]
}

/** The value of a setting. A setting that is not there is our mistake, so it throws. */
export function figure(figures: Figures, id: string): number {
  return figureInForce(figures, id).value
}

/** The same, as a reason with its source. */
export function figureWhy(figures: Figures, id: string): Derivation {
  const { says, value, unit, source } = figureInForce(figures, id)
  return given(says, value, unit, source)
}

function figureInForce(figures: Figures, id: string): FigureInForce {
  const found = figures.settings[id]
  if (found === undefined) throw new Error(`There is no setting called ${id}`)
  return found
}
