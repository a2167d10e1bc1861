import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { requests } from '../../src-main/contract/requests.ts'
import type { InputOf, RequestName } from '../../src-main/contract/requests.ts'
import { job as jobShape } from '../../src-main/domain/job.ts'
import sample from '../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { bathroomWall, towelRail } from '../unit/engine/wall/walls-for-tests.ts'
import { askTerminal, removeFolder, startHost, tempFolder } from './doors-for-tests.ts'
import type { StartedHost } from './doors-for-tests.ts'
import { startStandIn } from './stand-in/start-stand-in.ts'
import type { StandIn } from './stand-in/start-stand-in.ts'

const job = jobShape.parse(sample)
const rail = { ratedW: 600, exponent: 1.25 }
const placed = {
  wall: bathroomWall,
  emitter: towelRail,
  valves: {},
  centre: { kind: 'middleOfWall' },
  bottomMm: 200,
} as const

/** One input for every request that only computes. */
const inputs: { readonly [N in RequestName]?: InputOf<N> } = {
  'app.about': {},
  'buy.plan': { job },
  'buy.split': {
    lines: [{ lineId: 'valves', itemId: 'valve', need: 2, unit: 'each' }],
    offers: [
      { lineId: 'valves', supplierId: 'town', packs: [{ code: 'V1', holds: 1, pence: 1000 }] },
      { lineId: 'valves', supplierId: 'moor', packs: [{ code: 'MV', holds: 1, pence: 900 }] },
    ],
    suppliers: [
      { supplierId: 'town', name: 'Town Counter', carriagePence: 500 },
      { supplierId: 'moor', name: 'Moor Supplies', carriagePence: 600 },
    ],
  },
  'catalogue.item': { itemId: job.swaps[0]?.emitterId ?? '' },
  'catalogue.search': { text: 'towel rail', most: 5 },
  'emitter.choose': {
    job,
    roomId: job.swaps[0]?.roomId ?? '',
    wallId: job.swaps[0]?.wallId ?? '',
    most: 2,
  },
  'emitter.output': { ...rail, flowC: 55, returnC: 45, roomC: 22, factors: [{ name: 'towels', value: 0.8 }] },
  'figures.inForce': { on: '2026-11-25' },
  'figures.list': {},
  'fixing.load': {
    dryKg: 9,
    waterLitres: 5,
    extraKg: 40,
    projectionToCentreMm: 80,
    bracketRiseMm: 1000,
    upperFixings: 2,
    allFixings: 4,
    allowedShearN: 400,
    allowedPullN: 250,
  },
  'flow.lowest': { loadW: 500, roomC: 22, spreadK: 10, emitters: [rail] },
  'heat.load': { room: { name: 'Bathroom', roomC: 22, outsideC: -3, volumeM3: 14.4, roughWPerM3: 45 } },
  'heat.tables': {},
  'house.flow': {
    rooms: [{ name: 'Bathroom', loadW: 500, roomC: 22, emitters: [rail] }],
    spreadK: 10,
  },
  'house.heat': {
    rooms: [{ name: 'Bathroom', roomC: 22, outsideC: -3, volumeM3: 14.4, roughWPerM3: 45 }],
  },
  'house.swapEffects': {
    rooms: [{ name: 'Bathroom', loadW: 500, roomC: 22, emitters: [rail] }],
    spreadK: 10,
    candidates: [{ name: 'bigger', roomIndex: 0, remove: [0], add: [{ ratedW: 900, exponent: 1.25 }] }],
  },
  'house.balance': {
    legs: [{ id: 'main', from: null, pipe: { insideMm: 13.6, lengthM: 12, roughnessMm: 0.0015 } }],
    circuits: [{ id: 'rail', legId: 'main', watts: 900, valveKvM3PerH: 0.6 }],
    flowC: 55,
    returnC: 45,
  },
  'job.flow': { job },
  'job.sample': {},
  'job.schema': {},
  'labour.estimate': {
    tasks: [{ name: 'hang', count: 2, optimisticMin: 10, likelyMin: 20, pessimisticMin: 45 }],
  },
  'labour.job': { job },
  'labour.learn': {
    prior: { optimisticMin: 4, likelyMin: 6, pessimisticMin: 12 },
    actuals: [{ minutes: 30, count: 4 }],
  },
  'money.totals': {
    lines: [
      { netPence: 12_345, category: 'standard' },
      { netPence: 678, category: 'reverseCharge' },
    ],
    on: '2026-11-25',
    rounding: 'document',
    rule: 'half-up',
  },
  'packs.cover': {
    need: 7,
    packs: [
      { id: 'five', holds: 5, pence: 400 },
      { id: 'one', holds: 1, pence: 100 },
    ],
  },
  'paper.read': { name: 'never made.pdf' },
  'pickList.build': { job },
  'pipe.cut': {
    pieces: [{ id: 'a', lengthMm: 900, count: 4 }],
    stock: [{ id: 'three', lengthMm: 3000, pence: 1200 }],
    kerfMm: 2,
  },
  'room.quick': {
    use: 'bathroom',
    entry: {
      lengthM: 2.5,
      widthM: 2,
      heightM: 2.4,
      outsideWallCount: 1,
      wall: 'cavity',
      glazing: 'double',
      windowCount: 1,
      outsideDoorCount: 0,
      ageBand: 'C',
      above: 'loft',
      below: 'heatedRoom',
    },
  },
  'pipe.loss': {
    insideMm: 13.6,
    lengthM: 8,
    roughnessMm: 0.0015,
    meanC: 50,
    litresPerMinute: 2,
    zetas: [0.9],
  },
  'priceFile.look': { file: { fileId: 'never-handed-over' } },
  'quote.build': { job },
  'system.content': { boilerKW: 18 },
  'takeoff.job': { job },
  'takeoff.swap': { job, swapId: job.swaps[0]?.swapId ?? '' },
  'uvalue.ageBand': { element: 'wall', construction: 'solidBrick', builtYear: 1910 },
  'uvalue.groundFloor': { kind: 'slab', areaM2: 40, perimeterM: 18 },
  'uvalue.layers': {
    rsi: 0.13,
    rse: 0.04,
    layers: [{ name: 'brick', thicknessMm: 215, conductivityWPerMK: 0.77 }],
  },
  'valve.kv': { litresPerMinute: 1.5, pa: 2000, meanC: 50 },
  'valve.loss': { kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 50 },
  'wall.figures': { figures: { 'wall.clearSideMm': 60 } },
  'wall.fit': placed,
  'wall.setOut': { ...placed, pipes: [] },
  'water.dose': { product: 'inhibitor', contentLitres: 112, packs: [{ id: 'litre', holds: 1, pence: 1500 }] },
  'water.flow': { watts: 600, flowC: 55, returnC: 45 },
  'work.progress': { workId: 'never-begun' },
}

