import type { Bracket, Emitter } from '../../../src-main/domain/item.ts'
import { counterAndWarehouse, toNearest } from '../sold.ts'
import type { SoldEmitter } from '../sold.ts'
import { bottomOppositeEnds, boxFor, sideOf } from './in-the-box.ts'

type PanelForm = Extract<Emitter['form'], { kind: 'panel' }>['panel']

/** What one form of panel radiator is, by rule. */
type PanelRule = {
  readonly panel: PanelForm
  readonly idStart: string
  readonly name: string
  readonly otherNames: readonly string[]
  /** Rated output for each m2 of face at 600 high, 75/65/20; from memory, generic. */
  readonly wattsPerM2: number
  /** How that falls as the face grows taller: x (height / 600) ^ this; from memory. */
  readonly heightPower: number
  /** Exponent at 300 high. */
  readonly exponentAt300: number
  readonly kgPerMAt300: number
  readonly waterways: 1 | 2 | 3
  readonly depthMm: number
  readonly wallGapMm: number
  /** From the wall to the middle of the tappings: in a single panel's own thickness, otherwise half way through. */
  readonly connectionOffWallMm: number
  readonly pencePerM2: number
  readonly widthsMm: Readonly<Record<number, readonly number[]>>
}

const from400 = [400, 500, 600, 700, 800, 900, 1000, 1100, 1200, 1400, 1600, 1800, 2000]

/**
 * Exponents, kg/m and water at 300 high of the singles and doubles with fins: the records of a flat's radiators in the AixLib
 * building library (types 11, 12 and 22; its type 12 holds the water of two panels). Exponent of the plain single: the default of the IBPSA library for a flat plate, 1.24 at
 * 420 high. All else from memory, generic.
 */
const rules: readonly PanelRule[] = [
  {
    panel: 'single',
    idStart: 'panel-single',
    name: 'Single panel radiator, no fins',
    otherNames: ['type 10', 'flat single'],
    wattsPerM2: 1030,
    heightPower: -0.09,
    exponentAt300: 1.211,
    kgPerMAt300: 6,
    waterways: 1,
    depthMm: 24,
    wallGapMm: 40,
    connectionOffWallMm: 52,
    pencePerM2: 4200,
    widthsMm: { 450: [500, 600, 800, 1000], 600: [400, 500, 600, 800, 1000, 1200] },
  },
  {
    panel: 'singleFinned',
    idStart: 'panel-single-finned',
    name: 'Single panel radiator, one fin',
    otherNames: ['type 11', 'single convector'],
    wattsPerM2: 1640,
    heightPower: -0.18,
    exponentAt300: 1.2196,
    kgPerMAt300: 9.87,
    waterways: 1,
    depthMm: 50,
    wallGapMm: 30,
    connectionOffWallMm: 68,
    pencePerM2: 5500,
    widthsMm: {
      300: [600, 800, 1000, 1200, 1400, 1600],
      450: [500, 600, 800, 1000, 1200, 1400, 1600],
      600: from400.filter((width) => width <= 1600),
      700: [500, 600, 800, 1000],
    },
  },
  {
    panel: 'double',
    idStart: 'panel-double',
    name: 'Double panel radiator, no fins',
    otherNames: ['type 20', 'flat double'],
    wattsPerM2: 1720,
    heightPower: -0.15,
    exponentAt300: 1.25,
    kgPerMAt300: 12.4,
    waterways: 2,
    depthMm: 66,
    wallGapMm: 35,
    connectionOffWallMm: 68,
    pencePerM2: 8000,
    widthsMm: { 450: [600, 800, 1000], 600: [500, 600, 800, 1000, 1200] },
  },
  {
    panel: 'doubleFinned',
    idStart: 'panel-double-finned',
    name: 'Double panel radiator, one fin',
    otherNames: ['type 21', 'double panel single convector'],
    wattsPerM2: 2220,
    heightPower: -0.18,
    exponentAt300: 1.2731,
    kgPerMAt300: 14.66,
    waterways: 2,
    depthMm: 72,
    wallGapMm: 35,
    connectionOffWallMm: 71,
    pencePerM2: 8800,
    widthsMm: {
      300: [600, 800, 1000, 1200, 1400, 1600],
      450: [500, 600, 700, 800, 900, 1000, 1200, 1400, 1600],
      600: from400,
      700: [500, 600, 800, 1000, 1200],
    },
  },
  {
    panel: 'doubleTwoFins',
    idStart: 'panel-double-two-fins',
    name: 'Double panel radiator, two fins',
    otherNames: ['type 22', 'double convector'],
    wattsPerM2: 2870,
    heightPower: -0.19,
    exponentAt300: 1.2776,
    kgPerMAt300: 17.01,
    waterways: 2,
    depthMm: 102,
    wallGapMm: 35,
    connectionOffWallMm: 86,
    pencePerM2: 10500,
    widthsMm: {
      300: [600, 800, 1000, 1200, 1400, 1600, 1800, 2000],
      450: [500, 600, 700, 800, 900, 1000, 1200, 1400, 1600, 1800],
      600: from400,
      700: [400, 500, 600, 800, 1000, 1200],
    },
  },
  {
    panel: 'tripleThreeFins',
    idStart: 'panel-triple-three-fins',
    name: 'Triple panel radiator, three fins',
    otherNames: ['type 33', 'triple convector'],
    wattsPerM2: 4050,
    heightPower: -0.2,
    exponentAt300: 1.29,
    kgPerMAt300: 26.5,
    waterways: 3,
    depthMm: 158,
    wallGapMm: 35,
    connectionOffWallMm: 114,
    pencePerM2: 21500,
    widthsMm: { 300: [1000, 1400, 1800], 450: [800, 1000, 1200, 1400], 600: [600, 800, 1000, 1200, 1400] },
  },
]

