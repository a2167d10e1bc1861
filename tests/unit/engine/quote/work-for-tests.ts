import { given } from '../../../../src-main/domain/derivation.ts'
import type { Figures } from '../../../../src-main/domain/figures.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import type { Purchase, Quote } from '../../../../src-main/domain/quote.ts'
import type { TakeOffLine } from '../../../../src-main/domain/take-off.ts'
import { liftSettings } from '../../../../src-main/engine/labour/crew-lift.ts'
import type { PlacedSwap } from '../../../../src-main/engine/takeoff/job-facts.ts'
import { answered } from '../../../answered.ts'
import { buildQuote } from '../../../../src-main/engine/quote/build-quote.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { factsOf, swapOf } from '../takeoff/facts-for-tests.ts'

/** Round figures: 60 pounds an hour is a pound a minute, and what is paid for it is half of that. */
const values: Readonly<Record<string, number>> = {
  'money.labourPencePerHour': 6000,
  'money.labourCostPencePerHour': 3000,
  'money.travelPencePerKm': 50,
  'money.travelCostPencePerKm': 20,
  'money.contingencyBasisPoints': 1000,
  'money.depositBasisPoints': 2500,
  'money.markUpPartsBasisPoints': 2000,
  'money.markUpEmitterBasisPoints': 1000,
  'tax.standardBasisPoints': 2000,
  'tax.reducedBasisPoints': 500,
  'tax.zeroBasisPoints': 0,
  'labour.accessOptimisticRatio': 1,
  'labour.accessLikelyRatio': 1,
  'labour.accessPessimisticRatio': 1,
  'labour.crewHoursPerDay': 7,
  'labour.tightAccessRatio': 0.5,
  'labour.occupiedRatio': 0.25,
  'labour.stairsRatio': 0.25,
  'labour.tileDrillRatio': 1,
  'labour.protectCarpetCount': 0,
  'labour.protectTimberCount': 2,
  'pipe.kerfMm': 2,
  ...Object.fromEntries(liftSettings.map((id) => [id, 25])),
  'lift.stairsRatio': 0.8,
  'lift.pairRatio': 2 / 3,
  'lift.threeRatio': 0.5,
}

/** Half an hour for every task, whatever comes. */
const halfHour = (taskId: string) => ({
  taskId,
  name: `Task ${taskId}`,
  optimisticMin: 30,
  likelyMin: 30,
  pessimisticMin: 30,
  source: 'invented',
})
const taskIds =
  'set-up protect-floor drain take-off set-out drill-masonry dress hang valve fill leak-check balance explain clear-up travel'

export const figures: Figures = {
  settings: Object.fromEntries(
    Object.entries(values).map(([id, value]) => [id, { says: id, value, unit: 'Ratio', source: 'the firm' }]),
  ),
  tasks: Object.fromEntries(taskIds.split(' ').map((taskId) => [taskId, halfHour(taskId)])),
  fixings: [],
}

/** The bedroom job's one swap, with an emitter of 1000 W. */
export function placedIn(job = bedroomJob(), swapId = 'swap-1'): PlacedSwap {
  const [swap] = job.swaps
  const [room] = job.rooms
  if (swap === undefined || room === undefined) throw new Error('The bedroom job has one swap in one room')
  return {
    swap: { ...swap, swapId },
    room,
    wall: room.walls[0],
    emitter: { itemId: 'test-panel', name: 'Test panel', ratedW: 1000, exponent: 1.3, dryKg: 20 },
    setOut: {},
  } as unknown as PlacedSwap
}

export const lineOf = (lineKey: string, more: Partial<TakeOffLine> = {}): TakeOffLine => ({
  lineKey,
  name: `The ${lineKey}`,
  itemKind: 'vent',
  spec: {},
  quantity: 3,
  unit: 'each',
  itemId: lineKey,
  generic: true,
  shared: false,
  swapIds: ['swap-1'],
  why: given(`Why ${lineKey}`, 3, 'each'),
  ...more,
})

export const boughtAs = (lineId: string, costPence: number, more: Partial<Purchase> = {}): Purchase => ({
  lineId,
  itemId: lineId,
  name: lineId,
  supplierId: 'town',
  supplierName: 'Town Counter',
  unit: 'each',
  need: 3,
  packs: [
    { code: 'TWO', holds: 2, count: 1, packPence: costPence },
    { code: 'ONE', holds: 1, count: 2, packPence: 0 },
  ],
  leftover: 1,
  costPence,
  why: given(`Cost of ${lineId}`, costPence, 'pence'),
  ...more,
})

export const caution = { cautionId: 'hot', says: 'Hot.', because: given('Hot', 60, 'C') }
export const tool = { toolId: 'level', name: 'Level', why: given('Brackets', 2) }
const listed = [
  lineOf('panel', { itemKind: 'emitter', quantity: 1, generic: false }),
  lineOf('vent', { shared: true, swapIds: ['swap-1', 'swap-2'] }),
  lineOf('blank', { gap: 'No blank in the catalogue.', quantity: 2, itemKind: 'blank' }),
]

/** A quote of one swap in the back bedroom: six tasks of its own and four of the whole job, half an hour each. */
export function quoteOf(job: Job = bedroomJob()): Quote {
  return answered(
    buildQuote({
      job,
      placed: [placedIn(job)],
      facts: factsOf([swapOf('swap-1', 'bedroom')]),
      parts: {
        takeOff: { lines: listed, fromBox: [], cautions: [caution], tools: [tool], why: given('Rules', 1) },
        purchases: [boughtAs('part-1', 10_000), boughtAs('part-2', 500)],
        boxUses: [],
      },
      figures,
    }),
  )
}
