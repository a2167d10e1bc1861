/**
 * How long it takes to choose among 50,000 emitters, each beside a bare loop of `x ** n` over the same, in one run.
 * Run by `node tests/bench/choose.ts`. It prints medians with the least and the most; it holds nothing to any of them.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Catalogue } from '../../src-main/domain/catalogue.ts'
import type { Emitter } from '../../src-main/domain/item.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job, Swap } from '../../src-main/domain/job.ts'
import type { SupplierPrice } from '../../src-main/domain/price.ts'
import { placeFromInput } from '../../src-main/desk/choosing/place-from-input.ts'
import { bundledCatalogue } from '../../src-main/desk/bundled-catalogue.ts'
import type { Desk } from '../../src-main/desk/desk.ts'
import { figuresInForce } from '../../src-main/desk/figures-in-force.ts'
import { answer } from '../../src-main/desk/router.ts'
import { chooseEmitter } from '../../src-main/engine/choose/choose-emitter.ts'
import { emitterStock } from '../../src-main/engine/choose/emitter-stock.ts'
import type { EmitterStock } from '../../src-main/engine/choose/emitter-stock.ts'
import { screenEmitters } from '../../src-main/engine/choose/screen-emitters.ts'
import { wallLimits } from '../../src-main/engine/choose/wall-limits.ts'
import { shelfOf } from '../../src-main/engine/takeoff/shelf.ts'
import { seedCatalogue } from '../../src-main/store/catalogue.ts'
import { closeStore, openStore, writing } from '../../src-main/store/store.ts'
import { answered } from '../answered.ts'

const howMany = 50_000
const today = '2026-11-25'
const now = () => `${today}T09:00:00Z`

/** The same numbers in every run: a generator of least effort, from 0 to 1. */
function numbersFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 16_807) % 2_147_483_647
    return state / 2_147_483_647
  }
}

/** The generic catalogue's emitters over and over, each a little other in size, heat, exponent and price. */
function manyLike({ items, prices, suppliers }: Catalogue): Catalogue {
  const models = items.filter((item): item is Emitter => item.kind === 'emitter')
  const ids = new Set(models.map(({ itemId }) => itemId))
  const asked = Map.groupBy(prices, ({ itemId }) => itemId)
  const next = numbersFrom(1)
  const emitters: Emitter[] = []
  const ownPrices: SupplierPrice[] = []
  for (let at = 0; at < howMany; at += 1) {
    const model = models[at % models.length]
    if (model === undefined) throw new Error('The shipped catalogue has no emitter')
    const moreMm = Math.round((next() - 0.5) * 20) * 10
    const one: Emitter = {
      ...model,
      itemId: `varied-${at}`,
      name: `${model.name}, number ${at}`,
      ratedW: Math.round(model.ratedW * (0.7 + 0.6 * next())),
      exponent: Math.round((model.exponent + (next() - 0.5) * 0.1) * 1000) / 1000,
      widthMm: Math.max(300, model.widthMm + moreMm),
      pipeCentresMm: Math.max(250, model.pipeCentresMm + moreMm),
      ...(at % 7 === 0 ? { rating: { flowC: 90, returnC: 70, roomC: 20 } } : {}),
    }
    emitters.push(one)
    for (const price of asked.get(model.itemId) ?? []) {
      const packPence = Math.round(price.packPence * (0.8 + 0.6 * next()))
      ownPrices.push({ ...price, itemId: one.itemId, code: `${price.code}-${at}`, packPence })
    }
  }
  return {
    items: [...emitters, ...items.filter(({ itemId }) => !ids.has(itemId))],
    prices: [...ownPrices, ...prices.filter(({ itemId }) => !ids.has(itemId))],
    suppliers,
  }
}

/** By the clock, and the median of what the processor did, which says more on a busy machine. */
type Times = {
  readonly median: number
  readonly least: number
  readonly most: number
  readonly cpuMs: number
}
const runs = 9

async function timed(work: () => unknown): Promise<Times> {
  for (let warm = 0; warm < 3; warm += 1) await work()
  const took: number[] = []
  const busy: number[] = []
  for (let run = 0; run < runs; run += 1) {
    const from = performance.now()
    const before = process.cpuUsage()
    await work()
    const { user, system } = process.cpuUsage(before)
    busy.push((user + system) / 1000)
    took.push(performance.now() - from)
  }
  const sorted = took.toSorted((a, b) => a - b)
  return {
    median: sorted[runs >> 1] ?? 0,
    least: sorted[0] ?? 0,
    most: sorted[runs - 1] ?? 0,
    cpuMs: busy.toSorted((a, b) => a - b)[runs >> 1] ?? 0,
  }
}