/** From the end of the panel to the middle of the valve's pipe; from memory. */
const tailReachMm = 35

/** Water in one panel, litres for each metre: two headers and the ways between them. 1.8 at 300 high is AixLib's; slope from memory. */
const waterLPerM = (heightMm: number) => 0.6 + 0.004 * heightMm
/** Mass grows a little less than height does, for the headers stay; power from memory. */
const massPower = 0.87
/** The exponent rises with height, ever less (tzb-info.cz 23082: rises, not linearly); size of the rise from memory. */
const exponentRise = (heightMm: number) => 0.1 * (1 - 300 / heightMm)

export function panels(): readonly SoldEmitter[] {
  return rules.flatMap((rule) =>
    Object.entries(rule.widthsMm).flatMap(([height, widths]) =>
      widths.map((widthMm) => soldPanel(rule, Number(height), widthMm)),
    ),
  )
}

function soldPanel(rule: PanelRule, heightMm: number, widthMm: number): SoldEmitter {
  const item = panelOf(rule, heightMm, widthMm)
  const areaM2 = (heightMm * widthMm) / 1e6
  const pence = toNearest(900 + rule.pencePerM2 * areaM2, 5)
  const sellers = heightMm === 600 || heightMm === 450 ? counterAndWarehouse : (['warehouse'] as const)
  return { item, packs: [[1, pence]], sellers }
}

function panelOf(rule: PanelRule, heightMm: number, widthMm: number): Emitter {
  const widthM = widthMm / 1000
  const face = (heightMm / 1000) * widthM
  const watts = rule.wattsPerM2 * (heightMm / 600) ** rule.heightPower * face
  const dryKg = toNearest(rule.kgPerMAt300 * (heightMm / 300) ** massPower * widthM, 0.1)
  const waterLitres = toNearest(rule.waterways * waterLPerM(heightMm) * widthM, 0.1)
  const brackets = bracketsOf(heightMm, widthMm)
  const size = `${heightMm}x${widthMm}`
  return {
    itemId: `${rule.idStart}-${size}`,
    name: `${rule.name}, ${heightMm} high x ${widthMm} wide`,
    generic: true,
    alsoCalled: [...rule.otherNames, 'rad', size],
    kind: 'emitter',
    form: { kind: 'panel', panel: rule.panel },
    finish: 'white',
    widthMm,
    heightMm,
    depthMm: rule.depthMm,
    wallGapMm: rule.wallGapMm,
    connectionOffWallMm: rule.connectionOffWallMm,
    pipeCentresMm: widthMm + 2 * tailReachMm,
    ratedW: toNearest(watts, 5),
    exponent: toNearest(rule.exponentAt300 + exponentRise(heightMm), 0.001),
    waterLitres,
    dryKg,
    brackets,
    tappings: bottomOppositeEnds,
    box: boxFor(brackets, { fullKg: dryKg + waterLitres, finish: 'white' }),
  }
}

/** Strips behind the lugs, each with a hole near its foot and one near its top; a third strip from 1800 wide. From memory. */
function bracketsOf(heightMm: number, widthMm: number): readonly Bracket[] {
  const inset = widthMm < 600 ? 100 : 135
  const side = widthMm / 2 - inset
  const across = widthMm >= 1800 ? [-side, 0, side] : [-side, side]
  return across.map((acrossMm) => ({
    name: `${sideOf(acrossMm)} bracket`,
    upper: true,
    holes: [
      { acrossMm, upMm: 100 },
      { acrossMm, upMm: heightMm - 80 },
    ],
  }))
}
