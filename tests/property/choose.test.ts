import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import emittersFile from '../../resources/catalogue/emitters.json' with { type: 'json' }
import partsFile from '../../resources/catalogue/parts.json' with { type: 'json' }
import pricesFile from '../../resources/catalogue/prices.json' with { type: 'json' }
import { emitter as emitterSchema, part } from '../../src-main/domain/item.ts'
import type { Figures } from '../../src-main/domain/figures.ts'
import type { Emitter } from '../../src-main/domain/item.ts'
import type { Job } from '../../src-main/domain/job.ts'
import { supplierPrice } from '../../src-main/domain/price.ts'
import type { SupplierPrice } from '../../src-main/domain/price.ts'
import type { CentreChoice, Obstacle, Pipe, Wall } from '../../src-main/domain/wall.ts'
import { chooseEmitter } from '../../src-main/engine/choose/choose-emitter.ts'
import { emitterStock } from '../../src-main/engine/choose/emitter-stock.ts'
import { fittedCost } from '../../src-main/engine/choose/fitted-cost.ts'
import { refusalsOf } from '../../src-main/engine/choose/refusals.ts'
import { screenEmitters } from '../../src-main/engine/choose/screen-emitters.ts'
import { wallLimits } from '../../src-main/engine/choose/wall-limits.ts'
import { emitterOutput } from '../../src-main/engine/heat/emitter-output.ts'
import { shelfOf } from '../../src-main/engine/takeoff/shelf.ts'
import { fitWall } from '../../src-main/engine/wall/fit-wall.ts'
import { answered } from '../answered.ts'
import { defaultFigures } from '../figures-for-tests.ts'
import { bedroomJob } from '../job-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const emitters = emittersFile.items.map((item) => emitterSchema.parse(item))
const parts = partsFile.items.map((item) => part.parse(item))
const prices = pricesFile.prices.map((price) => supplierPrice.parse(price))
const emitterIds = new Set(emitters.map((one) => one.itemId))
const partPrices = prices.filter((price) => !emitterIds.has(price.itemId))

const mm = (min: number, max: number) => fc.integer({ min, max })
const maybe = <T>(some: fc.Arbitrary<T>) => fc.option(some, { nil: undefined })

/** A small catalogue: emitters of the shipped one, changed a little, at any price. */
const offers = fc.array(
  fc.record({
    like: fc.nat(emitters.length - 1),
    moreMm: mm(-100, 300),
    times: fc.double({ min: 0.5, max: 3, noNaN: true }),
    dryKg: fc.constantFrom(8, 24, 26, 60),
    boxed: fc.boolean(),
    rated: maybe(fc.constant({ flowC: 90, returnC: 70, roomC: 20 })),
    asked: fc.array(
      fc.record({
        packPence: mm(1, 30_000),
        packHolds: fc.constantFrom(1, 1, 1, 2, 0.5),
        less: maybe(mm(0, 5000)),
      }),
      { maxLength: 3 },
    ),
  }),
  { minLength: 1, maxLength: 14 },
)
type Offer = typeof offers extends fc.Arbitrary<readonly (infer T)[]> ? T : never

function emitterOf({ like, moreMm, times, dryKg, boxed, rated }: Offer, index: number): Emitter {
  const model = emitters[like] ?? emitters[0]
  if (model === undefined) throw new Error('The shipped catalogue has no emitter')
  return {
    ...model,
    itemId: `e${index}`,
    name: `${model.name} ${index}`,
    widthMm: model.widthMm + moreMm + 150,
    pipeCentresMm: model.pipeCentresMm + moreMm + 150,
    ratedW: Math.round(model.ratedW * times),
    dryKg,
    box: boxed ? model.box : [],
    ...(rated === undefined ? {} : { rating: rated }),
  }
}

