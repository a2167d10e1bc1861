import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { InputOf } from '../../../../src-main/contract/requests.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { answer } from '../../../../src-main/desk/router.ts'
import { supplierSplit } from '../../../../src-main/contract/suppliers.ts'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import { pickList as pickListSchema, quote as quoteSchema } from '../../../../src-main/domain/quote.ts'
import type { PickList } from '../../../../src-main/domain/quote.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobSchema.parse(sample)
const odd = job.swaps.map((swap, index) => (index === 0 ? { ...swap, elementW: 999 } : swap))
const gapKey = 'element thread="G1/2" watts=999'

async function listed(how: Omit<InputOf<'pickList.build'>, 'job'>, of = job): Promise<PickList> {
  const found = await answer('pickList.build', { job: of, ...how }, desk)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return pickListSchema.parse(found.value)
}
async function quoted(of = job) {
  const found = await answer('quote.build', { job: of }, desk)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return quoteSchema.parse(found.value)
}

const lineOf = (list: PickList, itemId: string) =>
  list.suppliers.flatMap(({ lines }) => lines).filter((line) => line.itemId === itemId)

describe('a pick list', () => {
  it('is each line from whoever is cheapest for it, unless something else is asked', async () => {
    const plain = await listed({})
    expect(await listed({ by: 'cheapestEach', vanStock: [] })).toEqual(plain)
    expect(plain.fromVan).toBeUndefined()
    expect(plain.split).toBeUndefined()
    expect(plain.suppliers.every((one) => one.goodsPence === undefined)).toBe(true)
    expect(plain.why.says).toBe('Whole packs for every line, by supplier.')
  })

  it('takes from the van first and buys the rest: three of four anchors are there, one is bought', async () => {
    const list = await listed({ vanStock: [{ itemId: 'anchor-metal-10-thin', quantity: 3 }] })
    expect(list.fromVan).toEqual([
      expect.objectContaining({ itemId: 'anchor-metal-10-thin', quantity: 3, unit: 'each' }),
    ])
    expect(lineOf(list, 'anchor-metal-10-thin')).toEqual([expect.objectContaining({ need: 1, packs: 1 })])
    const [van] = list.why.from
    expect(van).toMatchObject({ value: 3, unit: 'each' })
    expect(van?.says).toMatch(/: in the van already, so not bought\.$/)
    expect(list.why.from.length).toBe(1 + Number(list.why.value))
  })

  it('cuts pipe from the van where the van has a whole length', async () => {
    const list = await listed({ vanStock: [{ itemId: 'pipe-copper-15', quantity: 2 }] })
    expect(list.fromVan).toEqual([
      { itemId: 'pipe-copper-15', name: 'Copper pipe, 15 mm', quantity: 1, unit: 'm' },
    ])
    expect(lineOf(list, 'pipe-copper-15')).toEqual([])
    expect(list.pipeCuts.map(({ bars }) => bars.map(({ stockId }) => stockId))).toEqual([['van']])
  })

  it('split over suppliers buys the same needs, costs what buy.plan says, and shows carriage and one supplier alone', async () => {
    const [list, plain] = [await listed({ by: 'cheapestSplit' }), await listed({})]
    const found = await answer('buy.plan', { job }, desk)
    if (!found.ok) throw new Error('The sample can be split')
    const plan = supplierSplit.parse(found.value)
    expect(list.split).toEqual({
      goodsPence: plan.goodsPence,
      carriagePence: plan.carriagePence,
      totalPence: plan.totalPence,
      proved: true,
      says: plan.says,
      oneSupplier: plan.oneSupplier,
    })
    const needs = (one: PickList) =>
      one.suppliers
        .flatMap(({ lines }) => lines.map(({ itemId, need }) => `${itemId} ${need.toFixed(4)}`))
        .toSorted()
    expect(needs(list)).toEqual(needs(plain))
    for (const { supplierId, goodsPence, carriagePence } of list.suppliers) {
      const order = plan.orders.find((one) => one.supplierId === supplierId)
      expect([goodsPence, carriagePence]).toEqual([order?.goodsPence, order?.carriagePence])
    }
    expect(list.why.says).toBe(
      'Whole packs for every line, split over the suppliers with carriage and minimum orders.',
    )
    expect(list.pipeCuts).toHaveLength(plain.pipeCuts.length)
    const cannot = list.split?.oneSupplier.find((one) => one.supplierId === 'fixings')?.cannot
    expect(cannot).toContain('does not offer Double panel radiator, one fin, 600 high x 1000 wide')
  })

  it('keeps the order of the list within each supplier when it is split', async () => {
    const order = (await quoted()).internal.purchases.map(({ itemId }) => itemId)
    for (const { lines } of (await listed({ by: 'cheapestSplit' })).suppliers) {
      const places = lines.map(({ itemId }) => order.indexOf(itemId))
      expect(places).toEqual(places.toSorted((a, b) => a - b))
    }
  })

  it('split with van stock buys only the rest', async () => {
    const vanStock = [
      { itemId: 'anchor-metal-10-thin', quantity: 9 },
      { itemId: 'pipe-copper-15', quantity: 1 },
    ]
    const list = await listed({ by: 'cheapestSplit', vanStock })
    expect(list.fromVan?.map(({ itemId, quantity }) => [itemId, quantity])).toEqual([
      ['anchor-metal-10-thin', 4],
      ['pipe-copper-15', 1],
    ])
    expect([...lineOf(list, 'anchor-metal-10-thin'), ...lineOf(list, 'pipe-copper-15')]).toEqual([])
  })
})

