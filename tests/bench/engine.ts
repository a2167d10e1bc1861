/** What the engine's answers take beside one another. It prints; it holds nothing to any of it. */
import { mkdtemp, readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Desk } from '../../src-main/desk/desk.ts'
import { workUp } from '../../src-main/desk/quoting/work-up.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import { cutPipe } from '../../src-main/engine/buying/cut-pipe.ts'
import { lowestFlow } from '../../src-main/engine/heat/lowest-flow.ts'
import { answered } from '../answered.ts'
import { printBeside, took } from './measure.ts'

const today = '2026-11-25'
const papersFolder = await mkdtemp(join(tmpdir(), 'tailpiece-bench-'))
const desk: Desk = {
  today,
  now: () => `${today}T09:00:00Z`,
  store: null,
  dataFolder: null,
  papersFolder,
  mayChoosePath: true,
}
const sample = jobSchema.parse(
  JSON.parse(await readFile(join(import.meta.dirname, '../../resources/sample/two-rooms.job.json'), 'utf8')),
)

/** The sample's first room and swap, so many times over, each in a room of its own. */
function jobOf(howMany: number): Job {
  const [room] = sample.rooms
  const swap = sample.swaps.find(({ roomId }) => roomId === room?.roomId)
  if (room === undefined || swap === undefined) throw new Error('The sample has no room with a swap')
  const at = Array.from({ length: howMany }, (_, index) => index)
  return {
    ...sample,
    rooms: at.map((index) => ({ ...room, roomId: `room-${index}`, name: `${room.name} ${index + 1}` })),
    swaps: at.map((index) => ({ ...swap, swapId: `swap-${index}`, roomId: `room-${index}` })),
  }
}

for (const howMany of [1, 100]) await workUp(jobOf(howMany), desk)
const [one, hundred] = [jobOf(1), jobOf(100)]
printBeside('A whole quote: parts, labour, money and set-out', [
  await took('one swap', async () => answered(await workUp(one, desk)), { runs: 41, warmUps: 20 }),
  await took('100 swaps (100x or less is linear)', async () => answered(await workUp(hundred, desk))),
])

const house = Array.from({ length: 40 }, (_, index) => ({
  loadW: 600 + 20 * index,
  roomC: 21,
  spreadK: 10,
  emitters: [{ ratedW: 1500 + 10 * index, exponent: 1.3 }],
}))
printBeside('Lowest flow temperature', [
  await took('40 bare loops of 1000 powers', () => {
    let sum = 0
    for (let at = 0; at < 40_000; at += 1) sum += (30 + at / 1000) ** 1.3
    return sum
  }),
  await took('40 rooms, with every why', () => house.map((room) => answered(lowestFlow(room)))),
])

const pieces = Array.from({ length: 40 }, (_, index) => ({
  id: `${index + 1}`,
  lengthMm: 120 + ((index * 337) % 900),
  count: 1,
}))
const stock = [{ id: 'three', lengthMm: 3000, pence: 1150 }]
printBeside('Pipe of a ten-room job', [
  await took('sorting the pieces', () => pieces.toSorted((a, b) => a.lengthMm - b.lengthMm)),
  await took('cut list, 40 pieces', () => answered(cutPipe({ pieces, stock, kerfMm: 2 })), { runs: 9 }),
])