function pricesOf({ asked }: Offer, index: number): readonly SupplierPrice[] {
  return asked.map(({ packPence, packHolds, less }, at) => ({
    itemId: `e${index}`,
    supplierId: `s${at % 2}`,
    code: `c${at}`,
    packHolds,
    packPence,
    validFrom: '2026-01-01',
    ...(less === undefined ? {} : { breaks: [{ fromPacks: 2, packPence: Math.min(less, packPence) }] }),
  }))
}

/** Some parts cheaper by the dozen, so that a larger need may cost less than a smaller one. */
const cheaperByMany: readonly SupplierPrice[] = partPrices.map((price, at) =>
  at % 3 === 0 ? { ...price, breaks: [{ fromPacks: 2, packPence: Math.floor(price.packPence / 4) }] } : price,
)

const pipes = fc.constantFrom<readonly Pipe['side'][]>([], ['left'], ['left', 'right'])
const centres = fc.constantFrom<CentreChoice['kind']>('middleOfWall', 'at', 'fromPipe', 'betweenPipes')
const obstacles = fc.array(
  fc.record({
    kind: fc.constantFrom<Obstacle['kind']>('window', 'windowBoard', 'socket', 'basin', 'cable', 'other'),
    xMm: mm(-200, 3600),
    yMm: mm(0, 2300),
    widthMm: mm(0, 1500),
    heightMm: mm(0, 900),
    clearanceMm: maybe(mm(0, 200)),
  }),
  { maxLength: 3 },
)
const places = fc.record({
  widthMm: mm(800, 4500),
  heightMm: mm(1000, 2600),
  build: fc.constantFrom<Wall['build']>('solidMasonry', 'hollowBlock', 'boardOnStuds', 'boardOnDabs'),
  finish: fc.constantFrom<Wall['finish']>('paint', 'tile'),
  skirtingHeightMm: mm(0, 200),
  bottomMm: mm(60, 300),
  obstacles,
  pipes,
  pipeMm: mm(100, 2500),
  apartMm: mm(300, 1600),
  fixed: fc.boolean(),
  kind: centres,
  atMm: mm(200, 3000),
  roughWPerM3: mm(1, 40),
  valves: fc.constantFrom('thermostaticAndLockshield' as const, 'keep' as const),
  studs: maybe(
    fc.record({
      firstMm: mm(0, 400),
      spacingMm: fc.constantFrom(400, 600),
      widthMm: fc.constantFrom(38, 47),
    }),
  ),
  tiledToMm: maybe(mm(150, 900)),
  marginBasisPoints: fc.constantFrom(0, 0, 1500),
  favourites: fc.uniqueArray(fc.constantFrom(...parts.map((one) => one.itemId)), { maxLength: 12 }),
})
type Place = typeof places extends fc.Arbitrary<infer T> ? T : never

function pipesOf({ pipes: sides, pipeMm, apartMm, fixed }: Place): readonly Pipe[] {
  return sides.map((side) => ({
    side,
    xMm: side === 'left' ? pipeMm : pipeMm + apartMm,
    from: 'floor',
    material: 'copper',
    outsideMm: 15,
    carries: 'unknown',
    fixed,
  }))
}

function centreOf({ kind, pipes: sides, atMm }: Place): CentreChoice {
  if (kind === 'betweenPipes' && sides.length === 2) return { kind }
  if (kind === 'fromPipe' && sides.length > 0) return { kind, side: 'left' }
  return kind === 'at' ? { kind, xMm: atMm } : { kind: 'middleOfWall' }
}

/** The firm's figures, with a margin on everything in place of its mark-up. */
function withMargin(value: number): Figures {
  const margin = { says: 'Margin', unit: 'BasisPoints', value, source: "the firm's own figure" }
  const own = { 'money.marginEmitterBasisPoints': margin, 'money.marginPartsBasisPoints': margin }
  return value === 0 ? figures : { ...figures, settings: { ...figures.settings, ...own } }
}

