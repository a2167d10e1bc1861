import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { given } from '../../../../src-main/domain/derivation.ts'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import { supplierSplit } from '../../../../src-main/contract/suppliers.ts'
import type { SupplierSplit } from '../../../../src-main/contract/suppliers.ts'
import { solverWithin } from '../../../../src-main/desk/buying/solver.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { workUp } from '../../../../src-main/desk/quoting/work-up.ts'
import { splitCase, splitWith } from '../../../../src-main/engine/buying/split/supplier-split.ts'
import { answer } from '../../../../src-main/desk/router.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobSchema.parse(sample)

async function asked(name: 'buy.plan' | 'buy.split', input: unknown): Promise<SupplierSplit> {
  const found = await answer(name, input, desk)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return supplierSplit.parse(found.value)
}

async function purchases() {
  const worked = await workUp(job, desk)
  if (!worked.ok) throw new Error(JSON.stringify(worked.problems))
  return worked.value.quote.internal.purchases
}

describe("buying for the sample job's parts list", () => {
  it('buys every line of the quote once, and costs no more than the quote bought line by line with its carriage', async () => {
    const plan = await asked('buy.plan', { job })
    const quoted = await purchases()
    const lines = plan.orders.flatMap((order) => order.lines)
    expect(lines.map(({ lineId }) => lineId).toSorted()).toEqual(
      quoted.map(({ lineId }) => lineId).toSorted(),
    )
    expect(plan.proved).toBe(true)
    const goods = Map.groupBy(quoted, ({ supplierId }) => supplierId)
    const { suppliers } = await catalogueOfSample()
    const byLine = [...goods].reduce((total, [supplierId, bought]) => {
      const pence = bought.reduce((sum, { costPence }) => sum + costPence, 0)
      const terms = suppliers.find((one) => one.supplierId === supplierId)
      const free = pence >= (terms?.carriageFreeFromPence ?? Infinity)
      return total + pence + (free ? 0 : (terms?.carriagePence ?? 0))
    }, 0)
    expect(plan.totalPence).toBeLessThanOrEqual(byLine)
  })

  it('holds for each line enough of the item', async () => {
    const plan = await asked('buy.plan', { job })
    const needs = new Map((await purchases()).map(({ lineId, need }) => [lineId, need]))
    for (const { lineId, packs, leftover } of plan.orders.flatMap((order) => order.lines)) {
      const held = packs.reduce((sum, { holds, count }) => sum + holds * count, 0)
      expect(held - leftover).toBeCloseTo(needs.get(lineId) ?? -1, 5)
      expect(leftover).toBeGreaterThanOrEqual(0)
    }
  })

  it('buys nothing of what the van has', async () => {
    const [first] = (await purchases()).filter(({ pieces }) => pieces === undefined)
    if (first === undefined) throw new Error('The sample buys nothing')
    const vanStock = [{ itemId: first.itemId, quantity: 1000 }]
    const plan = await asked('buy.plan', { job, vanStock })
    expect(plan.fromVan.map(({ itemId }) => itemId)).toContain(first.itemId)
    expect(plan.orders.flatMap(({ lines }) => lines.map(({ itemId }) => itemId))).not.toContain(first.itemId)
  })

  it('gives the same answer twice', async () => {
    expect(await asked('buy.plan', { job })).toEqual(await asked('buy.plan', { job }))
  })

  it('shows what the catalogue has not got as a gap, and splits the rest', async () => {
    const swaps = job.swaps.map((swap, index) => (index === 0 ? { ...swap, elementW: 999 } : swap))
    const plan = await asked('buy.plan', { job: { ...job, swaps } })
    expect(plan.gaps.map(({ says }) => says)).toEqual(['The catalogue has no heating element (999 W, G1/2).'])
    expect(plan.totalPence).toBeGreaterThan(0)
  })

  it('buys pipe in the lengths that the cut list needs', async () => {
    const [pipe] = (await purchases()).filter(({ pieces }) => pieces !== undefined)
    if (pipe === undefined) throw new Error('The sample cuts no pipe')
    const plan = await asked('buy.plan', { job })
    const bought = plan.orders.flatMap(({ lines }) => lines).find(({ lineId }) => lineId === pipe.lineId)
    const longest = Math.max(...(pipe.pieces ?? []).map(({ lengthMm }) => lengthMm))
    for (const { holds } of bought?.packs ?? [{ holds: 0 }])
      expect(holds * 1000).toBeGreaterThanOrEqual(longest)
  })
})

