import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { answer } from '../../../src-main/desk/router.ts'
import {
  accepted,
  ask,
  begin,
  purchasesOf,
  refusalOf,
  sampleJob,
  sum,
  tickAll,
  today,
} from './van-for-tests.ts'
import type { Begun } from './van-for-tests.ts'

const first = 'Q-2026-0001'
const second = 'Q-2026-0002'
const elbow = 'elbow-compression-15'
const tape = 'seal-tape-12'
const silicone = 'Sanitary silicone, white, 310 ml'

let begun: Begun
beforeAll(async () => {
  begun = await begin(async (desk) => {
    await accepted(desk, 'job-ann', 'Ann Example')
    await accepted(desk, 'job-bob', 'Bob Example')
    await ask(desk, 'quote.issue', { job: { ...sampleJob, jobId: 'job-cat' } })
  })
}, 120_000)
afterAll(() => begun.gone())

type Picking = AnswerOf<'picking.make'>['picking']
const round = (quantity: number) => Math.round(quantity * 1e6) / 1e6

/** How much of an item a pick list gets, from the van and from suppliers. */
const gets = ({ lines }: Picking, itemId: string, source?: 'van' | 'supplier') =>
  round(
    sum(
      lines
        .filter((line) => line.itemId === itemId && (source === undefined || line.source === source))
        .map(({ need }) => need),
    ),
  )

describe('a pick list for two accepted quotes together', () => {
  it('gets at least what both need of everything, and names both', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { picking } = await ask(desk, 'picking.make', { quoteIds: [first, second] })
      expect(picking).toMatchObject({ pickingNo: 1, title: 'Ann Example, Bob Example', madeOn: today })
      expect(picking.body.quotes.map(({ quoteId }) => quoteId)).toEqual([first, second])
      const purchases = [...(await purchasesOf(desk, first)), ...(await purchasesOf(desk, second))]
      expect(purchases.length).toBeGreaterThan(20)
      for (const [itemId, same] of Map.groupBy(purchases, (one) => one.itemId)) {
        const need = round(sum(same.map((one) => one.need)))
        const got = gets(picking, itemId)
        expect([itemId, got >= need]).toEqual([itemId, true])
        // No pack too many: without the last of the smallest packs it would be short.
        const smallest = Math.min(
          ...picking.lines.filter((one) => one.itemId === itemId).map(({ packHolds = 1 }) => packHolds),
        )
        expect([itemId, got - smallest < need]).toEqual([itemId, true])
      }
      // Two litres of inhibitor a job, two jobs; one cartridge of silicone does for both.
      expect(gets(picking, 'inhibitor-100')).toBe(4)
      expect(picking.lines.filter(({ name }) => name === silicone).map(({ packs }) => packs)).toEqual([1])
      expect(picking.lines.map(({ lineNo }) => lineNo)).toEqual(picking.lines.map((_, at) => at + 1))
    })
  })

  it('cuts the pieces of both from the same lengths, each with its quote’s name', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { picking } = await ask(desk, 'picking.make', { quoteIds: [first, second] })
      const alone = (await purchasesOf(desk, first)).flatMap(({ bars = [] }) => bars)
      const together = picking.body.pipeCuts.flatMap(({ bars }) => bars)
      expect(alone).toHaveLength(1)
      expect(together).toHaveLength(1)
      const cuts = together.flatMap((bar) => bar.cuts)
      expect(cuts.map(({ id }) => id)).toEqual([`1, ${first}: right side`, `2, ${second}: right side`])
      expect(cuts.map(({ lengthMm }) => lengthMm)).toEqual(
        [...alone, ...alone].flatMap((bar) => bar.cuts.map(({ lengthMm }) => lengthMm)),
      )
    })
  })

  it('takes the van’s first: what it has is not bought', async () => {
    await begun.inTwoWindows(async (desk) => {
      await ask(desk, 'van.note', { itemId: elbow, kind: 'receipt', quantity: 3 })
      await ask(desk, 'van.note', { itemId: tape, kind: 'receipt', quantity: 30 })
      const { picking } = await ask(desk, 'picking.make', { quoteIds: [first, second] })
      const elbows = sum(
        [...(await purchasesOf(desk, first)), ...(await purchasesOf(desk, second))]
          .filter(({ itemId }) => itemId === elbow)
          .map(({ need }) => need),
      )
      expect(elbows).toBe(4)
      expect([gets(picking, elbow, 'van'), gets(picking, elbow, 'supplier')]).toEqual([3, 1])
      expect(gets(picking, tape, 'supplier')).toBe(0)
      expect(picking.lines.slice(0, 3).map(({ source }) => source)).toEqual(['van', 'van', 'supplier'])
      // Planning takes nothing out of the van yet.
      const { items } = await ask(desk, 'van.stock', {})
      expect(items.map(({ quantity }) => quantity)).toEqual([3, 30])
    })
  })

  it('keeps what each order costs: packs times their prices come to its goods, whichever way it is bought', async () => {
    for (const by of ['cheapestEach', 'cheapestSplit'] as const) {
      await begun.inTwoWindows(async (desk) => {
        const { picking } = await ask(desk, 'picking.make', { quoteIds: [first, second], by })
        expect(picking.body.orders.length).toBeGreaterThan(0)
        const bought = picking.lines.filter(({ source }) => source === 'supplier')
        expect(picking.body.orders.flatMap(({ packs = [] }) => packs)).toHaveLength(bought.length)
        for (const { supplierId, goodsPence, carriagePence, packs = [] } of picking.body.orders) {
          const pence = packs.map(({ lineNo, packPence, need }) => {
            const line = bought.find((one) => one.lineNo === lineNo)
            expect(line?.supplierId).toBe(supplierId)
            expect(need).toBeGreaterThan(0)
            expect(need).toBeLessThanOrEqual(line?.need ?? 0)
            return (line?.packs ?? 0) * packPence
          })
          expect(sum(pence)).toBe(goodsPence)
          expect(carriagePence === undefined).toBe(by === 'cheapestEach')
        }
      })
    }
  })

  it('is refused for what is not accepted or not there, and a second time for the same quote', async () => {
    await begun.inTwoWindows(async (desk, other) => {
      expect(await refusalOf(desk, 'picking.make', { quoteIds: ['Q-2026-0003'] })).toMatchObject({
        code: 'conflict',
        message: 'Q-2026-0003 is not accepted, so nothing is picked for it yet.',
      })
      expect(await refusalOf(desk, 'picking.make', { quoteIds: ['Q-1'] })).toMatchObject({
        code: 'not-found',
      })
      const made = await Promise.all(
        [desk, other].map((window) => answer('picking.make', { quoteIds: [first, first] }, window)),
      )
      expect(made.map(({ ok }) => ok).toSorted()).toEqual([false, true])
      expect(await refusalOf(other, 'picking.make', { quoteIds: [second, first] })).toMatchObject({
        code: 'conflict',
        message: `${first} is on pick list 1 already.`,
        next: 'Open pick list 1.',
      })
      const { pickings } = await ask(other, 'picking.list', {})
      expect(pickings.map(({ quoteIds, ticked }) => [quoteIds, ticked])).toEqual([[[first], 0]])
    })
  })
})