function print(name: string, { median, least, most, cpuMs }: Times, bare: Times): void {
  const ratio = `processor ${cpuMs.toFixed(2)} ms, ${(cpuMs / bare.cpuMs).toFixed(1)} x bare`
  const spread = `${least.toFixed(2)} to ${most.toFixed(2)}`
  console.log(`${name.padEnd(44)}${median.toFixed(2).padStart(9)} ms  (${spread})  ${ratio}`)
}

let kept = 0
/** What the heat alone costs: each rated output times one ratio to its own exponent. */
function bareLoop({ ratedW, exponent }: EmitterStock): void {
  let sum = 0
  for (let at = 0; at < ratedW.length; at += 1) sum += (ratedW[at] ?? 0) * 0.6 ** (exponent[at] ?? 1)
  kept += sum
}

async function measureEngine(catalogue: Catalogue, job: Job, { roomId, wallId, swapId }: Swap, desk: Desk) {
  const place = answered(placeFromInput({ job, roomId, wallId, swapId }, today))
  const figures = answered(await figuresInForce(desk, today))
  const shelf = shelfOf(catalogue)
  const { wall, room, swap } = place
  const { centre, bottomMm, pipes } = swap
  const { flowC, returnC } = place.job.survey.system
  const limits = answered(wallLimits({ wall, centre, bottomMm, pipes }, figures))
  const at = { flowC, returnC, roomC: room.roomC }
  const asked = {
    trial: { ...place, shelf, figures },
    othersW: 0,
    othersWhy: [],
    want: {},
    mostTold: 500,
    mostWorked: 1000,
  }
  const stock = emitterStock(shelf)
  const whole = () => answered(chooseEmitter({ ...asked, stock, most: 10 }))
  const { needW, counted, ranked, workedUp, certain } = whole()
  const screen = { limits, at, needW, othersW: 0, share: 1, want: {} }
  const sure = certain ? 'certain' : 'not certain'
  console.log(`\n${room.name}, ${flowC}/${returnC}, needs ${Math.round(needW)} W: ${ranked.length} ranked,`)
  console.log(`${counted.dearer} dearer, ${counted.refused} refused, ${workedUp} worked up in full, ${sure}`)
  const bare = await timed(() => bareLoop(stock))
  print('bare loop of x ** n', bare, bare)
  print('screening', await timed(() => screenEmitters(stock, screen)), bare)
  print('laying the stock out in columns', await timed(() => emitterStock(shelf)), bare)
  print('engine answer, first 10', await timed(whole), bare)
  const first = () => answered(chooseEmitter({ ...asked, stock, most: 1, mostTold: 10 }))
  print('engine answer, the cheapest alone', await timed(first), bare)
  return bare
}

const folder = await mkdtemp(join(tmpdir(), 'choose-'))
const catalogue = manyLike(await bundledCatalogue())
const store = answered(await openStore({ folder, now }))
const desk: Desk = { today, now, store, dataFolder: folder, papersFolder: folder, mayChoosePath: false }
try {
  await writing(store, (tx) => seedCatalogue(tx, catalogue, 'varied'))
  const sample = new URL('../../resources/sample/two-rooms.job.json', import.meta.url)
  const job = jobSchema.parse(JSON.parse(await readFile(sample, 'utf8')))
  const from = performance.now()
  for (const [index, swap] of job.swaps.entries()) {
    const { roomId, wallId, swapId } = swap
    const ask = () => answer('emitter.choose', { job, roomId, wallId, swapId }, desk)
    const begun = performance.now()
    answered(await ask())
    const first = performance.now() - begun
    const bare = await measureEngine(catalogue, job, swap, desk)
    print('request through the router', await timed(ask), bare)
    if (index === 0)
      console.log(`the first request of all, the data file just filled: ${first.toFixed(0)} ms`)
  }
  console.log(`\n${howMany} emitters, ${runs} runs each, ${((performance.now() - from) / 1000).toFixed(0)} s`)
  if (!Number.isFinite(kept)) throw new Error('The bare loop came to no number')
} finally {
  await closeStore(store)
  await rm(folder, { recursive: true })
}
