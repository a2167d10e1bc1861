import type { Catalogue } from '../../src-main/domain/catalogue.ts'
import type { Emitter, Item } from '../../src-main/domain/item.ts'
import type { SupplierPrice } from '../../src-main/domain/price.ts'

const common = { generic: true } as const

function panel(heightMm: number, widthMm: number): Emitter {
  return {
    ...common,
    kind: 'emitter',
    itemId: `test-panel-${heightMm}x${widthMm}`,
    name: `Double panel radiator ${heightMm} × ${widthMm}`,
    form: { kind: 'panel', panel: 'doubleFinned' },
    finish: 'white',
    widthMm,
    heightMm,
    depthMm: 77,
    wallGapMm: 30,
    connectionOffWallMm: 65,
    pipeCentresMm: widthMm,
    ratedW: heightMm * widthMm * 0.0024,
    exponent: 1.3,
    waterLitres: 5,
    dryKg: 24,
    brackets: [],
    tappings: [],
    box: [],
  }
}

const pipe = (outsideMm: 8 | 15 | 22): Item => ({
  ...common,
  kind: 'pipe',
  itemId: `test-pipe-${outsideMm}`,
  name: `Copper pipe ${outsideMm} mm`,
  alsoCalled: ['tube'],
  spec: { material: 'copper', outsideMm },
})

const items: readonly Item[] = [
  panel(600, 1000),
  panel(600, 1200),
  panel(450, 600),
  panel(300, 2600),
  pipe(8),
  pipe(15),
  pipe(22),
  {
    ...common,
    kind: 'valve',
    itemId: 'test-trv-angled-15',
    name: 'Thermostatic valve angled 15 mm × G1/2 white',
    alsoCalled: ['TRV', "fitter's favourite"],
    spec: { role: 'thermostatic', body: 'angled', pipeMm: 15, thread: 'G1/2', finish: 'white' },
  },
  {
    ...common,
    kind: 'valve',
    itemId: 'test-lockshield-angled-15',
    name: 'Lockshield valve angled 15 mm × G1/2 white',
    spec: { role: 'lockshield', body: 'angled', pipeMm: 15, thread: 'G1/2', finish: 'white' },
  },
  {
    ...common,
    kind: 'blank',
    itemId: 'test-blank-half',
    name: 'Blank plug G1/2 with O-ring',
    spec: { thread: 'G1/2', sealing: 'oRing', finish: 'chrome' },
  },
  {
    ...common,
    kind: 'sundry',
    itemId: 'test-old-wipes',
    name: 'Wipes, an old pack',
    retired: true,
    spec: { what: 'wipes' },
  },
]

function price(itemId: string, supplierId: string, code: string, packPence: number): SupplierPrice {
  return { itemId, supplierId, code, packHolds: 1, packPence, validFrom: '2026-01-01' }
}

/** A handful of invented items, two invented suppliers and their prices. */
export const smallCatalogue: Catalogue = {
  items,
  suppliers: [
    {
      supplierId: 'north',
      name: 'Northfield Test Supplies',
      carriagePence: 900,
      carriageFreeFromPence: 15000,
    },
    { supplierId: 'south', name: 'Southmoor Test Supplies', note: 'Closed on Saturdays', carriagePence: 0 },
  ],
  prices: [
    price('test-panel-600x1000', 'north', '00126', 9850),
    price('test-panel-600x1000', 'south', 'SM-4410', 9500),
    price('test-panel-600x1200', 'north', '00127', 11200),
    { ...price('test-pipe-15', 'north', '126', 1450), packHolds: 3 },
    {
      ...price('test-pipe-22', 'north', '127/3', 2900),
      packHolds: 3,
      breaks: [{ fromPacks: 10, packPence: 2700 }],
    },
    price('test-trv-angled-15', 'south', 'TV15A', 1899),
  ],
}
