import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answer } from '../../../src-main/desk/router.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import type { OrderLine } from '../../../src-main/domain/follow-up/order.ts'
import type { Purchase } from '../../../src-main/domain/quote.ts'
import { accepted, ask, begin, purchasesOf, refusalOf, sum, today } from './van-for-tests.ts'
import type { Begun } from './van-for-tests.ts'

const quoteIds = ['Q-2026-0001', 'Q-2026-0002']
const inhibitor = 'inhibitor-100'

let begun: Begun
/** What both quotes buy, by their own snapshots. */
const bought: Purchase[] = []
beforeAll(async () => {
  begun = await begin(async (desk) => {
    await accepted(desk, 'job-ann', 'Ann Example')
    await accepted(desk, 'job-bob', 'Bob Example')
    await ask(desk, 'picking.make', { quoteIds })
    for (const quoteId of quoteIds) bought.push(...(await purchasesOf(desk, quoteId)))
  })
}, 120_000)
afterAll(() => begun.gone())

const round = (quantity: number) => Math.round(quantity * 1e6) / 1e6

/** The order that has a line of this item, and that line. */
async function orderOfItem(desk: Desk, itemId: string) {
  const { orders } = await ask(desk, 'order.make', { pickingNo: 1 })
  const order = orders.find(({ lines }) => lines.some((line) => line.itemId === itemId))
  const line = order?.lines.find((one) => one.itemId === itemId)
  if (order === undefined || line === undefined) throw new Error(`Nothing of ${itemId} is ordered`)
  return { orderId: order.orderId, order, line }
}

/** How much both quotes need of an item; of pipe that is cut, whole lengths. */
function needOf({ itemId, packs, packHolds }: OrderLine): number {
  const same = bought.filter((one) => one.itemId === itemId)
  return same.some(({ pieces }) => pieces !== undefined)
    ? round(packs * packHolds)
    : round(sum(same.map(({ need }) => need)))
}

async function vanOf(desk: Desk): Promise<Readonly<Record<string, number>>> {
  const { items } = await ask(desk, 'van.stock', {})
  return Object.fromEntries(items.map(({ itemId, quantity }) => [itemId, quantity]))
}