describe('pipe in the van', () => {
  it('is taken in whole lengths, and not bought', async () => {
    const [pipe] = (await purchases()).filter(({ pieces }) => pieces !== undefined)
    if (pipe === undefined) throw new Error('The sample cuts no pipe')
    // The sample needs one piece of 155 mm; this pipe is sold by 1 m and by 3 m.
    const vanStock = [{ itemId: pipe.itemId, quantity: 1000 }]
    const plan = await asked('buy.plan', { job, vanStock })
    expect(plan.fromVan).toEqual([{ lineId: pipe.lineId, itemId: pipe.itemId, quantity: 1 }])
    expect(plan.orders.flatMap(({ lines }) => lines.map(({ lineId }) => lineId))).not.toContain(pipe.lineId)
    const less = await asked('buy.plan', { job, vanStock: [{ itemId: pipe.itemId, quantity: 0.999 }] })
    expect(less.fromVan).toEqual([])
  })
})

async function catalogueOfSample() {
  const worked = await workUp(job, desk)
  if (!worked.ok) throw new Error(JSON.stringify(worked.problems))
  return worked.value.catalogue
}

describe('a split asked for by itself', () => {
  const input = {
    lines: [
      { lineId: 'valves', itemId: 'valve', need: 2, unit: 'each' },
      { lineId: 'tape', itemId: 'roll', need: 1, unit: 'each' },
    ],
    offers: [
      { lineId: 'valves', supplierId: 'town', packs: [{ code: 'V1', holds: 1, pence: 1000 }] },
      { lineId: 'tape', supplierId: 'town', packs: [{ code: 'R1', holds: 1, pence: 300 }] },
      { lineId: 'valves', supplierId: 'moor', packs: [{ code: 'MV', holds: 1, pence: 900 }] },
      { lineId: 'tape', supplierId: 'moor', packs: [{ code: 'MR', holds: 1, pence: 350 }] },
    ],
    suppliers: [
      { supplierId: 'town', name: 'Town Counter', carriagePence: 500 },
      { supplierId: 'moor', name: 'Moor Supplies', carriagePence: 600 },
    ],
  }

  it('goes through the solver on its own thread: all from Moor, 1800 + 350 + 600 = 2750', async () => {
    const plan = await asked('buy.split', input)
    expect([plan.totalPence, plan.proved, plan.orders.length]).toEqual([2750, true, 1])
  })

  it('takes Town when Moor asks for an order of 2151 and there are only 2150', async () => {
    const [town, moor] = input.suppliers
    const suppliers = [town, { ...moor, minimumOrderPence: 2151 }]
    // Town alone: 2000 + 300 + 500.
    expect((await asked('buy.split', { ...input, suppliers })).totalPence).toBe(2800)
    const reached = [town, { ...moor, minimumOrderPence: 2150 }]
    expect((await asked('buy.split', { ...input, suppliers: reached })).totalPence).toBe(2750)
  })

  it('comes free of carriage from the very penny on', async () => {
    const [town, moor] = input.suppliers
    const at = async (carriageFreeFromPence: number) =>
      (await asked('buy.split', { ...input, suppliers: [{ ...town, carriageFreeFromPence }, moor] }))
        .totalPence
    expect(await at(2300)).toBe(2300)
    expect(await at(2301)).toBe(2750)
  })

  it('is refused where no split reaches a minimum', async () => {
    const suppliers = input.suppliers.map((one) => ({ ...one, minimumOrderPence: 5000 }))
    const found = await answer('buy.split', { ...input, suppliers }, desk)
    expect(found.ok ? null : found.problems[0]?.code).toBe('impossible')
  })
})

describe('the solver', () => {
  it('says, when its time is up, that what it has is not proved', async () => {
    const suppliers = Array.from({ length: 6 }, (_, place) => ({
      supplierId: `s${place}`,
      name: `Supplier ${place}`,
      carriagePence: 1500 + 311 * place,
      carriageFreeFromPence: 60_000 + 7_001 * place,
    }))
    // Prices that no supplier leads throughout: (37 line + 101 place) modulo 97 pence about a base.
    const lines = Array.from({ length: 120 }, (_, line) => ({
      lineId: `l${line}`,
      from: suppliers.map(({ supplierId }, place) => ({
        supplierId,
        pence: 1000 + 17 * line + ((37 * line + 101 * place * (line + 3)) % 97),
        packs: [],
        leftover: 0,
        why: given('Given', 1),
      })),
    }))
    const offered = lines.map((one) => ({
      ...one,
      itemId: one.lineId,
      need: 1,
      unit: 'each' as const,
      fromVan: 0,
      toBuy: 1,
    }))
    const found = await splitWith(splitCase(offered, suppliers), solverWithin(1))
    if (!found.ok) throw new Error(found.problems[0]?.message)
    expect(found.value.proved).toBe(false)
    expect(found.value.says).toContain('not proved')
    expect(found.value.totalPence).toBe(found.value.goodsPence + found.value.carriagePence)
  })

  it('owns up to text that is no model', async () => {
    await expect(solverWithin()('this is no model')).rejects.toThrow('could not read the model')
  })
})
