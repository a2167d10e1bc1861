import type { Figures } from '../../../../src-main/domain/figures.ts'
import type { Emitter, Part } from '../../../../src-main/domain/item.ts'
import type { SupplierPrice } from '../../../../src-main/domain/price.ts'
import type { Pipe, Wall } from '../../../../src-main/domain/wall.ts'
import type { Trial } from '../../../../src-main/engine/choose/fitted-cost.ts'
import { shelfOf } from '../../../../src-main/engine/takeoff/shelf.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { emitterForTests } from '../../renderer/emitter-for-tests.ts'

const figures = defaultFigures('2026-03-02')

/** Minutes of the tasks that take any here; every other takes none. */
const minutes: Readonly<Record<string, number>> = {
  'leak-check': 12,
  'drill-masonry': 3,
  'drill-stud': 3,
  hang: 5,
  'alter-pull': 4,
}

const set: Readonly<Record<string, number>> = {
  'labour.accessOptimisticRatio': 1,
  'labour.accessLikelyRatio': 1,
  'labour.accessPessimisticRatio': 1,
  'money.labourPencePerHour': 6000,
  'money.markUpEmitterBasisPoints': 2000,
  'money.markUpPartsBasisPoints': 5000,
  'money.marginEmitterBasisPoints': 0,
  'money.marginPartsBasisPoints': 0,
  'labour.tileDrillRatio': 1,
  'lift.onePersonKg': 25,
  'wall.valveReachMm': 3,
  'wall.pullCopperMm': 30,
}

/** A minute is a pound; an emitter is sold at a fifth more than it costs, a part at half as much again; one plug holds all. */
export const roundFigures: Figures = {
  settings: Object.fromEntries(
    Object.entries(figures.settings).map(([id, one]) => [id, { ...one, value: set[id] ?? one.value }]),
  ),
  tasks: Object.fromEntries(
    Object.entries(figures.tasks).map(([id, task]) => {
      const min = minutes[id] ?? 0
      return [id, { ...task, optimisticMin: min, likelyMin: min, pessimisticMin: min }]
    }),
  ),
  fixings: [
    {
      fixingId: 'plug',
      name: 'Plug',
      builds: ['solidMasonry'],
      holeMm: 6,
      depthMm: 40,
      plug: { bitMm: 6, lengthMm: 30 },
      screw: { diameterMm: 4.5, lengthMm: 50 },
      allowedShearN: 9000,
      allowedPullN: 9000,
      source: 'made up',
    },
  ],
}

/** A panel on two brackets of two holes each, light enough for one person. */
export function panel(itemId: string, changes: Partial<Emitter> = {}): Emitter {
  const holesAt = (acrossMm: number) => [
    { acrossMm, upMm: 100 },
    { acrossMm, upMm: 500 },
  ]
  const brackets = [
    { name: 'left', upper: true, holes: holesAt(-300) },
    { name: 'right', upper: true, holes: holesAt(300) },
  ]
  return emitterForTests({ itemId, name: `Panel ${itemId}`, dryKg: 10, waterLitres: 2, brackets, ...changes })
}

export function priceOf(itemId: string, packPence: number, more: Partial<SupplierPrice> = {}): SupplierPrice {
  const price = { itemId, supplierId: 'shop', code: itemId, packHolds: 1, packPence, validFrom: '2026-01-01' }
  return { ...price, ...more }
}

const screw = (itemId: string, diameterMm: number, lengthMm: number): Part => ({
  itemId,
  name: itemId,
  kind: 'screw',
  generic: true,
  spec: { diameterMm, lengthMm },
})
/** Of the two only the first goes into a plug; the other goes into a backing board. */
const screws = [screw('plug-screw', 4.5, 50), screw('board-screw', 5, 30)]

type Made = {
  readonly emitters: readonly Emitter[]
  readonly prices: readonly SupplierPrice[]
  readonly pipes?: readonly Pipe[]
  readonly wall?: Partial<Wall>
  readonly tenScrewsPence?: number
}

/** Ten screws are a pound, so a pound and a half as sold; ten for a board are three pounds as sold. */
const ten = (itemId: string, packPence: number) => priceOf(itemId, packPence, { packHolds: 10 })

/** One place on the window wall of the bedroom, on the ground floor, where no old emitter hangs; its middle is at 1600 mm. */
export function trialForTests(made: Made): Trial {
  const { emitters, prices, pipes = [], wall = {}, tenScrewsPence = 100 } = made
  const whole = bedroomJob()
  const [room] = whole.rooms
  const [swap] = whole.swaps
  if (room?.walls[0] === undefined || swap === undefined) throw new Error('The bedroom has a wall and a swap')
  const { existing: _existing, emitterId: _emitterId, ...place } = swap
  const job = { ...whole, site: { addressLines: [], travelKm: 0, upperFloors: 0 }, swaps: [] }
  return {
    job,
    room: { ...room, storey: 0 },
    wall: { ...room.walls[0], obstacles: [], ...wall },
    swap: { ...place, pipes, centre: { kind: 'middleOfWall' } },
    shelf: shelfOf({
      items: [...emitters, ...screws],
      prices: [...prices, ten('plug-screw', tenScrewsPence), ten('board-screw', 200)],
      suppliers: [],
    }),
    figures: roundFigures,
  }
}
