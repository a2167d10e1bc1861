import { describe, expect, it } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { requests } from '../../../src-main/contract/requests.ts'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import type { Outcome } from '../../../src-main/domain/outcome.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { answered, nonFiniteIn, refused } from '../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobSchema.parse(sample)
const swap = job.swaps[0]
const room = job.rooms.find((one) => one.roomId === swap?.roomId)
const wall = room?.walls.find((one) => one.wallId === swap?.wallId)
if (swap === undefined || room === undefined || wall === undefined) throw new Error('The sample has no swap')
const { roomId, wallId, swapId } = swap

async function choose(input: object): Promise<Outcome<AnswerOf<'emitter.choose'>>> {
  return (await answer('emitter.choose', input, desk)) as Outcome<AnswerOf<'emitter.choose'>>
}
const forSwap = async (more: object = {}) =>
  answered(await choose({ job, roomId, wallId, swapId, most: 6, ...more }))

/** Parts and labour on the quote of a job with that one emitter and nothing else. */
async function quoted(emitterId: string): Promise<number> {
  const alone: Job = { ...job, swaps: [{ ...swap, emitterId } as Job['swaps'][number]], options: [] }
  const built = answered(
    (await answer('quote.build', { job: alone }, desk)) as Outcome<AnswerOf<'quote.build'>>,
  )
  return built.lines
    .filter(({ section }) => ['emitter', 'parts', 'labour'].includes(section))
    .reduce((sum, { netPence }) => sum + netPence, 0)
}

describe('emitter.choose', () => {
  it('answers in the shape that the contract promises, with finite figures', async () => {
    const value = await forSwap()
    expect(requests['emitter.choose'].output.safeParse(value).error).toBeUndefined()
    expect(nonFiniteIn(value)).toEqual([])
  })
  it('prices each as the quote does when that swap is done alone', async () => {
    const { ranked } = await forSwap()
    expect(ranked).toHaveLength(6)
    for (const { itemId, fittedPence } of ranked.slice(0, 3)) expect(fittedPence).toBe(await quoted(itemId))
  })
  it('stands them cheapest first, and every other one dearer or refused with a reason', async () => {
    const { ranked, dearer, refused: turnedDown, looked } = await forSwap()
    const pence = ranked.map(({ fittedPence }) => fittedPence)
    expect(pence).toEqual(pence.toSorted((a, b) => a - b))
    expect(ranked.length + dearer.length + turnedDown.length).toBe(looked)
    expect(turnedDown.every(({ reasons }) => reasons.length > 0)).toBe(true)
    expect(ranked.every(({ spareW }) => spareW >= 0)).toBe(true)
  })
  it('offers what was wanted only', async () => {
    const { ranked, refused: turnedDown } = await forSwap({ want: { kind: 'towelRail' } })
    expect(ranked.every(({ kind }) => kind === 'towelRail')).toBe(true)
    const says = turnedDown.flatMap(({ reasons }) => reasons.map((reason) => reason.says))
    expect(says).toContain('it is a panel radiator; a towel rail was asked for')
  })
  it('finds fewer that are warm enough at a lower flow, and says so at that flow', async () => {
    const warm = await forSwap()
    const cool = await forSwap({ flowC: 45, spreadK: 5 })
    expect([cool.flowC, cool.returnC]).toEqual([45, 40])
    expect(cool.refused.length).toBeGreaterThan(warm.refused.length)
    const says = cool.refused.flatMap(({ reasons }) => reasons.map((reason) => reason.says))
    expect(says.some((one) => /^\d+ W short at 45\/40$/.test(one))).toBe(true)
  })
  it('gives the same for a room, a wall and a survey by themselves', async () => {
    const { pipes, existing, centre, bottomMm, valves } = swap
    const bare = { pipes, existing, centre, bottomMm, valves }
    const lone = { ...job, swaps: [swap], site: { ...job.site, travelKm: 0 } }
    const ofJob = await forSwap({ job: lone })
    const ofRoom = answered(await choose({ room, wall, survey: job.survey, ...bare, most: 6 }))
    const told = ({ ranked }: AnswerOf<'emitter.choose'>) =>
      ranked.map(({ itemId, givesW }) => [itemId, givesW])
    expect(told(ofRoom)).toEqual(told(ofJob))
  })
  it('says that pipes and valves are missing from the price where none was surveyed', async () => {
    const { notes } = answered(await choose({ room, wall, survey: job.survey }))
    expect(notes.some((note) => note.startsWith('No pipe is surveyed here'))).toBe(true)
  })
  it('counts the other emitters of the room', async () => {
    const another = { ...swap, swapId: 'another' }
    const value = await forSwap({ job: { ...job, swaps: [...job.swaps, another] } })
    expect(value.othersW).toBeGreaterThan(0)
  })
})

