import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answer } from '../../../src-main/desk/router.ts'
import { accepted, ask, begin, refusalOf, sum, tickAll, today } from './van-for-tests.ts'
import type { Begun } from './van-for-tests.ts'

let begun: Begun
beforeAll(async () => {
  begun = await begin(async (desk) => {
    await accepted(desk, 'job-ann', 'Ann Example')
    await accepted(desk, 'job-bob', 'Bob Example')
    await ask(desk, 'picking.make', { quoteIds: ['Q-2026-0001', 'Q-2026-0002'] })
  })
}, 120_000)
afterAll(() => begun.gone())

describe('orders of a pick list', () => {
  it('are one for each supplier, with its codes, packs and prices as they were picked', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { picking } = await ask(desk, 'picking.read', { pickingNo: 1 })
      const { orders } = await ask(desk, 'order.make', { pickingNo: 1 })
      expect(orders.map(({ orderId }) => orderId)).toEqual(['P-2026-0001', 'P-2026-0002'])
      expect(orders.map(({ supplierId }) => supplierId)).toEqual(
        picking.body.orders.map(({ supplierId }) => supplierId),
      )
      for (const order of orders) {
        const picked = picking.lines.filter(({ supplierId }) => supplierId === order.supplierId)
        expect(order.lines.map(({ code, packs, packHolds }) => [code, packs, packHolds])).toEqual(
          picked.map(({ code, packs, packHolds }) => [code, packs, packHolds]),
        )
        expect(order.lines.map(({ lineNo }) => lineNo)).toEqual(picked.map((_, at) => at + 1))
        const priced = picking.body.orders.find(({ supplierId }) => supplierId === order.supplierId)
        expect(order.goodsPence).toBe(priced?.goodsPence)
        expect(sum(order.lines.map(({ linePence }) => linePence))).toBe(order.goodsPence)
        for (const line of order.lines) expect(line.linePence).toBe(line.packs * line.packPence)
        expect(order.totalPence).toBe(order.goodsPence + order.carriagePence)
        expect(order).toMatchObject({ state: 'made', madeOn: today, pickingNo: 1, deliveries: [] })
        // Everything shipped is generic, so nobody may send these codes to a real supplier unread.
        expect(order.says.at(-1)).toBe(
          `${order.lines.length} lines are from the generic catalogue: match them to the supplier’s own codes before you send this.`,
        )
        expect((await ask(desk, 'order.read', { orderId: order.orderId })).order).toEqual(order)
      }
    })
  })

  it('bear the carriage that the split reckoned with; else the supplier’s terms of the day', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { picking } = await ask(desk, 'picking.read', { pickingNo: 1 })
      const [bought] = picking.body.orders
      if (bought === undefined) throw new Error('Something is bought')
      const { supplierId, name, goodsPence } = bought
      const make = async (terms: object) => {
        await ask(desk, 'supplier.save', { supplier: { supplierId, name, carriagePence: 795, ...terms } })
        const { orders } = await ask(desk, 'order.make', { pickingNo: 1, supplierId })
        const [order] = orders
        await ask(desk, 'order.cancel', { orderId: order?.orderId ?? '', says: 'to try other terms' })
        return order
      }
      expect((await make({}))?.carriagePence).toBe(795)
      expect((await make({ carriageFreeFromPence: goodsPence }))?.carriagePence).toBe(0)
      expect((await make({ carriageFreeFromPence: goodsPence + 1 }))?.carriagePence).toBe(795)
      expect((await make({ minimumOrderPence: goodsPence }))?.says).toHaveLength(1)
      expect((await make({ minimumOrderPence: goodsPence + 1 }))?.says[0]).toMatch(
        new RegExp(`^${name} takes orders from £`),
      )
    })
    const split = await begin(async (desk) => {
      await accepted(desk, 'job-ann', 'Ann Example')
      await ask(desk, 'picking.make', { quoteIds: ['Q-2026-0001'], by: 'cheapestSplit' })
    })
    await split.inTwoWindows(async (desk) => {
      const { picking } = await ask(desk, 'picking.read', { pickingNo: 1 })
      const { orders } = await ask(desk, 'order.make', { pickingNo: 1 })
      expect(orders.map(({ supplierId, carriagePence }) => [supplierId, carriagePence])).toEqual(
        picking.body.orders.map(({ supplierId, carriagePence }) => [supplierId, carriagePence]),
      )
    })
    await split.gone()
  })

  it('are not made twice for a supplier, unless the former is cancelled', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { picking } = await ask(desk, 'picking.read', { pickingNo: 1 })
      const [one, two] = picking.body.orders.map(({ supplierId }) => supplierId)
      if (one === undefined || two === undefined) throw new Error('Two suppliers sell the sample’s parts')
      await ask(desk, 'order.make', { pickingNo: 1, supplierId: one })
      expect(await refusalOf(desk, 'order.make', { pickingNo: 1, supplierId: one })).toMatchObject({
        code: 'conflict',
        path: 'supplierId',
        message: expect.stringContaining('(P-2026-0001)') as string,
      })
      // What is left to order is ordered; then nothing is left.
      const rest = await ask(desk, 'order.make', { pickingNo: 1 })
      expect(rest.orders.map(({ orderId, supplierId }) => [orderId, supplierId])).toEqual([
        ['P-2026-0002', two],
      ])
      expect(await refusalOf(desk, 'order.make', { pickingNo: 1 })).toMatchObject({
        code: 'conflict',
        path: 'pickingNo',
      })
      await ask(desk, 'order.cancel', { orderId: 'P-2026-0001', says: 'wrong day' })
      const anew = await ask(desk, 'order.make', { pickingNo: 1 })
      expect(anew.orders.map(({ orderId, supplierId }) => [orderId, supplierId])).toEqual([
        ['P-2026-0003', one],
      ])
      const { orders } = await ask(desk, 'order.list', { pickingNo: 1 })
      expect(orders.map(({ orderId, state }) => [orderId, state])).toEqual([
        ['P-2026-0003', 'made'],
        ['P-2026-0002', 'made'],
        ['P-2026-0001', 'cancelled'],
      ])
      expect((await ask(desk, 'order.list', { pickingNo: 2 })).orders).toEqual([])
      expect((await ask(desk, 'order.list', {})).orders).toEqual(orders)
    })
  })

  it('are numbered without gap or repeat while two windows order at once', async () => {
    await begun.inTwoWindows(async (one, two) => {
      const { picking } = await ask(one, 'picking.read', { pickingNo: 1 })
      const made = await Promise.all(
        picking.body.orders.flatMap(({ supplierId }) =>
          [one, two].map((desk) => answer('order.make', { pickingNo: 1, supplierId }, desk)),
        ),
      )
      expect(made.map(({ ok }) => ok).toSorted()).toEqual([false, false, true, true])
      const { orders } = await ask(two, 'order.list', {})
      expect(orders.map(({ orderId }) => orderId).toSorted()).toEqual(['P-2026-0001', 'P-2026-0002'])
      for (const { orderId } of orders) await ask(one, 'order.cancel', { orderId, says: 'anew' })
      // Next year begins a series of its own, and quotes numbered alike take nothing from it.
      const nextYear = { ...two, today: '2027-01-04' }
      const anew = await ask(nextYear, 'order.make', { pickingNo: 1 })
      expect(anew.orders.map(({ orderId }) => orderId)).toEqual(['P-2027-0001', 'P-2027-0002'])
    })
  })

  it('are refused for what is not there, not bought, or closed', async () => {
    await begun.inTwoWindows(async (desk) => {
      expect(await refusalOf(desk, 'order.make', { pickingNo: 9 })).toMatchObject({
        code: 'not-found',
        path: 'pickingNo',
      })
      expect(await refusalOf(desk, 'order.make', { pickingNo: 1, supplierId: 'nobody' })).toMatchObject({
        code: 'not-found',
        path: 'supplierId',
        message: 'Nothing on pick list 1 is bought from nobody.',
      })
      expect(await refusalOf(desk, 'order.read', { orderId: 'P-1' })).toMatchObject({
        code: 'not-found',
        message: 'There is no order called P-1.',
      })
      await tickAll(desk, 1)
      await ask(desk, 'picking.close', { pickingNo: 1 })
      expect((await refusalOf(desk, 'order.make', { pickingNo: 1 })).message).toBe(
        `Pick list 1 was closed on ${today}; orders are made while it is open.`,
      )
    })
  })
})