/** Requests that are asked for what is not there. */
const notThere: ReadonlySet<string> = new Set(['paper.read', 'priceFile.look'])

let folder = ''
let host: StartedHost
let program: StandIn
beforeAll(async () => {
  folder = await tempFolder()
  host = await startHost(folder)
  program = await startStandIn(folder)
})
afterAll(async () => {
  await host.stop()
  await program.close()
  await removeFolder(folder)
})

/** What the terminal prints, as the outcome that it stands for. */
async function atTerminal(name: string, input: unknown): Promise<unknown> {
  const words = [name, '--in', '-', '--data', folder]
  const { code, stdout, stderr } = await askTerminal(words, { stdin: JSON.stringify(input) })
  return code === 0
    ? { ok: true, value: JSON.parse(stdout) as unknown }
    : { ok: false, ...JSON.parse(stderr) }
}

async function atHost(name: string, input: unknown): Promise<unknown> {
  const headers = { 'x-tailpiece-key': host.key, 'content-type': 'application/json' }
  const got = await fetch(`${host.home}/call/${name}`, {
    method: 'POST',
    headers,
    body: JSON.stringify(input),
  })
  return got.json()
}

async function expectTheSame(name: string, input: unknown): Promise<unknown> {
  const answers = await Promise.all([atTerminal(name, input), atHost(name, input), program.call(name, input)])
  expect(answers[1]).toEqual(answers[0])
  expect(answers[2]).toEqual(answers[0])
  return answers[0]
}

describe('The terminal, the host and the desktop window give the same answer', () => {
  const pure = Object.values(requests).filter(({ kind, needs }) => kind === 'query' && needs === 'nothing')

  it.each(pure.map(({ name }) => name))('%s', async (name) => {
    const input = inputs[name]
    if (input === undefined) throw new Error(`Give ${name} an input in this file`)
    const wanted = notThere.has(name) ? { ok: false, problems: [{ code: 'not-found' }] } : { ok: true }
    expect(await expectTheSame(name, input)).toMatchObject(wanted)
  })

  it('when they refuse, too', async () => {
    const wrong = { ...inputs['emitter.output'], flowC: 15 }
    expect(await expectTheSame('emitter.output', wrong)).toMatchObject({ ok: false })
    expect(await expectTheSame('wall.fit', { ...placed, bottomMm: -1 })).toMatchObject({
      ok: false,
      problems: [{ code: 'invalid', path: 'bottomMm' }],
    })
  })
})