describe('a gap filled by hand', () => {
  it('with a thing by name and price is on the quote and the pick list, and is no gap any more', async () => {
    const figures = { 'money.markUpPartsBasisPoints': 2500 }
    const open = await quoted({ ...job, swaps: odd, figures })
    expect(open.gaps.map((gap) => gap.gapKey)).toEqual([gapKey])
    const fills = [{ gapKey, name: 'Heating element 999 W, from the maker', netCostPence: 4250 }]
    const filled = { ...job, swaps: odd, fills, figures }
    const quote = await quoted(filled)
    expect(quote.gaps).toEqual([])
    const line = quote.lines.find(({ name }) => name === 'Heating element 999 W, from the maker')
    expect(quote.internal.costPence - open.internal.costPence).toBe(4250)
    // 42.50 with a quarter on it is 53.125, a half penny up.
    expect(line?.netPence).toBe(5313)
    expect(JSON.stringify(line?.why)).toContain('Filled by hand with Heating element 999 W, from the maker.')
    const list = await listed({ by: 'cheapestSplit' }, filled)
    const elsewhere = list.suppliers.find(({ supplierId }) => supplierId === 'one-off')
    expect(elsewhere).toMatchObject({ name: 'Bought elsewhere', lines: [{ code: 'one-off', packs: 1 }] })
    expect(elsewhere?.goodsPence).toBeUndefined()
    expect(list.missing).toEqual([])
    const plan = await answer('buy.plan', { job: filled }, desk)
    if (!plan.ok) throw new Error('The filled job can be split')
    expect(supplierSplit.parse(plan.value).gaps.map(({ says }) => says)).toEqual([
      'Heating element 999 W, from the maker is bought elsewhere, by hand, for £42.50. It is in none of the sums here.',
    ])
  })

  it('is refused for two things at once', async () => {
    const fills = [
      { gapKey, name: 'One', netCostPence: 1 },
      { gapKey, itemId: 'vent-key-loose' },
    ]
    const found = await answer('quote.build', { job: { ...job, swaps: odd, fills } }, desk)
    expect(found.ok ? null : found.problems[0]).toMatchObject({
      code: 'invalid',
      path: 'job.fills[1].gapKey',
    })
  })
})
