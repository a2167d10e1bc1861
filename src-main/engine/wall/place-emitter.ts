import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { EmitterShape } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Fit, SetOut } from '../../domain/set-out.ts'
import type { Side } from '../../domain/wall.ts'
import { centreLine } from './centre-line.ts'
import { finiteInput } from './wall-input.ts'
import type { PlaceInput } from './wall-input.ts'

export type Envelope = Fit['envelope']
export type ValvePlace = SetOut['valves'][number]

/** An emitter in its place: centre line, the rectangle it takes with its valves, and each valve's pipe entry. */
export type Placed = {
  readonly centreMm: number
  readonly envelope: Envelope
  readonly valves: readonly ValvePlace[]
  readonly dropMm: number
  readonly whys: {
    readonly centre: Derivation
    readonly envelope: Derivation
    readonly drop: Derivation
    readonly front: Derivation
  }
}

/** The farthest place that a drawing or a list can name. */
export const farthestMm = 20_000

/**
 * Puts an emitter on a wall. Envelope: from centre ± (width/2 + room for the valve on that side), from bottom - drop to bottom +
 * height, front = wall gap + depth. Room beside, where not given: the larger of the firm's figure (only for valves that stand
 * beside the emitter, that is pipe centres above its width) and pipe centres/2 + half a valve body - width/2, never below 0; none
 * on a side without a valve tapping. Valves: at centre ± pipe centres/2, pipe entry at bottom - drop.
 * Refuses numbers that are not finite, a centre that the pipes do not give, and places more than 20 m off.
 *
 * @param input wall, emitter, valve space, centre, bottom edge above finished floor (mm, 0 or above) and pipes
 * @param figures the firm's figures: wall.valveSideMm, wall.valveBodyHalfMm, wall.valveDrop…Mm, wall.curvedExtraMm
 * @source practice, no published source
 * @example placeEmitter({ bottomMm: NaN }, { settings: {}, tasks: {}, fixings: [] }).ok // => false
 */
export function placeEmitter(input: PlaceInput, figures: Figures): Outcome<Placed> {
  const finite = finiteInput(input)
  if (!finite.ok) return finite
  const { wall, emitter, centre, bottomMm } = input
  const line = centreLine({
    centre,
    pipes: input.pipes ?? [],
    pipeCentresMm: emitter.pipeCentresMm,
    wallWidthMm: wall.widthMm,
  })
  if (!line.ok) return line
  const { centreMm } = line.value
  const rooms = { left: roomBeside('left', input, figures), right: roomBeside('right', input, figures) }
  const drop = dropOf(input, figures)
  const front = frontOf(input, figures)
  const envelope: Envelope = {
    leftMm: centreMm - emitter.widthMm / 2 - number(rooms.left),
    rightMm: centreMm + emitter.widthMm / 2 + number(rooms.right),
    bottomMm: bottomMm - number(drop),
    topMm: bottomMm + emitter.heightMm,
    frontMm: number(front),
  }
  if (Object.values(envelope).some((place) => Math.abs(place) > farthestMm)) return tooFar()
  const valves = sides
    .filter((side) => hasValve(emitter, side))
    .map((side) => ({ side, xMm: valveX(side, centreMm, emitter), yMm: envelope.bottomMm }))
  const whys = { centre: line.value.why, envelope: envelopeWhy(input, envelope, rooms), drop, front }
  return accept({ centreMm, envelope, valves, dropMm: number(drop), whys })
}

/**
 * Whether the valves hang under the emitter, within its width, rather than beside it.
 * @param emitter its width and pipe centres, mm, above 0
 * @source practice, no published source
 * @example valvesUnder({ widthMm: 600, pipeCentresMm: 550 }) // => true
 */
export function valvesUnder(emitter: Pick<EmitterShape, 'widthMm' | 'pipeCentresMm'>): boolean {
  return emitter.pipeCentresMm <= emitter.widthMm
}

const sides: readonly Side[] = ['left', 'right']

