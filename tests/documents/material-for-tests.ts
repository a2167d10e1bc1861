import type { QuoteMaterial } from '../../src-main/documents/customer-quote-view.ts'
import { given } from '../../src-main/domain/derivation.ts'
import type { Firm } from '../../src-main/domain/firm.ts'
import type { Emitter } from '../../src-main/domain/item.ts'
import type { Quote, QuoteLine } from '../../src-main/domain/quote.ts'
import type { SetOut } from '../../src-main/domain/set-out.ts'
import { bedroomJob } from '../job-for-tests.ts'

/** A word that stands wherever only the firm may look, and so must stand on no customer's paper. */
export const canary = 'Kanarienvogel'
const secret = given(canary, 987_654, canary, canary)

export const testFirm: Firm = {
  name: 'Test Heating',
  addressLines: ['2 Example Yard', 'Sampleton'],
  phone: '01632 960002',
  email: 'office@test-heating.example.com',
  taxNumber: 'GB 000 0000 00',
  registrations: ['Test register 1234'],
  terms: 'The balance is due when the work is done.\nOld radiators are taken away.',
}

export const testEmitter: Emitter = {
  itemId: 'test-panel-600x1000',
  name: 'Double panel radiator, 600 high x 1000 wide',
  generic: true,
  kind: 'emitter',
  form: { kind: 'panel', panel: 'doubleTwoFins' },
  finish: 'white',
  widthMm: 1000,
  heightMm: 600,
  depthMm: 100,
  wallGapMm: 35,
  connectionOffWallMm: 85,
  pipeCentresMm: 1060,
  ratedW: 1600,
  exponent: 1.3,
  waterLitres: 6,
  dryKg: 32,
  brackets: [],
  tappings: [],
  box: [],
}

export const testSetOut: SetOut = {
  centreMm: 1550,
  bottomMm: 150,
  holes: [
    {
      id: 'A1',
      bracket: 'left',
      upper: true,
      xMm: 1200,
      yMm: 690,
      fromCentreMm: -350,
      drillMm: 8,
      depthMm: 60,
    },
    {
      id: 'B1',
      bracket: 'right',
      upper: true,
      xMm: 1900,
      yMm: 690,
      fromCentreMm: 350,
      drillMm: 8,
      depthMm: 60,
    },
  ],
  valves: [
    { side: 'left', xMm: 1020, yMm: 130 },
    { side: 'right', xMm: 2080, yMm: 130 },
  ],
  pipeOffsets: [
    {
      side: 'left',
      offsetMm: -12,
      riseMm: 0,
      outMm: 0,
      remedy: 'pull',
      elbows: 0,
      couplers: 0,
      pipeMm: 0,
      clips: 0,
      tailMm: 0,
      why: secret,
    },
    {
      side: 'right',
      offsetMm: 80,
      riseMm: -20,
      outMm: 0,
      remedy: 'repipe',
      elbows: 2,
      couplers: 1,
      pipeMm: 240,
      clips: 1,
      tailMm: 0,
      why: secret,
    },
  ],
  fixing: {
    fixingId: 'plug-8',
    name: 'Wall plug 8 x 50 with screw 6 x 70',
    load: { shearN: 100, pullN: 50, shearUse: 0.4, pullUse: 0.25, holds: true, why: secret },
    needsBoard: false,
  },
  warnings: [],
  why: secret,
}

type Priced = readonly [
  section: QuoteLine['section'],
  name: string,
  quantity: number,
  unit: QuoteLine['unit'],
  netPence: number,
  rateKey?: string,
]

export const testLines: readonly Priced[] = [
  ['emitter', 'Double panel radiator, 600 high x 1000 wide', 1, 'each', 123_456],
  ['parts', 'Thermostatic valve, angled, 15 mm x G1/2, white', 1, 'each', 1901],
  ['parts', 'Lockshield valve, angled, 15 mm x G1/2, white', 1, 'each', 667],
  ['parts', 'Copper pipe, 15 mm', 0.24, 'm', 333],
  ['parts', 'Filler, ready-mixed', 18.6, 'ml', 1],
  ['labour', 'Labour in the Back bedroom: Double panel radiator', 158, 'min', 13_751],
  ['labour', 'Labour for the job as a whole: drain and fill', 97, 'min', 8397],
  ['travel', 'Travel there and back', 24, 'km', 1080],
  ['other', 'Loft hatch, draught strip', 1, 'sum', 2000, 'reduced'],
]

