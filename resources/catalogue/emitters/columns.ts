import type { Bracket, Emitter } from '../../../src-main/domain/item.ts'
import { toNearest } from '../sold.ts'
import type { SoldEmitter } from '../sold.ts'
import { bottomOppositeEnds, boxFor, bracketRow } from './in-the-box.ts'

type Columns = 2 | 3 | 4

const inWords = { 2: 'Two', 3: 'Three', 4: 'Four' } as const

/** All from memory, generic: one section's width, depth by columns, output at 600 high (75/65/20) and how it grows with height. */
const sectionMm = 46
const depthMm = { 2: 66, 3: 104, 4: 142 } as const
const wattsAt600 = { 2: 47, 3: 67, 4: 86 } as const
const heightPower = 0.85
/** Handbooks give 1.25 to 1.33 for columns, 1.30 where unknown; from memory. */
const exponent = 1.3
const wallGapMm = 40
const tailReachMm = 35

/** Tube of 25 x 1.2 mm in steel of 7800 kg/m3 (EN 12524), and heads above and below; tube size and heads from memory. */
const tubeKgPerM = Math.PI * 23.8e-3 * 1.2e-3 * 7800
const boreLPerM = (Math.PI / 4) * 22.6e-3 ** 2 * 1000
const headsMm = 60
const headsKg = 0.12
const headsLitres = 0.05

const ranges: readonly {
  readonly heightMm: number
  readonly columns: readonly Columns[]
  readonly sections: readonly number[]
}[] = [
  { heightMm: 600, columns: [2, 3, 4], sections: [10, 13, 18, 22, 26, 30] },
  { heightMm: 1500, columns: [2, 3], sections: [6, 8, 10, 12] },
  { heightMm: 1800, columns: [2, 3], sections: [6, 8, 10, 12] },
]

export function columnRadiators(): readonly SoldEmitter[] {
  return ranges.flatMap(({ heightMm, columns, sections }) =>
    columns.flatMap((deep) =>
      sections.map((wide): SoldEmitter => {
        const perSection = 350 * deep + 0.25 * heightMm * deep
        const pence = toNearest(3000 + perSection * wide, 5)
        return { item: columnOf(deep, wide, heightMm), packs: [[1, pence]], sellers: ['warehouse'] }
      }),
    ),
  )
}

function columnOf(columns: Columns, sections: number, heightMm: number): Emitter {
  const widthMm = sections * sectionMm
  const tubeM = (columns * (heightMm - headsMm)) / 1000
  const dryKg = toNearest(sections * (tubeM * tubeKgPerM + columns * headsKg), 0.1)
  const waterLitres = toNearest(sections * (tubeM * boreLPerM + columns * headsLitres), 0.1)
  const brackets = bracketsOf(sections, heightMm)
  const size = `${heightMm}x${widthMm}`
  const upright = heightMm > widthMm ? ['vertical radiator', 'tall radiator'] : []
  return {
    itemId: `column-${columns}-${size}`,
    name: `${inWords[columns]}-column radiator, ${sections} sections, ${heightMm} high x ${widthMm} wide`,
    generic: true,
    alsoCalled: [`${columns} column`, 'tubular radiator', ...upright, 'rad', size],
    kind: 'emitter',
    form: { kind: 'column', columns, sections },
    finish: 'white',
    widthMm,
    heightMm,
    depthMm: depthMm[columns],
    wallGapMm,
    connectionOffWallMm: wallGapMm + depthMm[columns] / 2,
    pipeCentresMm: widthMm + 2 * tailReachMm,
    ratedW: toNearest(sections * wattsAt600[columns] * (heightMm / 600) ** heightPower, 5),
    exponent,
    waterLitres,
    dryKg,
    brackets,
    tappings: bottomOppositeEnds,
    box: boxFor(brackets, { fullKg: dryKg + waterLitres, finish: 'white' }),
  }
}

/** Hooks in the outermost gaps between sections, under the top heads and above the bottom ones; a third pair from 20 sections. From memory. */
function bracketsOf(sections: number, heightMm: number): readonly Bracket[] {
  const side = (sections / 2 - 1) * sectionMm
  const across = sections >= 20 ? [-side, 0, side] : [-side, side]
  return [...bracketRow('upper', across, heightMm - 75), ...bracketRow('lower', across, 75)]
}