/** Emitters whose tappings nobody listed are taken to have a valve on each side; a bottom middle pair serves both. */
function hasValve(emitter: EmitterShape, side: Side): boolean {
  const places = emitter.tappings.filter((tapping) => tapping.holds === 'valve').map((tapping) => tapping.at)
  if (places.length === 0) return true
  const here = side === 'left' ? ['bottomLeft', 'topLeft'] : ['bottomRight', 'topRight']
  return places.some((at) => at === 'bottomMiddle' || here.includes(at))
}

function valveX(side: Side, centreMm: number, emitter: EmitterShape): number {
  return side === 'left' ? centreMm - emitter.pipeCentresMm / 2 : centreMm + emitter.pipeCentresMm / 2
}

function roomBeside(side: Side, { emitter, valves }: PlaceInput, figures: Figures): Derivation {
  const says = `Room for the valve on the ${side}`
  if (valves.sideMm !== undefined) return given(says, valves.sideMm, 'mm', 'given')
  if (!hasValve(emitter, side)) return given(`${says}: the emitter has no valve there`, 0, 'mm')
  const beyond = emitter.pipeCentresMm / 2 + figure(figures, 'wall.valveBodyHalfMm') - emitter.widthMm / 2
  const sizes = [
    given('Pipe centres', emitter.pipeCentresMm, 'mm', 'catalogue'),
    given('Width', emitter.widthMm, 'mm', 'catalogue'),
    figureWhy(figures, 'wall.valveBodyHalfMm'),
  ]
  if (valvesUnder(emitter)) {
    return because(`${says}: it hangs under the emitter.`, Math.max(0, beyond), { unit: 'mm', from: sizes })
  }
  const asked = figure(figures, 'wall.valveSideMm')
  const from = [...sizes, figureWhy(figures, 'wall.valveSideMm')]
  return because(`${says}: it stands beside the emitter.`, Math.max(asked, beyond), { unit: 'mm', from })
}

function dropOf({ emitter, valves }: PlaceInput, figures: Figures): Derivation {
  if (valves.dropMm !== undefined) {
    return given('From the bottom edge down to the pipe entry', valves.dropMm, 'mm', 'given')
  }
  return figureWhy(figures, valvesUnder(emitter) ? 'wall.valveDropUnderMm' : 'wall.valveDropBesideMm')
}

function frontOf({ emitter, curved }: PlaceInput, figures: Figures): Derivation {
  const sizes = [
    given('From the wall to the back of the emitter', emitter.wallGapMm, 'mm', 'catalogue'),
    given('Depth of the emitter', emitter.depthMm, 'mm', 'catalogue'),
  ]
  const flat = emitter.wallGapMm + emitter.depthMm
  if (curved !== true) return because('How far it stands out.', flat, { unit: 'mm', from: sizes })
  const from = [...sizes, figureWhy(figures, 'wall.curvedExtraMm')]
  return because('How far it stands out, curved.', flat + figure(figures, 'wall.curvedExtraMm'), {
    unit: 'mm',
    from,
  })
}

function envelopeWhy(
  { emitter, bottomMm }: PlaceInput,
  envelope: Envelope,
  rooms: { readonly left: Derivation; readonly right: Derivation },
): Derivation {
  const from = [
    given('Width', emitter.widthMm, 'mm', 'catalogue'),
    given('Height', emitter.heightMm, 'mm', 'catalogue'),
    given('Bottom edge above the floor', bottomMm, 'mm', 'survey'),
    rooms.left,
    rooms.right,
  ]
  const says = 'Width on the wall, with the valves.'
  return because(says, envelope.rightMm - envelope.leftMm, { unit: 'mm', from })
}

function tooFar(): Outcome<Placed> {
  return refuse(
    'impossible',
    'The emitter would lie more than 20 m from the left end of the wall; give a centre and sizes that are on it.',
    'centre',
  )
}

function number(reason: Derivation): number {
  if (typeof reason.value !== 'number') throw new Error(`Not a number: ${reason.says}`)
  return reason.value
}