/** Priced lines with their totals: standard 20 %, reduced 5 %, each rounded half up on its own sum. */
export function quoteOf(priced: readonly Priced[], changes: Partial<Quote> = {}): Quote {
  const lines = priced.map(([section, name, quantity, unit, netPence, rateKey], index) => ({
    lineId: `line-${index + 1}`,
    section,
    name,
    quantity,
    unit,
    netPence,
    rateKey: rateKey ?? 'standard',
    shared: false,
    swapIds: ['swap-1'],
    generic: section === 'emitter' || index === 1,
    why: secret,
  }))
  const netAt = (rateKey: string) =>
    lines.filter((line) => line.rateKey === rateKey).reduce((sum, line) => sum + line.netPence, 0)
  const taxes = [
    { rateKey: 'standard', rateName: 'VAT, standard rate', basisPoints: 2000 },
    { rateKey: 'reduced', rateName: 'VAT, reduced rate', basisPoints: 500 },
  ].flatMap((rate) => {
    const netPence = netAt(rate.rateKey)
    return netPence === 0
      ? []
      : [{ ...rate, netPence, taxPence: Math.round((netPence * rate.basisPoints) / 10_000) }]
  })
  const netPence = lines.reduce((sum, line) => sum + line.netPence, 0)
  const grossPence = taxes.reduce((sum, tax) => sum + tax.taxPence, netPence)
  return {
    lines,
    options: [
      {
        optionId: 'flush',
        name: 'Clean the whole system',
        netPence: 18_501,
        rateKey: 'standard',
        chosen: false,
      },
      {
        optionId: 'strip',
        name: 'Loft hatch, draught strip',
        netPence: 2000,
        rateKey: 'reduced',
        chosen: true,
      },
    ],
    labour: { expectedMin: 255, sdMin: 20, p50Min: 255, p80Min: 272, tasks: [], why: secret },
    totals: { netPence, taxes, grossPence, depositPence: 45_433 },
    gaps: [],
    cautions: [
      { cautionId: 'asbestos', says: 'This building may hold asbestos. If in doubt stop.', because: secret },
      {
        cautionId: 'hidden-services',
        says: 'Look for hidden pipes and cables before drilling.',
        because: secret,
      },
    ],
    tools: [],
    warmth: [
      {
        swapId: 'swap-1',
        roomName: 'Back bedroom',
        needW: 1008,
        givesW: 918,
        rough: true,
        enough: false,
        says: canary,
        why: secret,
      },
    ],
    internal: {
      costPence: 98_765,
      marginPence: 43_219,
      labourCostPence: 12_121,
      purchases: [
        {
          lineId: 'line-1',
          itemId: 'test-panel-600x1000',
          name: canary,
          supplierId: 'canary',
          supplierName: `${canary} Supplies`,
          unit: 'each',
          need: 1,
          packs: [{ code: `${canary}-1`, holds: 1, count: 1, packPence: 98_765 }],
          leftover: 0,
          costPence: 98_765,
          why: secret,
        },
      ],
    },
    why: secret,
    ...changes,
  }
}

/** All that a customer's view is made from, with the canary wherever the customer has no business. */
export function testMaterial(changes: Partial<QuoteMaterial> = {}): QuoteMaterial {
  const job = bedroomJob()
  const survey = { ...job.survey, notes: canary }
  const rooms = job.rooms.map((room) => ({ ...room, note: canary }))
  const swaps = job.swaps.map((swap) => ({ ...swap, note: canary }))
  return {
    job: { ...job, title: canary, survey, rooms, swaps, waivers: [{ gapKey: 'gap', reason: canary }] },
    quote: quoteOf(testLines),
    firm: testFirm,
    takeOffLines: [
      {
        lineKey: 'gap',
        name: 'pipe collar (white)',
        itemKind: 'collar',
        spec: {},
        quantity: 2,
        unit: 'each',
        generic: false,
        gap: canary,
        shared: false,
        swapIds: ['swap-1'],
        why: secret,
      },
    ],
    setOuts: { 'swap-1': testSetOut },
    emitters: { 'swap-1': testEmitter },
    reference: 'TEST-7',
    quotedOn: '2026-03-02',
    validDays: 30,
    taxBasisPoints: { standard: 2000, reduced: 500, zero: 0 },
    ...changes,
  }
}
