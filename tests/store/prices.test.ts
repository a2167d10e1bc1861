import { describe, expect, it } from 'vitest'
import { readCatalogue } from '../../src-main/store/catalogue.ts'
import { dayBefore } from '../../src-main/store/day-before.ts'
import { priceHistory, readPrices, setPrice } from '../../src-main/store/prices.ts'
import type { NewPrice } from '../../src-main/store/prices.ts'
import { reading, writing } from '../../src-main/store/store.ts'
import type { Store } from '../../src-main/store/store.ts'
import { filledStore, valueOf } from './store-for-tests.ts'

const panelPrice = { itemId: 'test-panel-600x1200', supplierId: 'north', packHolds: 1 } as const
const set = (store: Store, packPence: number, validFrom: string, more: Partial<NewPrice> = {}) =>
  writing(store, (tx) => setPrice(tx, { ...panelPrice, packPence, validFrom, ...more }))
const penceOn = async (store: Store, day: string) =>
  (await reading(store, (tx) => readPrices(tx, day, [panelPrice.itemId]))).map(({ packPence }) => packPence)
const history = async (store: Store) =>
  (await reading(store, (tx) => priceHistory(tx, panelPrice.itemId))).map(
    ({ packPence, validFrom, validTo }) => [packPence, validFrom, validTo],
  )

describe('a price', () => {
  it('ends the one before it the day before, and both are found by date', async () => {
    const store = await filledStore()
    const change = valueOf(await set(store, 11900, '2026-03-01'))
    expect(change.price).toEqual({ ...panelPrice, code: '00127', packPence: 11900, validFrom: '2026-03-01' })
    expect(change.before?.packPence).toBe(11200)
    expect(await penceOn(store, '2025-12-31')).toEqual([])
    expect(await penceOn(store, '2026-02-28')).toEqual([11200])
    expect(await penceOn(store, '2026-03-01')).toEqual([11900])
    expect(await history(store)).toEqual([
      [11900, '2026-03-01', undefined],
      [11200, '2026-01-01', '2026-02-28'],
    ])
  })

  it('replaces one that was set for the same day', async () => {
    const store = await filledStore()
    await set(store, 11900, '2026-03-01')
    const change = valueOf(await set(store, 11850, '2026-03-01'))
    expect(change.before?.packPence).toBe(11900)
    expect(await history(store)).toEqual([
      [11850, '2026-03-01', undefined],
      [11200, '2026-01-01', '2026-02-28'],
    ])
  })

  it('set for a day between two others ends before the later one', async () => {
    const store = await filledStore()
    await set(store, 12500, '2026-06-01')
    await set(store, 11900, '2026-03-01')
    expect(await history(store)).toEqual([
      [12500, '2026-06-01', undefined],
      [11900, '2026-03-01', '2026-05-31'],
      [11200, '2026-01-01', '2026-02-28'],
    ])
  })

  it('of another code or pack leaves this one as it is', async () => {
    const store = await filledStore()
    await set(store, 20000, '2026-03-01', { packHolds: 2, code: '00127-2' })
    await set(store, 11000, '2026-03-01', { code: '127' })
    expect((await penceOn(store, '2026-03-02')).toSorted((a, b) => a - b)).toEqual([11000, 11200, 20000])
  })

  it('keeps the zeros in front of a code', async () => {
    const store = await filledStore()
    await set(store, 11000, '2026-03-01', { code: '127' })
    const codes = await reading(store, (tx) => readPrices(tx, '2026-03-02', [panelPrice.itemId]))
    expect(codes.map(({ code }) => code).sort()).toEqual(['00127', '127'])
    const types = await reading(store, (tx) =>
      tx.selectFrom('supplier_row').select(['code', 'pack_pence']).execute(),
    )
    expect(
      types.every(({ code, pack_pence }) => typeof code === 'string' && Number.isInteger(pack_pence)),
    ).toBe(true)
  })

  it.each([
    [{ itemId: 'none' }, 'not-found', 'itemId'],
    [{ supplierId: 'none' }, 'not-found', 'supplierId'],
    [{ packHolds: 7 }, 'invalid', 'code'],
  ])('is refused for %o', async (more, code, path) => {
    const store = await filledStore()
    const before = await history(store)
    const outcome = await set(store, 100, '2026-03-01', more)
    expect(outcome.ok ? [] : outcome.problems).toEqual([expect.objectContaining({ code, path })])
    expect(await history(store)).toEqual(before)
  })

  it('needs its code said where the supplier has two for the same pack', async () => {
    const store = await filledStore()
    await set(store, 11000, '2026-03-01', { code: '127' })
    const outcome = await set(store, 11100, '2026-03-02')
    expect(outcome.ok ? '' : outcome.problems[0]?.message).toMatch(/several codes for it \(.*127.*\)/)
  })

  it('is in the catalogue of its day, with its breaks', async () => {
    const store = await filledStore()
    const { prices } = await reading(store, (tx) => readCatalogue(tx, '2026-03-02'))
    expect(prices.find(({ itemId }) => itemId === 'test-pipe-22')).toEqual({
      itemId: 'test-pipe-22',
      supplierId: 'north',
      code: '127/3',
      packHolds: 3,
      packPence: 2900,
      breaks: [{ fromPacks: 10, packPence: 2700 }],
      validFrom: '2026-01-01',
    })
  })
})

describe('the day before', () => {
  it('minds months, years and leap years', () => {
    expect(dayBefore('2026-03-01')).toBe('2026-02-28')
    expect(dayBefore('2028-03-01')).toBe('2028-02-29')
    expect(dayBefore('2026-01-01')).toBe('2025-12-31')
    expect(dayBefore('2026-03-30')).toBe('2026-03-29')
  })
})
