import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { MeasuredRoomHeat, RoomHeat, RoughRoomHeat } from '../../domain/room-heat.ts'
import { btuPerHourFromW } from '../units/exact-units.ts'
import { refuseUnlessFinite } from '../units/finite.ts'
import { lossesThrough } from './element-loss.ts'
import type { ElementLoss } from './element-loss.ts'

export type HeatLoadInput = { readonly room: RoomHeat }
export type HeatLoadAnswer = {
  readonly watts: number
  readonly btuPerHour: number
  readonly transmissionW: number
  readonly ventilationW: number
  readonly reheatW: number
  /** Each element less its openings, and after it each of its openings. Together they make the transmission. */
  readonly elements: readonly { readonly name: string; readonly netAreaM2: number; readonly watts: number }[]
  readonly rough: boolean
  readonly why: Derivation
}

const airWhPerM3K = 0.34
const mostW = 1e12

/**
 * The heat a room needs, W = transmission + ventilation + reheat.
 * Transmission: what `lossesThrough` finds for each element and opening. Ventilation: 0.34 n V (room - outside).
 * Reheat: W per m2 of floor. Each may be nothing; transmission is negative where warmer neighbours give more than is lost,
 * and so may the whole be: it is not lifted to 0, because the excess is a fact about the room.
 * The rough form is V x W per m3. It is marked `rough`, is not split into parts (they are 0, and there are no elements),
 * and cannot back a claim about flow temperature.
 * Refuses openings larger than the element that holds them.
 *
 * @param input a room: temperatures in degrees Celsius, volume in m3, floor in m2, air changes 0 to 30 an hour, elements; or
 * temperatures, volume and W per m3
 * @source EN 12831-1, simplified; 0.34 Wh/(m3 K): EN 12831:2003 7.2; W per m3: practice, no published source
 * @example heatLoad({ room: { name: 'Store', roomC: 20, outsideC: -3, volumeM3: 30, roughWPerM3: 40 } }).value.watts // => 1200
 */
export function heatLoad({ room }: HeatLoadInput): Outcome<HeatLoadAnswer> {
  const wrong = refuseUnlessFinite({ room })
  if (wrong !== null) return wrong
  const load = 'roughWPerM3' in room ? accept(roughLoad(room)) : measuredLoad(room)
  if (!load.ok) return load
  if (Math.abs(load.value.watts) <= mostW) {
    return accept({ ...load.value, btuPerHour: btuPerHourFromW(load.value.watts) })
  }
  const message = 'These figures make a heat load past all sense; check the areas and temperatures.'
  return refuse('impossible', message, 'room')
}

type Load = Omit<HeatLoadAnswer, 'btuPerHour'>

function roughLoad({ volumeM3, roughWPerM3 }: RoughRoomHeat): Load {
  const watts = volumeM3 * roughWPerM3
  const why = because('A rough estimate only: volume × watts per cubic metre', watts, {
    unit: 'W',
    source: 'practice, no published source',
    from: [given('Volume', volumeM3, 'm³'), given('Rough heat per cubic metre', roughWPerM3, 'W/m³')],
  })
  const parts = { transmissionW: 0, ventilationW: 0, reheatW: 0, elements: [] }
  return { watts, ...parts, rough: true, why }
}

function measuredLoad(room: MeasuredRoomHeat): Outcome<Load> {
  const losses = lossesThrough(room)
  if (!losses.ok) return under('room', losses)
  const ventilation = ventilationOf(room)
  const reheat = reheatOf(room)
  const transmissionW = losses.value.reduce((sum, loss) => sum + loss.watts, 0)
  const watts = transmissionW + ventilation.watts + reheat.watts
  return accept({
    watts,
    transmissionW,
    ventilationW: ventilation.watts,
    reheatW: reheat.watts,
    elements: losses.value.map(({ name, netAreaM2, watts: lost }) => ({ name, netAreaM2, watts: lost })),
    rough: false,
    why: because('Heat the room needs: transmission + ventilation + reheat', watts, {
      unit: 'W',
      source: 'EN 12831-1, simplified',
      from: [transmissionWhy(losses.value, transmissionW), ventilation.why, reheat.why],
    }),
  })
}

function transmissionWhy(losses: readonly ElementLoss[], watts: number): Derivation {
  const says = 'Transmission: each element and opening, less what warmer neighbours give'
  return because(says, watts, { unit: 'W', from: losses.map((loss) => loss.why) })
}

type Part = { readonly watts: number; readonly why: Derivation }

function ventilationOf({ airChangesPerHour, volumeM3, roomC, outsideC }: MeasuredRoomHeat): Part {
  const watts = airWhPerM3K * airChangesPerHour * volumeM3 * (roomC - outsideC)
  const why = because('Ventilation: 0.34 × air changes × volume × (room - outside)', watts, {
    unit: 'W',
    source: 'EN 12831:2003',
    from: [
      given('Heat to warm air', airWhPerM3K, 'Wh/m³K', 'EN 12831:2003'),
      given('Air changes', airChangesPerHour, 'an hour'),
      given('Volume', volumeM3, 'm³'),
      given('Room', roomC, '°C'),
      given('Outside', outsideC, '°C'),
    ],
  })
  return { watts, why }
}

function reheatOf({ floorAreaM2, reheatWPerM2 = 0 }: MeasuredRoomHeat): Part {
  const watts = floorAreaM2 * reheatWPerM2
  const why = because('Reheat: floor area × allowance', watts, {
    unit: 'W',
    source: 'EN 12831:2003',
    from: [given('Floor area', floorAreaM2, 'm²'), given('Reheat allowance', reheatWPerM2, 'W/m²')],
  })
  return { watts, why }
}
