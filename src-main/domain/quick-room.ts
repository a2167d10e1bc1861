import { z } from 'zod'
import { areaM2, count, key, record, temperatureC } from './schema.ts'

/** One of the age bands of the published tables. */
const ageBand = z.enum(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J', 'K', 'L'])
const country = z.enum(['england', 'wales', 'scotland', 'northernIreland'])

export const above = z.enum(['heatedRoom', 'loft', 'flatRoof', 'otherDwelling'])
export type Above = z.infer<typeof above>
export const below = z.enum([
  'heatedRoom',
  'solidGround',
  'suspendedGround',
  'unheated',
  'outside',
  'otherDwelling',
])
export type Below = z.infer<typeof below>

const sideM = z.number().gte(0.5).lte(50)

/** What a room is asked when it is entered quickly: enough for every wall, floor and ceiling to be made from it. */
export const quickRoomEntry = record({
  lengthM: sideM,
  widthM: sideM,
  heightM: sideM,
  /** How many of the four walls are outside walls. */
  outsideWallCount: z.int().gte(0).lte(4),
  /** All outside walls together, where they were measured; the count is then not asked. */
  outsideWallM: z.number().gt(0).lte(200).optional(),
  /** The outside wall, by its name in the U-value tables. */
  wall: key,
  /** The glass, by its name in the U-value tables. */
  glazing: key,
  /** Windows of the usual size. */
  windowCount: count.lte(30),
  /** All glass with its frames, where it was measured; the windows are then not counted. */
  glazedM2: areaM2.optional(),
  outsideDoorCount: count.lte(10),
  ageBand,
  country: country.optional(),
  above,
  /** The room above, where it is not as warm as this one. */
  aboveC: temperatureC.optional(),
  /** Between the joists of the loft, where somebody saw it. */
  loftInsulationMm: z.number().gte(0).lte(2000).optional(),
  below,
  /** The room below, where it is not as warm as this one. */
  belowC: temperatureC.optional(),
  /** The rooms beside, where they are not as warm as this one. */
  besideC: temperatureC.optional(),
})
export type QuickRoomEntry = z.infer<typeof quickRoomEntry>
