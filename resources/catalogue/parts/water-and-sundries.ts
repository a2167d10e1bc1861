import type { Part } from '../../../src-main/domain/item.ts'
import { counterAndFixings, counterAndWarehouse, everySeller } from '../sold.ts'
import type { Pack, SellerId, SoldPart } from '../sold.ts'

type Water = Extract<Part, { kind: 'inhibitor' | 'cleaner' }>
type Sundry = Extract<Part, { kind: 'sundry' }>
type Dose = Pick<Water, 'kind' | 'itemId' | 'name' | 'alsoCalled' | 'spec'> & {
  readonly packs: readonly Pack[]
}

/** A litre of concentrate to a hundred litres of water is usual; trade practice, from memory. */
const doses: readonly Dose[] = [
  {
    kind: 'inhibitor',
    itemId: 'inhibitor-100',
    name: 'Inhibitor, 1 litre treats 100 litres',
    alsoCalled: ['corrosion inhibitor', 'central heating protector', 'dosing'],
    spec: { treatsLitresPerLitre: 100 },
    packs: [
      [0.5, 790],
      [1, 1290],
      [5, 5850],
    ],
  },
  {
    kind: 'inhibitor',
    itemId: 'inhibitor-200',
    name: 'Inhibitor, strong, half a litre treats 100 litres',
    alsoCalled: ['concentrated inhibitor', 'corrosion inhibitor', 'rapid dose'],
    spec: { treatsLitresPerLitre: 200 },
    packs: [[0.5, 1420]],
  },
  {
    kind: 'inhibitor',
    itemId: 'inhibitor-333',
    name: 'Inhibitor in a dosing can, 300 ml treats 100 litres',
    alsoCalled: ['rapid dose', 'dosing can', 'corrosion inhibitor'],
    spec: { treatsLitresPerLitre: 333 },
    packs: [[0.3, 1690]],
  },
  {
    kind: 'cleaner',
    itemId: 'cleaner-100',
    name: 'System cleaner, 1 litre treats 100 litres',
    alsoCalled: ['central heating cleaner', 'flushing chemical'],
    spec: { treatsLitresPerLitre: 100 },
    packs: [
      [1, 1240],
      [5, 5600],
    ],
  },
  {
    kind: 'cleaner',
    itemId: 'cleaner-200',
    name: 'System cleaner, strong, half a litre treats 100 litres',
    alsoCalled: ['sludge remover', 'system restorer'],
    spec: { treatsLitresPerLitre: 200 },
    packs: [[0.5, 1480]],
  },
  {
    kind: 'cleaner',
    itemId: 'cleaner-333',
    name: 'System cleaner in a dosing can, 300 ml treats 100 litres',
    alsoCalled: ['rapid dose cleaner', 'dosing can'],
    spec: { treatsLitresPerLitre: 333 },
    packs: [[0.3, 1720]],
  },
]

function dosed({ packs, ...row }: Dose): SoldPart {
  return { item: { ...row, generic: true }, packs, sellers: everySeller }
}

const tests: readonly SoldPart[] = [
  {
    item: {
      itemId: 'test-kit-inhibitor-strip',
      name: 'Inhibitor test strip, one test',
      generic: true,
      alsoCalled: ['dip test', 'inhibitor test'],
      kind: 'testKit',
      spec: { tests: 'inhibitor' },
    },
    packs: [
      [1, 290],
      [10, 2350],
    ],
    sellers: counterAndFixings,
  },
  {
    item: {
      itemId: 'test-kit-inhibitor-drops',
      name: 'Inhibitor drop test, five tests in a box',
      generic: true,
      alsoCalled: ['water test kit', 'inhibitor test'],
      kind: 'testKit',
      spec: { tests: 'inhibitor' },
    },
    packs: [[5, 1690]],
    sellers: ['counter'],
  },
]

const elementWatts = [100, 150, 200, 250, 300, 400, 500, 600, 800, 1000]

function element(watts: number): SoldPart {
  return {
    item: {
      itemId: `element-${watts}`,
      name: `Heating element for a towel rail, ${watts} W, G1/2`,
      generic: true,
      alsoCalled: [
        'electric element',
        'immersion element',
        'dual fuel',
        'summer heating',
        `${watts}w`,
        '1/2 inch',
      ],
      note: 'To be connected by a qualified electrician.',
      kind: 'element',
      spec: { watts, thread: 'G1/2' },
    },
    packs: [[1, Math.round(3000 + watts * 1.4)]],
    sellers: counterAndWarehouse,
  }
}

type SundryRow = Pick<Sundry, 'itemId' | 'name' | 'spec'> & {
  readonly other: readonly string[]
  readonly packs: readonly Pack[]
  readonly sellers?: readonly SellerId[]
}

