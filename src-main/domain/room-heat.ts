import { z } from 'zod'
import { areaM2, heatW, line, list, ratio, record, temperatureC, volumeM3 } from './schema.ts'

/** A rating's test temperatures. Lists print 75/65/20 now; old ones 90/70/20; low-temperature ones 55/45/20. */
export const rating = record({ flowC: temperatureC, returnC: temperatureC, roomC: temperatureC })
export type Rating = z.infer<typeof rating>

/** EN 442's exponent of an emitter. */
export const exponent = z.number().gte(1).lte(2)
export const ratedW = heatW

export const boundary = z.discriminatedUnion('kind', [
  record({ kind: z.literal('outside') }),
  record({ kind: z.literal('room'), roomC: temperatureC }),
  record({ kind: z.literal('unheated'), factor: ratio }),
  record({ kind: z.literal('ground'), meanOutsideC: temperatureC }),
])
export type Boundary = z.infer<typeof boundary>

export const uWPerM2K = z.number().gt(0).lte(20)

export const opening = record({ name: line, areaM2, uWPerM2K })
export const heatElement = record({
  name: line,
  areaM2,
  uWPerM2K,
  boundary,
  openings: list(opening, 50).optional(),
})
export type HeatElement = z.infer<typeof heatElement>

const measured = {
  volumeM3,
  floorAreaM2: areaM2,
  airChangesPerHour: z.number().gte(0).lte(30),
  thermalBridgeWPerM2K: z.number().gte(0).lte(2).optional(),
  reheatWPerM2: z.number().gte(0).lte(200).optional(),
  elements: list(heatElement, 200),
}
const guessed = { volumeM3, roughWPerM3: z.number().gt(0).lte(300) }
const whose = { name: line, roomC: temperatureC, outsideC: temperatureC }

/** What a survey says of a room's heat: measured element by element, or a rough guess by volume. */
export const surveyedHeat = z.union([record(measured), record(guessed)])
export type SurveyedHeat = z.infer<typeof surveyedHeat>

/** A room as `heat.load` takes it. */
export const roomHeat = z.union([record({ ...whose, ...measured }), record({ ...whose, ...guessed })])
export type RoomHeat = z.infer<typeof roomHeat>
export type MeasuredRoomHeat = Extract<RoomHeat, { readonly elements: unknown }>
export type RoughRoomHeat = Extract<RoomHeat, { readonly roughWPerM3: number }>
