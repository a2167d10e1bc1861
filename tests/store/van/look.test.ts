import { it } from 'vitest'
import { accepted, ask, begin } from './van-for-tests.ts'
it('looks', { timeout: 300000 }, async () => {
  const t = Date.now()
  const b = await begin()
  console.log('begun', Date.now() - t)
  await b.inTwoWindows(async (d) => {
    const a = await accepted(d, 'job-a', 'Ann Example')
    console.log('one', Date.now() - t)
    const c = await accepted(d, 'job-b', 'Bob Example')
    const { picking } = await ask(d, 'picking.make', { quoteIds: [a, c] })
    console.log('picked', Date.now() - t)
    console.log(picking.lines.map((l) => [l.lineNo, l.source, l.supplierId, l.kind, l.itemId, l.code, l.name, l.need, l.unit, l.packs, l.packHolds].join(' | ')).join('\n'))
    console.log(JSON.stringify(picking.body, null, 1).replace(/"why"[\s\S]*?\n {2}\}/g,'').slice(0, 9000))
    const { orders } = await ask(d, 'order.make', { pickingNo: picking.pickingNo })
    console.log(JSON.stringify(orders[0], null, 1).slice(0, 3000), orders.length, Date.now() - t)
  })
  await b.gone()
})