const sundries: readonly SundryRow[] = [
  {
    itemId: 'dust-sheet-cotton',
    name: 'Dust sheet, cotton, 3.6 x 2.7 m',
    other: ['dust cover', 'drop cloth'],
    spec: { what: 'dustSheet' },
    packs: [
      [1, 1150],
      [3, 3090],
    ],
  },
  {
    itemId: 'dust-sheet-polythene',
    name: 'Dust sheet, polythene, 4 x 4 m',
    other: ['plastic sheet', 'drop sheet'],
    spec: { what: 'dustSheet' },
    packs: [
      [1, 190],
      [5, 690],
    ],
  },
  {
    itemId: 'rubble-sack',
    name: 'Rubble sack, heavy',
    other: ['waste bag', 'builders bag'],
    spec: { what: 'rubbleSack' },
    packs: [
      [1, 85],
      [10, 560],
      [100, 4900],
    ],
  },
  {
    itemId: 'drain-hose-jointing',
    name: 'Hose tail and washer for a drain cock',
    other: ['drain-off connector', 'hose washer'],
    spec: { what: 'drainHoseJointing' },
    packs: [[1, 240]],
  },
  {
    itemId: 'drain-hose-clip',
    name: 'Hose clip and rubber sleeve for a drain cock',
    other: ['worm-drive clip', 'hose jointing'],
    spec: { what: 'drainHoseJointing' },
    packs: [
      [1, 285],
      [5, 1250],
    ],
  },
  {
    itemId: 'vent-key-brass',
    name: 'Vent key, brass',
    other: ['radiator key', 'bleed key'],
    spec: { what: 'ventKey' },
    packs: [
      [1, 95],
      [10, 640],
    ],
  },
  {
    itemId: 'vent-key-loose',
    name: 'Vent key, zinc',
    other: ['radiator key', 'bleed key'],
    spec: { what: 'ventKey' },
    packs: [
      [1, 60],
      [10, 380],
    ],
  },
  {
    itemId: 'pipe-freeze-pack',
    name: 'Pipe freezing pack, 8 to 22 mm, one pipe',
    other: ['freeze kit', 'pipe freeze'],
    spec: { what: 'pipeFreezePack' },
    packs: [
      [1, 990],
      [2, 1790],
    ],
  },
  {
    itemId: 'element-tee-chrome',
    name: 'T-piece for an element, G1/2, chrome',
    other: ['dual fuel tee', '1/2 inch'],
    spec: { what: 'elementTee', thread: 'G1/2' },
    packs: [[1, 940]],
    sellers: counterAndWarehouse,
  },
  {
    itemId: 'element-tee-white',
    name: 'T-piece for an element, G1/2, white',
    other: ['dual fuel tee', '1/2 inch'],
    spec: { what: 'elementTee', thread: 'G1/2' },
    packs: [[1, 990]],
    sellers: counterAndWarehouse,
  },
  {
    itemId: 'isolating-cap-g1-2',
    name: 'Isolating cap G1/2 with washer',
    other: ['blanking cap', 'blank cap', '1/2 inch'],
    spec: { what: 'isolatingCap', thread: 'G1/2' },
    packs: [
      [1, 125],
      [10, 1050],
    ],
  },
  {
    itemId: 'isolating-cap-g3-4',
    name: 'Isolating cap G3/4 with washer',
    other: ['blanking cap', 'valve cap', '3/4 inch'],
    spec: { what: 'isolatingCap', thread: 'G3/4' },
    packs: [
      [1, 155],
      [10, 1300],
    ],
  },
  {
    itemId: 'masking-tape-25',
    name: 'Masking tape, 25 mm, 50 m roll',
    other: ['low tack tape', 'painters tape'],
    spec: { what: 'maskingTape' },
    packs: [
      [1, 180],
      [6, 960],
    ],
  },
  {
    itemId: 'masking-tape-50',
    name: 'Masking tape, 50 mm, 50 m roll',
    other: ['low tack tape', 'painters tape'],
    spec: { what: 'maskingTape' },
    packs: [[1, 340]],
  },
  {
    itemId: 'wipes-80',
    name: 'Hand and tool wipes, tub of 80',
    other: ['wet wipes', 'site wipes'],
    spec: { what: 'wipes' },
    packs: [
      [1, 480],
      [6, 2590],
    ],
  },
]

export function waterAndSundries(): readonly SoldPart[] {
  return [
    ...doses.map(dosed),
    ...tests,
    ...elementWatts.map(element),
    ...sundries.map(({ other, packs, sellers, ...row }): SoldPart => ({
      item: { ...row, generic: true, alsoCalled: other, kind: 'sundry' },
      packs,
      sellers: sellers ?? counterAndFixings,
    })),
  ]
}
