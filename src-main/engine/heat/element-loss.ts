import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, assertNever, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { HeatElement, MeasuredRoomHeat } from '../../domain/room-heat.ts'

/** What passes through one element less its openings, or through one opening; negative where heat comes in. */
export type ElementLoss = {
  readonly name: string
  readonly netAreaM2: number
  readonly watts: number
  readonly why: Derivation
}

/** Openings that fill their wall may pass it by a rounding of square metres. */
const roundingM2 = 1e-9

/**
 * What a room loses through each element and opening: A (U + dU) (room - behind), W.
 * Behind is, by boundary: the outside air; the neighbour room (warmer gives a gain); the ground, at the year's mean outside
 * temperature; and for an unheated space the difference is b (room - outside).
 * dU is the allowance for thermal bridges. It goes on every element and every opening, whatever lies behind, as the
 * standard's sum writes it; so an element and its openings carry it on their whole area, and one that should carry
 * none wants an allowance of 0.
 * Refuses openings larger together than the element that holds them.
 *
 * @param room areas in m2, U 0 to 20 W/m2K, temperatures in degrees Celsius, b 0 to 1, dU 0 to 2 W/m2K (0 when absent)
 * @source EN 12831-1 transmission heat loss, simplified
 * @example lossesThrough({ name: 'Hall', roomC: 20, outsideC: 0, volumeM3: 20, floorAreaM2: 8, airChangesPerHour: 1, elements: [{ name: 'Wall', areaM2: 10, uWPerM2K: 1.5, boundary: { kind: 'outside' } }] }).value[0].watts // => 300
 */
export function lossesThrough(room: MeasuredRoomHeat): Outcome<readonly ElementLoss[]> {
  const losses: ElementLoss[] = []
  for (const [index, element] of room.elements.entries()) {
    const netAreaM2 = netAreaOf(element, index)
    if (!netAreaM2.ok) return netAreaM2
    const difference = differenceOf(element, room)
    losses.push(lossOf({ ...element, netAreaM2: netAreaM2.value }, room, difference))
    for (const opening of element.openings ?? []) {
      losses.push(lossOf({ ...opening, netAreaM2: opening.areaM2 }, room, difference))
    }
  }
  return accept(losses)
}

type Openings = { readonly areaM2: number; readonly why: readonly Derivation[] }

function openingsOf(element: Pick<HeatElement, 'openings'>): Openings {
  const openings = element.openings ?? []
  return {
    areaM2: openings.reduce((sum, opening) => sum + opening.areaM2, 0),
    why: openings.map((opening) => given(`Less the opening ${opening.name}`, opening.areaM2, 'm²')),
  }
}

function netAreaOf(element: HeatElement, index: number): Outcome<number> {
  const { areaM2 } = openingsOf(element)
  if (areaM2 <= element.areaM2 + roundingM2) return accept(Math.max(0, element.areaM2 - areaM2))
  const message =
    `The openings in “${element.name}” come to ${round(areaM2)} m², more than its ${round(element.areaM2)} m²; ` +
    'give the whole area with its openings, or smaller openings.'
  return refuse('impossible', message, `elements[${index}].openings`)
}

function round(areaM2: number): number {
  return Number(areaM2.toPrecision(6))
}

type Difference = { readonly kelvin: number; readonly why: Derivation }

function differenceOf({ boundary }: HeatElement, { roomC, outsideC }: MeasuredRoomHeat): Difference {
  const room = given('Room', roomC, '°C')
  switch (boundary.kind) {
    case 'outside':
      return overRoom('Room less outside', roomC - outsideC, [room, given('Outside', outsideC, '°C')])
    case 'room':
      return overRoom('Room less the room behind', roomC - boundary.roomC, [
        room,
        given('Room behind', boundary.roomC, '°C'),
      ])
    case 'unheated':
      return overRoom(
        'Share for an unheated space × (room - outside)',
        boundary.factor * (roomC - outsideC),
        [given('Share for an unheated space', boundary.factor), room, given('Outside', outsideC, '°C')],
      )
    case 'ground':
      return overRoom('Room less the ground', roomC - boundary.meanOutsideC, [
        room,
        given("The year's mean outside", boundary.meanOutsideC, '°C'),
      ])
    default:
      return assertNever(boundary)
  }
}

function overRoom(says: string, kelvin: number, from: readonly Derivation[]): Difference {
  return { kelvin, why: because(says, kelvin, { unit: 'K', from }) }
}

type Surface = Pick<HeatElement, 'name' | 'areaM2' | 'uWPerM2K' | 'openings'> & { readonly netAreaM2: number }

function lossOf(surface: Surface, room: MeasuredRoomHeat, difference: Difference): ElementLoss {
  const { name, areaM2, netAreaM2, uWPerM2K } = surface
  const bridgeWPerM2K = room.thermalBridgeWPerM2K ?? 0
  const watts = netAreaM2 * (uWPerM2K + bridgeWPerM2K) * difference.kelvin
  const openings = openingsOf(surface).why
  const gross = given('Area', areaM2, 'm²')
  const area =
    openings.length === 0
      ? gross
      : because('Area less its openings', netAreaM2, { unit: 'm²', from: [gross, ...openings] })
  const why = because(`${name}: area × (U + thermal bridges) × difference`, watts, {
    unit: 'W',
    source: 'EN 12831-1, simplified',
    from: [
      area,
      given('U-value', uWPerM2K, 'W/m²K'),
      given('Allowance for thermal bridges', bridgeWPerM2K, 'W/m²K'),
      difference.why,
    ],
  })
  return { name, netAreaM2, watts, why }
}