describe('ticking a pick list off', () => {
  it('notes what was found, what is short and what was taken instead, and takes a tick back', async () => {
    await begun.inTwoWindows(async (desk) => {
      await ask(desk, 'van.note', { itemId: elbow, kind: 'receipt', quantity: 3 })
      const { picking } = await ask(desk, 'picking.make', { quoteIds: [first, second] })
      const lineNo = picking.lines.find(({ source }) => source === 'van')?.lineNo ?? 0
      const tick = async (more: object) =>
        (await ask(desk, 'picking.tick', { pickingNo: 1, lineNo, ...more })).line
      expect(await tick({})).toMatchObject({ picked: 3, tickedAt: expect.stringMatching(/^20/) as string })
      expect(await tick({ picked: 1 })).toMatchObject({ picked: 1, shortSays: 'Some are short.' })
      expect(await tick({ picked: 1, shortSays: ' Two bent ' })).toMatchObject({ shortSays: 'Two bent' })
      const instead = await tick({ picked: 3, insteadItemId: tape })
      expect(instead).toMatchObject({
        insteadItemId: tape,
        insteadSays: 'Thread-seal tape, 12 mm wide, 12 m roll',
      })
      expect(instead).not.toHaveProperty('shortSays')
      expect(await tick({ picked: 0, shortSays: 'None there' })).toMatchObject({
        picked: 0,
        shortSays: 'None there',
        tickedAt: expect.stringMatching(/^20/) as string,
      })
      // A blank reason is none: it takes the tick back.
      const back = await tick({ picked: 0, shortSays: '  ' })
      expect(back.picked).toBe(0)
      expect(back).not.toHaveProperty('tickedAt')
      expect(back).not.toHaveProperty('shortSays')
      expect(await refusalOf(desk, 'picking.tick', { pickingNo: 1, lineNo: 999 })).toMatchObject({
        code: 'not-found',
        message: 'Pick list 1 has no line 999.',
      })
      expect(await refusalOf(desk, 'picking.tick', { pickingNo: 9, lineNo: 1 })).toMatchObject({
        message: 'There is no pick list 9.',
      })
      expect(
        await refusalOf(desk, 'picking.tick', { pickingNo: 1, lineNo, insteadItemId: 'no-such' }),
      ).toMatchObject({ code: 'not-found', path: 'insteadItemId' })
    })
  })

  it('closes once each line is ticked, and books what came from the van out of it', async () => {
    await begun.inTwoWindows(async (desk) => {
      await ask(desk, 'van.note', { itemId: elbow, kind: 'receipt', quantity: 3 })
      const { picking } = await ask(desk, 'picking.make', { quoteIds: [first, second] })
      const open = await refusalOf(desk, 'picking.close', { pickingNo: 1 })
      expect(open).toMatchObject({ code: 'conflict', next: 'Tick each line, or note it as short.' })
      expect(open.message).toMatch(new RegExp(`^${picking.lines.length} lines are not ticked off yet: `))
      await tickAll(desk, 1)
      await ask(desk, 'picking.tick', { pickingNo: 1, lineNo: 1, picked: 2 })
      expect(await refusalOf(desk, 'picking.close', { pickingNo: 1, onDay: '2026-11-24' })).toMatchObject({
        code: 'invalid',
        path: 'onDay',
      })
      expect(await refusalOf(desk, 'picking.close', { pickingNo: 1, onDay: '2026-11-26' })).toMatchObject({
        code: 'invalid',
        path: 'onDay',
      })
      expect(await ask(desk, 'picking.close', { pickingNo: 1 })).toEqual({
        pickingNo: 1,
        closedOn: today,
        moves: 1,
      })
      const { moves, quantity } = await ask(desk, 'van.moves', { itemId: elbow })
      expect(quantity).toBe(1)
      expect(moves.at(-1)).toMatchObject({
        kind: 'use',
        quantity: -2,
        pickingNo: 1,
        says: 'Pick list 1: Ann Example, Bob Example',
      })
      expect((await refusalOf(desk, 'picking.tick', { pickingNo: 1, lineNo: 1 })).message).toBe(
        `Pick list 1 was closed on ${today}.`,
      )
      expect(await refusalOf(desk, 'picking.close', { pickingNo: 1 })).toMatchObject({ code: 'conflict' })
    })
  })

  it('books what was taken instead, and nothing at all where the van has not so much', async () => {
    await begun.inTwoWindows(async (desk) => {
      await ask(desk, 'van.note', { itemId: elbow, kind: 'receipt', quantity: 3 })
      await ask(desk, 'van.note', { itemId: tape, kind: 'receipt', quantity: 5 })
      await ask(desk, 'picking.make', { quoteIds: [first, second] })
      await tickAll(desk, 1)
      await ask(desk, 'van.note', { itemId: elbow, kind: 'count', quantity: 1 })
      expect((await refusalOf(desk, 'picking.close', { pickingNo: 1 })).message).toBe(
        'The van has 1 of Elbow, compression, 15 mm, so 3 can’t be taken from it.',
      )
      const { items } = await ask(desk, 'van.stock', {})
      expect(Object.fromEntries(items.map((item) => [item.itemId, item.quantity]))).toEqual({
        [elbow]: 1,
        [tape]: 5,
      })
      const { picking } = await ask(desk, 'picking.read', { pickingNo: 1 })
      const elbows = picking.lines.find(({ source, itemId }) => source === 'van' && itemId === elbow)
      const instead = { pickingNo: 1, lineNo: elbows?.lineNo ?? 0, insteadItemId: 'pipe-copper-15' }
      await ask(desk, 'picking.tick', instead)
      await ask(desk, 'van.note', { itemId: 'pipe-copper-15', kind: 'receipt', quantity: 3 })
      await ask(desk, 'picking.close', { pickingNo: 1 })
      const left = (await ask(desk, 'van.stock', {})).items
      expect(Object.fromEntries(left.map((item) => [item.itemId, item.quantity]))).toEqual({ [elbow]: 1 })
    })
  })

  it('keeps every tick of two windows, and closes once, with the van booked once', async () => {
    await begun.inTwoWindows(async (one, two) => {
      await ask(one, 'van.note', { itemId: elbow, kind: 'receipt', quantity: 3 })
      const { picking } = await ask(one, 'picking.make', { quoteIds: [first, second] })
      await Promise.all(
        picking.lines.map(({ lineNo }, at) =>
          ask(at % 2 === 0 ? one : two, 'picking.tick', { pickingNo: 1, lineNo }),
        ),
      )
      const [listed] = (await ask(two, 'picking.list', {})).pickings
      expect(listed).toMatchObject({ lines: picking.lines.length, ticked: picking.lines.length, short: 0 })
      const closed = await Promise.all(
        [one, two, one].map((desk) => answer('picking.close', { pickingNo: 1 }, desk)),
      )
      expect(closed.filter(({ ok }) => ok)).toHaveLength(1)
      expect((await ask(two, 'van.moves', { itemId: elbow })).moves.map(({ kind }) => kind)).toEqual([
        'receipt',
        'use',
      ])
      expect((await ask(one, 'van.stock', {})).items).toEqual([])
    })
  })
})