function trialOf(place: Place, offered: readonly Offer[]) {
  const asked = bedroomJob()
  const [room] = asked.rooms
  const [swap] = asked.swaps
  const [plain] = room?.walls ?? []
  if (room === undefined || swap === undefined || plain === undefined) throw new Error('No room to try')
  const { widthMm, heightMm, build, finish, skirtingHeightMm, bottomMm, valves, studs, tiledToMm } = place
  const wall: Wall = {
    ...plain,
    widthMm,
    heightMm,
    build,
    finish,
    skirtingHeightMm,
    ...(build === 'boardOnStuds' && studs !== undefined ? { studs } : {}),
    ...(finish === 'tile' && tiledToMm !== undefined ? { tiledToMm } : {}),
    obstacles: place.obstacles.map(({ clearanceMm, ...one }, at) => ({
      ...one,
      obstacleId: `o${at}`,
      name: `Thing ${at}`,
      ...(clearanceMm === undefined ? {} : { clearanceMm }),
    })),
  }
  const heated = { ...room, walls: [wall], heat: { volumeM3: 28.8, roughWPerM3: place.roughWPerM3 } }
  const job: Job = { ...asked, rooms: [heated], swaps: [] }
  const shelf = shelfOf({
    items: [...offered.map(emitterOf), ...parts],
    prices: [...offered.flatMap(pricesOf), ...cheaperByMany],
    suppliers: [],
    favourites: place.favourites,
  })
  const here = { bottomMm, pipes: pipesOf(place), centre: centreOf(place) }
  const trial = { job, room: heated, wall, shelf, figures: withMargin(place.marginBasisPoints) }
  return { ...trial, swap: { ...swap, ...here, valves: { ...swap.valves, kind: valves } } }
}

const wants = fc.record(
  {
    kind: fc.constantFrom<Emitter['form']['kind']>('panel', 'column', 'towelRail'),
    finish: fc.constantFrom<Emitter['finish']>('white', 'chrome'),
    maxHeightMm: mm(300, 1500),
    maxWidthMm: mm(300, 1500),
  },
  { requiredKeys: [] },
)
type Want = typeof wants extends fc.Arbitrary<infer T> ? T : never

function wantedFaults({ form, finish, heightMm, widthMm }: Emitter, want: Want): number {
  return [
    want.kind !== undefined && want.kind !== form.kind,
    want.finish !== undefined && want.finish !== finish,
    heightMm > (want.maxHeightMm ?? heightMm),
    widthMm > (want.maxWidthMm ?? widthMm),
  ].filter(Boolean).length
}

/** Every emitter that fits by the wall's own rule and is warm enough by the heat's own rule, worked up in full and sorted. */
function byTryingAll(trial: ReturnType<typeof trialOf>, needW: number) {
  const { wall, swap, room, job, shelf } = trial
  const { flowC, returnC } = job.survey.system
  const tried = [...shelf.emitters.values()].flatMap((emitter) => {
    const { ratedW, exponent, rating } = emitter
    const at = { flowC, returnC, roomC: room.roomC }
    const { watts } = answered(emitterOutput({ ratedW, exponent, rating, ...at }))
    const { centre, bottomMm, pipes: found } = swap
    const fit = answered(fitWall({ wall, emitter, valves: {}, centre, bottomMm, pipes: found }, figures))
    if (!fit.fits || Math.round(watts) < Math.round(needW)) return []
    const { fittedPence, gaps } = answered(fittedCost(emitter, trial))
    const ownGap = (shelf.prices.get(emitter.itemId) ?? []).length === 0
    return ownGap ? [] : [{ emitter, watts, fittedPence, gapped: gaps.length > 0 ? 1 : 0 }]
  })
  return tried.toSorted(
    (a, b) =>
      a.gapped - b.gapped ||
      a.fittedPence - b.fittedPence ||
      Math.round(b.watts) - Math.round(a.watts) ||
      a.emitter.widthMm - b.emitter.widthMm ||
      (a.emitter.itemId < b.emitter.itemId ? -1 : 1),
  )
}

const nothingWanted = { othersW: 0, othersWhy: [], want: {}, mostTold: 1000, mostWorked: 1000 }