describe('emitter.choose among many', () => {
  it('tells as many one by one as are wanted, the nearest first, and counts all', async () => {
    const all = await forSwap({ mostTold: 10_000 })
    const few = await forSwap({ mostTold: 5 })
    expect(few.refused).toEqual(all.refused.slice(0, 5))
    expect(few.dearer).toEqual(all.dearer.slice(0, 5))
    expect(few.counted).toEqual(all.counted)
    expect([all.counted.refused, all.counted.dearer]).toEqual([all.refused.length, all.dearer.length])
    expect((await forSwap({ mostTold: 0 })).refused).toEqual([])
  })
  it('stands those first that have the fewest reasons against them, and of those the warmest', async () => {
    const { refused: turnedDown, dearer } = await forSwap({ mostTold: 10_000 })
    const sorted = turnedDown.toSorted((a, b) => a.reasons.length - b.reasons.length || b.givesW - a.givesW)
    expect(turnedDown.map(({ reasons, givesW }) => [reasons.length, givesW])).toEqual(
      sorted.map(({ reasons, givesW }) => [reasons.length, givesW]),
    )
    const pence = dearer.map(({ leastPence }) => leastPence)
    expect(pence).toEqual(pence.toSorted((a, b) => a - b))
  })
  it('counts by kind what each reason is about', async () => {
    const { refused: turnedDown, counted } = await forSwap({ mostTold: 10_000, want: { finish: 'chrome' } })
    for (const kind of ['heat', 'wall', 'obstacle', 'wanted', 'price', 'listing'] as const) {
      const having = turnedDown.filter(({ reasons }) => reasons.some(({ about }) => about === kind))
      expect([kind, counted[kind]]).toEqual([kind, having.length])
    }
  })
  it('tells about the one that is asked about, wherever it stands', async () => {
    const { ranked, dearer, refused: turnedDown } = await forSwap({ most: 2, mostTold: 10_000 })
    const standing = async (itemId = '') => (await forSwap({ most: 2, mostTold: 0, about: itemId })).asked
    expect(await standing(ranked[1]?.itemId)).toMatchObject({ stands: 'ranked', reasons: [] })
    expect(await standing(dearer[0]?.itemId)).toMatchObject({ stands: 'dearer', reasons: [] })
    const last = turnedDown.at(-1)
    expect(await standing(last?.itemId)).toEqual({ ...last, stands: 'refused' })
    expect((await forSwap({ most: 2 })).asked).toBeUndefined()
    const unknown = await choose({ job, roomId, wallId, swapId, about: 'no-such-emitter' })
    expect(refused(unknown)).toMatchObject({ code: 'not-found', path: 'about' })
  })
  it('looks only at those that a search finds', async () => {
    const { looked, ranked, dearer, refused: turnedDown } = await forSwap({ text: 'towel rail chrome' })
    const all = await forSwap()
    const names = [...ranked, ...dearer, ...turnedDown].map(({ name }) => name.toLowerCase())
    expect(names).toHaveLength(looked)
    expect(names.length).toBeGreaterThan(0)
    expect(looked).toBeLessThan(all.looked)
    expect(names.filter((name) => !name.includes('rail') || !name.includes('chrome'))).toEqual([])
    expect((await forSwap({ text: 'zzzz' })).looked).toBe(0)
  })
})

describe('emitter.choose refuses', () => {
  it('a room, a wall and a swap that are not there', async () => {
    const inJob = { job, roomId, wallId }
    expect(refused(await choose({ ...inJob, roomId: 'attic' }))).toMatchObject({ path: 'roomId' })
    expect(refused(await choose({ ...inJob, wallId: 'attic' }))).toMatchObject({ path: 'wallId' })
    expect(refused(await choose({ ...inJob, swapId: 'attic' }))).toMatchObject({ path: 'swapId' })
  })
  it('a flow that leaves the return no warmer than the room, naming the field that was given', async () => {
    const low = await choose({ job, roomId, wallId, swapId, flowC: 25, spreadK: 10 })
    expect(refused(low)).toMatchObject({ code: 'impossible', path: 'spreadK' })
    expect(refused(await choose({ job, roomId, wallId, swapId, flowC: 25 }))).toMatchObject({ path: 'flowC' })
  })
  it('a centre between pipes that are not there, naming the swap', async () => {
    const loose = { ...swap, pipes: [], centre: { kind: 'betweenPipes' } }
    const answer = await choose({ job: { ...job, swaps: [loose] }, roomId, wallId })
    expect(refused(answer)).toMatchObject({ path: 'job.swaps[0].pipes' })
  })
  it('two swaps on one wall when none is named', async () => {
    const twice = { ...job, swaps: [...job.swaps, { ...swap, swapId: 'another' }] }
    expect(refused(await choose({ job: twice, roomId, wallId }))).toMatchObject({ path: 'swapId' })
  })
})
