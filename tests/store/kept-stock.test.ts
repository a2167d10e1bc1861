import { describe, expect, it } from 'vitest'
import { stockOn } from '../../src-main/desk/choosing/kept-stock.ts'
import type { Item } from '../../src-main/domain/item.ts'
import { saveItem, seedCatalogue } from '../../src-main/store/catalogue.ts'
import { markFavourite, unmarkFavourite } from '../../src-main/store/favourites.ts'
import { saveJob } from '../../src-main/store/jobs.ts'
import { listChanges, undoChange } from '../../src-main/store/price-list/changes.ts'
import { saveDiscountGroup } from '../../src-main/store/price-list/discounts.ts'
import { setPrice } from '../../src-main/store/prices.ts'
import { reading, writing } from '../../src-main/store/store.ts'
import { answered } from '../answered.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { smallCatalogue } from './catalogue-for-tests.ts'
import { deskWith, filledStore, opened } from './store-for-tests.ts'

const day = '2026-03-02'
const [first] = smallCatalogue.items.filter((item) => item.kind === 'emitter')
if (first === undefined) throw new Error('The small catalogue has no emitter')
const another: Item = { ...first, itemId: 'another', name: 'Another radiator' }
const ids = ({ stock }: Awaited<ReturnType<typeof stockOn>>) => stock.emitters.map(({ itemId }) => itemId)

describe('the catalogue laid out for choosing', () => {
  it('is kept while nothing is written and the day is the same', async () => {
    const desk = deskWith(await filledStore())
    const stocked = await stockOn(day, desk)
    expect(ids(stocked)).toContain(first.itemId)
    expect(await stockOn(day, desk)).toBe(stocked)
  })
  it('is laid out anew for another day', async () => {
    const desk = deskWith(await filledStore())
    const stocked = await stockOn(day, desk)
    const later = await stockOn('2026-03-03', desk)
    expect(later).not.toBe(stocked)
    expect(await stockOn(day, desk)).not.toBe(later)
  })
  it('has an item as soon as it is saved', async () => {
    const store = await filledStore()
    const desk = deskWith(store)
    expect(ids(await stockOn(day, desk))).not.toContain('another')
    await writing(store, (tx) => saveItem(tx, another))
    expect(ids(await stockOn(day, desk))).toContain('another')
  })
  it('has what another program saved in the same file', async () => {
    const store = await filledStore()
    const desk = deskWith(store)
    await stockOn(day, desk)
    const other = await opened(store.folder)
    await writing(other, (tx) => saveItem(tx, another))
    expect(ids(await stockOn(day, desk))).toContain('another')
  })
  it('is kept when a job is saved, and when a write of an item is undone', async () => {
    const store = await filledStore()
    const desk = deskWith(store)
    const stocked = await stockOn(day, desk)
    await writing(store, (tx) => saveJob(tx, bedroomJob(), '2026-03-02T09:00:00.000Z'))
    expect(await stockOn(day, desk)).toBe(stocked)
    const undone = writing(store, async (tx) => {
      await saveItem(tx, another)
      throw new Error('Not after all')
    })
    await expect(undone).rejects.toThrow('Not after all')
    expect(await stockOn(day, desk)).toBe(stocked)
    expect(ids(stocked)).not.toContain('another')
  })
  it('has a price that was set, and the one before when that is undone', async () => {
    const store = await filledStore()
    const desk = deskWith(store)
    const [price] = smallCatalogue.prices.filter(({ itemId }) => itemId === first.itemId)
    if (price === undefined) throw new Error('The emitter has no price')
    const penceOf = async () =>
      ((await stockOn(day, desk)).shelf.prices.get(first.itemId) ?? []).map((one) => one.packPence)
    const before = await penceOf()
    const { supplierId, code, packHolds } = price
    const wanted = { itemId: first.itemId, supplierId, code, packHolds, packPence: 1, validFrom: day }
    answered(await writing(store, (tx) => setPrice(tx, wanted)))
    expect(await penceOf()).toContain(1)
    expect(before).not.toContain(1)
    const [changed] = await reading(store, (tx) => listChanges(tx, 1))
    if (changed === undefined) throw new Error('The change is not in the list')
    // As the worker of a price file does: over a connection of its own.
    const worker = await opened(store.folder)
    answered(await writing(worker, (tx) => undoChange(tx, changed.changeNo, '2026-03-02T10:00:00.000Z')))
    expect(await penceOf()).toEqual(before)
  })
  it('has a favourite as soon as it is marked, and not when the mark is gone', async () => {
    const store = await filledStore()
    const desk = deskWith(store)
    const favoured = async () => [...((await stockOn(day, desk)).shelf.favourites ?? [])]
    expect(await favoured()).toEqual([])
    await writing(store, (tx) => markFavourite(tx, first))
    expect(await favoured()).toEqual([first.itemId])
    await writing(store, (tx) => unmarkFavourite(tx, first.itemId))
    expect(await favoured()).toEqual([])
  })
  it('has another discount on a group of a supplier', async () => {
    const store = await filledStore()
    const desk = deskWith(store)
    const stocked = await stockOn(day, desk)
    const [price] = smallCatalogue.prices
    if (price === undefined) throw new Error('The small catalogue has no price')
    const { supplierId } = price
    const group = { supplierId, group: 'g', validFrom: day, name: 'G', basisPoints: 500 }
    await writing(store, (tx) => saveDiscountGroup(tx, group))
    expect(await stockOn(day, desk)).not.toBe(stocked)
  })
  it('has a new price', async () => {
    const store = await filledStore()
    const desk = deskWith(store)
    const penceOf = async () => {
      const { stock } = await stockOn(day, desk)
      return [...stock.packPence]
    }
    const before = await penceOf()
    const prices = smallCatalogue.prices.map((price) => ({ ...price, packPence: price.packPence + 100 }))
    await writing(store, (tx) => seedCatalogue(tx, { ...smallCatalogue, prices }, 'test-2'))
    expect(await penceOf()).toEqual(before.map((pence) => (pence < 0 ? pence : pence + 100)))
    expect(before.some((pence) => pence >= 0)).toBe(true)
  })
})