describe('what becomes of an order', () => {
  it('is sent once, on a day from when it was made up to today', async () => {
    await begun.inTwoWindows(async (desk) => {
      const orderId = 'P-2026-0001'
      await ask(desk, 'order.make', { pickingNo: 1 })
      const refused = async (onDay: string) => refusalOf(desk, 'order.sent', { orderId, onDay })
      expect(await refused('2026-11-24')).toMatchObject({
        code: 'invalid',
        path: 'onDay',
        message: `The order was made on ${today}; give that day or a later one.`,
      })
      expect(await refused('2026-11-26')).toMatchObject({ code: 'invalid', path: 'onDay' })
      const { order } = await ask(desk, 'order.sent', { orderId })
      expect(order).toMatchObject({ state: 'sent', sentOn: today })
      expect((await refusalOf(desk, 'order.sent', { orderId })).message).toBe(
        `${orderId} was sent on ${today} already.`,
      )
      expect(await refusalOf(desk, 'order.sent', { orderId: 'P-9' })).toMatchObject({ code: 'not-found' })
    })
  })

  it('is part delivered with packs on back order, then delivered', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { orderId, order, line } = await orderOfItem(desk, inhibitor)
      expect(line.packs).toBe(4)
      await ask(desk, 'order.sent', { orderId })
      const later = { ...desk, today: '2026-11-27' }
      const lines = [{ lineNo: line.lineNo, packs: 3 }]
      const part = await ask(later, 'order.deliver', { orderId, lines, says: 'One to follow' })
      expect(part.order.state).toBe('partDelivered')
      for (const one of part.order.lines) {
        const came = one.lineNo === line.lineNo ? 3 : 0
        expect([one.deliveredPacks, one.backOrderedPacks]).toEqual([came, one.packs - came])
      }
      expect(part.order.deliveries).toMatchObject([
        { lineNo: line.lineNo, packs: 3, onDay: '2026-11-27', says: 'One to follow' },
      ])
      const listed = (await ask(later, 'order.list', {})).orders.find((one) => one.orderId === orderId)
      expect(listed).toMatchObject({
        state: 'partDelivered',
        lines: order.lines.length,
        backOrderedPacks: sum(order.lines.map(({ packs }) => packs)) - 3,
      })
      const rest = order.lines.map(({ lineNo, packs }) => ({
        lineNo,
        packs: lineNo === line.lineNo ? packs - 3 : packs,
      }))
      const whole = await ask(later, 'order.deliver', { orderId, lines: rest })
      expect(whole.order.state).toBe('delivered')
      expect(whole.order.lines.map(({ backOrderedPacks }) => backOrderedPacks)).toEqual(rest.map(() => 0))
      expect((await refusalOf(later, 'order.deliver', { orderId, lines })).message).toBe(
        `3 of ${line.name} are more than are still to come: 0 of the 4 ordered.`,
      )
    })
  })

  it('books into the van what the pick list does not need, and says which order brought it', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { orders } = await ask(desk, 'order.make', { pickingNo: 1 })
      const spare: Record<string, number> = {}
      for (const { orderId, lines, supplierName } of orders) {
        const came = lines.map(({ lineNo, packs }) => ({ lineNo, packs }))
        const { booked, order } = await ask(desk, 'order.deliver', { orderId, lines: came })
        for (const line of lines) {
          const beyond = round(line.packs * line.packHolds - needOf(line))
          expect(beyond).toBeGreaterThanOrEqual(0)
          const mine = booked.filter(({ itemId }) => itemId === line.itemId)
          expect(mine).toEqual(
            beyond === 0 ? [] : [{ itemId: line.itemId, name: line.name, quantity: beyond, unit: line.unit }],
          )
          const told = order.deliveries.find(({ lineNo }) => lineNo === line.lineNo)
          expect(told?.toVan).toBe(beyond === 0 ? undefined : beyond)
          if (beyond === 0) continue
          spare[line.itemId ?? ''] = beyond
          const { moves } = await ask(desk, 'van.moves', { itemId: line.itemId ?? '' })
          expect(moves).toMatchObject([
            { kind: 'receipt', quantity: beyond, orderId, says: `Order ${orderId}, ${supplierName}` },
          ])
        }
      }
      expect(Object.keys(spare).length).toBeGreaterThan(3)
      expect(spare).not.toHaveProperty('pipe-copper-15')
      expect(await vanOf(desk)).toEqual(spare)
    })
  })

  it('books all of it into the van where that is asked, and it then fills no need', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { orderId, line } = await orderOfItem(desk, inhibitor)
      const need = needOf(line)
      expect([need > 3, need < 4]).toEqual([true, true])
      const deliver = (packs: number, toVan?: boolean) =>
        ask(desk, 'order.deliver', {
          orderId,
          lines: [{ lineNo: line.lineNo, packs }],
          ...(toVan === undefined ? {} : { toVan }),
        })
      expect((await deliver(1, true)).booked.map(({ quantity }) => quantity)).toEqual([1])
      expect((await deliver(2, false)).booked).toEqual([])
      // The fourth litre is wanted at the jobs, for the first one went into the van.
      expect((await deliver(1)).booked).toEqual([])
      expect(await vanOf(desk)).toEqual({ [inhibitor]: 1 })
    })
    await begun.inTwoWindows(async (desk) => {
      const { orderId, line } = await orderOfItem(desk, inhibitor)
      const spare = round(4 - needOf(line))
      const lines = [
        { lineNo: line.lineNo, packs: 3 },
        { lineNo: line.lineNo, packs: 1 },
      ]
      const { booked, order } = await ask(desk, 'order.deliver', { orderId, lines })
      expect(booked.map(({ quantity }) => quantity)).toEqual([spare])
      expect(order.deliveries.map(({ packs, toVan }) => [packs, toVan])).toEqual([
        [3, undefined],
        [1, spare],
      ])
    })
  })

  it('takes no more than was ordered, whole or not at all', async () => {
    await begun.inTwoWindows(async (desk, other) => {
      const { orderId, line } = await orderOfItem(desk, inhibitor)
      const { lineNo } = line
      const refused = (lines: readonly { readonly lineNo: number; readonly packs: number }[], more = {}) =>
        refusalOf(desk, 'order.deliver', { orderId, lines, ...more })
      expect(await refused([{ lineNo, packs: 5 }])).toMatchObject({
        code: 'conflict',
        path: 'lines[0].packs',
      })
      expect(
        await refused([
          { lineNo, packs: 3 },
          { lineNo, packs: 2 },
        ]),
      ).toMatchObject({
        code: 'conflict',
        path: 'lines[1].packs',
        message: `2 of ${line.name} are more than are still to come: 1 of the 4 ordered.`,
      })
      expect(await refused([{ lineNo: 99, packs: 1 }])).toMatchObject({
        code: 'not-found',
        path: 'lines[0].lineNo',
      })
      expect(await refused([{ lineNo, packs: 1 }], { onDay: '2026-11-26' })).toMatchObject({ path: 'onDay' })
      expect(await refused([{ lineNo, packs: 1 }], { onDay: '2026-11-24' })).toMatchObject({ path: 'onDay' })
      expect(await refused([])).toMatchObject({ code: 'invalid' })
      expect(await refused([{ lineNo, packs: 0 }])).toMatchObject({ code: 'invalid' })
      expect((await ask(other, 'order.read', { orderId })).order).toMatchObject({
        state: 'made',
        deliveries: [],
      })
      expect(await vanOf(other)).toEqual({})
      const both = await Promise.all(
        [desk, other].map((window) =>
          answer('order.deliver', { orderId, lines: [{ lineNo, packs: 4 }] }, window),
        ),
      )
      expect(both.map(({ ok }) => ok).toSorted()).toEqual([false, true])
    })
  })

  it('is cancelled with a reason, and not once anything has come', async () => {
    await begun.inTwoWindows(async (desk, other) => {
      const { orderId, line } = await orderOfItem(desk, inhibitor)
      const otherId = orderId === 'P-2026-0001' ? 'P-2026-0002' : 'P-2026-0001'
      const lines = [{ lineNo: line.lineNo, packs: 1 }]
      expect(await refusalOf(desk, 'order.cancel', { orderId, says: '  ' })).toMatchObject({
        code: 'invalid',
        path: 'says',
      })
      await ask(desk, 'order.deliver', { orderId, lines })
      expect((await refusalOf(desk, 'order.cancel', { orderId, says: 'late' })).message).toBe(
        `${orderId} is delivered in part, so it can’t be cancelled any more.`,
      )
      expect((await refusalOf(desk, 'order.sent', { orderId })).message).toBe(
        `${orderId} is delivered in part, so it is not sent any more.`,
      )
      await ask(desk, 'order.sent', { orderId: otherId })
      const { order } = await ask(other, 'order.cancel', { orderId: otherId, says: 'The customer waits' })
      expect(order).toMatchObject({
        state: 'cancelled',
        cancelledOn: today,
        cancelledSays: 'The customer waits',
        sentOn: today,
      })
      expect(await refusalOf(desk, 'order.cancel', { orderId: otherId, says: 'again' })).toMatchObject({
        code: 'conflict',
        message: `${otherId} is cancelled, so it can’t be cancelled any more.`,
      })
      expect(
        await refusalOf(desk, 'order.deliver', { orderId: otherId, lines: [{ lineNo: 1, packs: 1 }] }),
      ).toMatchObject({ code: 'conflict', path: 'orderId' })
    })
  })

  it('leaves the van with what was ordered beyond the need, however the deliveries are split', async () => {
    const portion = fc.record({ at: fc.nat(40), packs: fc.integer({ min: 1, max: 3 }), window: fc.nat(1) })
    await fc.assert(
      fc.asyncProperty(fc.array(portion, { maxLength: 12 }), async (portions) => {
        await begun.inTwoWindows(async (first, second) => {
          const { orders } = await ask(first, 'order.make', { pickingNo: 1 })
          const open = orders.flatMap(({ orderId, lines }) =>
            lines.map((line) => ({ orderId, line, left: line.packs })),
          )
          const deliver = async (desk: Desk, one: (typeof open)[number], packs: number) => {
            const lines = [{ lineNo: one.line.lineNo, packs }]
            const outcome = await answer('order.deliver', { orderId: one.orderId, lines }, desk)
            expect(outcome.ok).toBe(packs <= one.left)
            if (outcome.ok) one.left -= packs
          }
          for (const { at, packs, window } of portions) {
            const one = open[at % open.length]
            if (one !== undefined) await deliver(window === 0 ? first : second, one, packs)
          }
          for (const one of open) if (one.left > 0) await deliver(first, one, one.left)
          const states = (await ask(second, 'order.list', {})).orders.map(({ state }) => state)
          expect(states).toEqual(orders.map(() => 'delivered'))
          const spare = new Map<string, number>()
          for (const { line } of open) {
            const beyond = round(line.packs * line.packHolds - needOf(line))
            if (beyond > 0) spare.set(line.itemId ?? '', beyond)
          }
          expect(await vanOf(second)).toEqual(Object.fromEntries(spare))
        })
      }),
      { numRuns: 5 },
    )
  })
})