describe('choosing an emitter', () => {
  it('ranks as if every emitter had been worked up in full: the least price never changes the order', () => {
    fc.assert(
      fc.property(places, offers, mm(1, 4), (place, offered, most) => {
        const trial = trialOf(place, offered)
        const answer = answered(chooseEmitter({ ...nothingWanted, trial, most }))
        const wanted = byTryingAll(trial, answer.needW)
        expect(answer.certain).toBe(true)
        expect(answer.ranked.map(({ emitter, fittedPence }) => [emitter.itemId, fittedPence])).toEqual(
          wanted.slice(0, most).map(({ emitter, fittedPence }) => [emitter.itemId, fittedPence]),
        )
        const real = new Map(wanted.map(({ emitter, fittedPence }) => [emitter.itemId, fittedPence]))
        for (const { itemId, leastPence } of answer.dearer) {
          expect(leastPence).toBeLessThanOrEqual(real.get(itemId) ?? -1)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('accounts for every emitter once, and gives each refused one a reason', () => {
    fc.assert(
      fc.property(places, offers, (place, offered) => {
        const answer = answered(chooseEmitter({ ...nothingWanted, trial: trialOf(place, offered), most: 2 }))
        const ids = [
          ...answer.ranked.map(({ emitter }) => emitter.itemId),
          ...answer.dearer.map(({ itemId }) => itemId),
          ...answer.refused.map(({ itemId }) => itemId),
        ]
        expect(ids.toSorted()).toEqual(offered.map((_, index) => `e${index}`).toSorted())
        expect(answer.looked).toBe(offered.length)
        expect(answer.refused.filter(({ reasons }) => reasons.length === 0)).toEqual([])
      }),
      { numRuns: 100 },
    )
  })

  it('sees the wall as fitWall does, and the heat as emitterOutput does', () => {
    fc.assert(
      fc.property(places, offers, fc.tuple(mm(1, 1500), wants), (place, offered, [needW, want]) => {
        const trial = trialOf(place, offered)
        const { wall, swap, job, room } = trial
        const { centre, bottomMm, pipes: found } = swap
        const { flowC, returnC } = job.survey.system
        const at = { flowC, returnC, roomC: room.roomC }
        const limits = answered(wallLimits({ wall, centre, bottomMm, pipes: found }, figures))
        const screen = { limits, at, needW, othersW: 0, share: 1, want }
        const stock = emitterStock(trial.shelf)
        const screened = screenEmitters(stock, screen)
        const about = { heat: 0, wall: 0, obstacle: 0, wanted: 0, price: 0, listing: 0 }
        for (const [index, emitter] of stock.emitters.entries()) {
          const { ratedW, exponent, rating } = emitter
          const { watts } = answered(emitterOutput({ ratedW, exponent, rating, ...at }))
          const fit = answered(
            fitWall({ wall, emitter, valves: {}, centre, bottomMm, pipes: found }, figures),
          )
          const sold = (trial.shelf.prices.get(emitter.itemId) ?? []).length > 0
          const suits = fit.fits && Math.round(watts) >= needW && sold
          expect(screened.givesW[index]).toBe(watts)
          expect(screened.suitable.includes(index)).toBe(suits && wantedFaults(emitter, want) === 0)
          const packPence = stock.packPence[index] ?? -1
          const shape = stock.shapes[stock.shapeAt[index] ?? 0]
          if (shape === undefined) throw new Error('An emitter has no shape')
          const reasons = refusalsOf(emitter, { ...shape, givesW: watts, packPence }, screen)
          expect(reasons.filter((reason) => reason.about === 'wanted')).toHaveLength(
            wantedFaults(emitter, want),
          )
          expect(reasons.every((reason) => reason.about === 'wanted')).toBe(suits)
          expect(screened.reasons[index]).toBe(reasons.length)
          for (const kind of new Set(reasons.map((reason) => reason.about))) about[kind] += 1
        }
        expect(screened.counted).toEqual(about)
      }),
      { numRuns: 300 },
    )
  })
})
