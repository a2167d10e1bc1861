import type { Bracket, Emitter } from '../../../src-main/domain/item.ts'
import { capital, counterAndWarehouse, toNearest } from '../sold.ts'
import type { SoldEmitter } from '../sold.ts'
import { bottomOppositeEnds, boxFor, bracketRow } from './in-the-box.ts'

type Curve = 'straight' | 'curved'
type Finish = 'white' | 'chrome'

const widthsMm = [400, 450, 500, 600]
const heightsMm = [700, 800, 1000, 1200, 1500, 1800]

/** Rungs of 22 x 1.2 mm, uprights of 30 x 40 x 1.5 mm (D-shaped), a rung for each 60 mm of height; from memory, generic. */
const rungM = { outside: 22e-3, bore: 19.6e-3 }
const uprightPerimeterM = 0.12
const uprightSteelM2 = 0.12 * 1.5e-3
const uprightBoreM2 = 850e-6
const rungPitchMm = 60
/** Both uprights, and the gaps at them, take this from a rung's length. */
const uprightsMm = 80
const steelKgPerM3 = 7800

/** Output for each m2 of tube, white paint, 75/65/20, from memory; chrome gives off less by radiation, from memory. */
const wattsPerM2 = 580
const finishRatio = { white: 1, chrome: 0.7 } as const
/** Handbooks give 1.15 to 1.25 for ladder rails, 1.20 where unknown; from memory. */
const exponent = 1.2

/** Pipes come up 25 mm inside each edge: a 600 rail has 550 mm centres (practice, no published source). */
const pipesInsideMm = 50
/** Brackets of a 600 rail spread 480 mm, the lowest 95 mm above its bottom edge (practice, no published source). */
const bracketsInsideMm = 120
const lowestBracketMm = 95
const middlePairFromMm = 1500
const wallGapMm = 55
const connectionInMm = 15
/** Of the tubes; how much further a curve stands out is a figure of the firm's, not of the catalogue. */
const depthMm = 35

export function towelRails(): readonly SoldEmitter[] {
  const finishes: readonly Finish[] = ['white', 'chrome']
  const curves: readonly Curve[] = ['straight', 'curved']
  return curves.flatMap((curve) =>
    finishes.flatMap((finish) =>
      heightsMm.flatMap((heightMm) =>
        widthsMm.map((widthMm) => soldRail({ curve, finish }, heightMm, widthMm)),
      ),
    ),
  )
}

type Look = { readonly curve: Curve; readonly finish: Finish }

function soldRail(look: Look, heightMm: number, widthMm: number): SoldEmitter {
  const item = railOf(look, heightMm, widthMm)
  const penceAKg = look.finish === 'chrome' ? 700 : 520
  const pence = toNearest(1500 + penceAKg * item.dryKg + (look.curve === 'curved' ? 300 : 0), 5)
  return { item, packs: [[1, pence]], sellers: widthMm >= 500 ? counterAndWarehouse : ['warehouse'] }
}

function tubesOf(heightMm: number, widthMm: number) {
  const rungs = Math.round(heightMm / rungPitchMm)
  const rungsM = (rungs * (widthMm - uprightsMm)) / 1000
  const uprightsM = (2 * heightMm) / 1000
  const rungSteelM2 = (Math.PI / 4) * (rungM.outside ** 2 - rungM.bore ** 2)
  const rungBoreM2 = (Math.PI / 4) * rungM.bore ** 2
  return {
    rungs,
    faceM2: rungsM * Math.PI * rungM.outside + uprightsM * uprightPerimeterM,
    kg: (rungsM * rungSteelM2 + uprightsM * uprightSteelM2) * steelKgPerM3,
    litres: (rungsM * rungBoreM2 + uprightsM * uprightBoreM2) * 1000,
  }
}

function railOf({ curve, finish }: Look, heightMm: number, widthMm: number): Emitter {
  const tubes = tubesOf(heightMm, widthMm)
  const dryKg = toNearest(tubes.kg, 0.1)
  const waterLitres = toNearest(tubes.litres, 0.1)
  const brackets = bracketsOf(heightMm, widthMm)
  return {
    itemId: `rail-${curve}-${finish}-${widthMm}x${heightMm}`,
    name: `${capital(curve)} towel rail, ${finish}, ${widthMm} wide x ${heightMm} high`,
    generic: true,
    alsoCalled: ['towel radiator', 'ladder rail', 'heated towel rail', `${heightMm}x${widthMm}`],
    kind: 'emitter',
    form: { kind: 'towelRail', curve, rungs: tubes.rungs },
    finish,
    widthMm,
    heightMm,
    depthMm,
    wallGapMm,
    connectionOffWallMm: wallGapMm + connectionInMm,
    pipeCentresMm: widthMm - pipesInsideMm,
    ratedW: toNearest(tubes.faceM2 * wattsPerM2 * finishRatio[finish], 5),
    exponent,
    waterLitres,
    dryKg,
    brackets,
    tappings: bottomOppositeEnds,
    box: boxFor(brackets, { fullKg: dryKg + waterLitres, finish }),
  }
}

function bracketsOf(heightMm: number, widthMm: number): readonly Bracket[] {
  const side = (widthMm - bracketsInsideMm) / 2
  const across = [-side, side]
  const middle = heightMm >= middlePairFromMm ? bracketRow('middle', across, heightMm / 2) : []
  return [
    ...bracketRow('upper', across, heightMm - lowestBracketMm),
    ...middle,
    ...bracketRow('lower', across, lowestBracketMm),
  ]
}
