import { describe, expect, it } from 'vitest'
import type { Catalogue } from '../../src-main/domain/catalogue.ts'
import {
  readCatalogue,
  saveItem,
  saveSupplier,
  seedCatalogue,
  seededEdition,
} from '../../src-main/store/catalogue.ts'
import { sortName } from '../../src-main/store/item-match.ts'
import { readItem } from '../../src-main/store/items.ts'
import { setPrice } from '../../src-main/store/prices.ts'
import { searchItems } from '../../src-main/store/search.ts'
import { reading, writing } from '../../src-main/store/store.ts'
import type { Store } from '../../src-main/store/store.ts'
import { smallCatalogue } from './catalogue-for-tests.ts'
import { filledStore, opened, tempFolder } from './store-for-tests.ts'

const day = '2026-03-02'
const seed = (store: Store, catalogue: Catalogue, edition: string) =>
  writing(store, (tx) => seedCatalogue(tx, catalogue, edition))
const whole = (store: Store) => reading(store, (tx) => readCatalogue(tx, day))
const byId = (catalogue: Catalogue) => ({
  items: catalogue.items.toSorted((a, b) => (a.itemId < b.itemId ? -1 : 1)),
  suppliers: catalogue.suppliers.toSorted((a, b) => (a.supplierId < b.supplierId ? -1 : 1)),
  prices: catalogue.prices.toSorted((a, b) => (a.itemId + a.supplierId < b.itemId + b.supplierId ? -1 : 1)),
})
const [panel] = smallCatalogue.items
const [north] = smallCatalogue.suppliers
if (panel === undefined || north === undefined) throw new Error('The small catalogue has items and suppliers')

describe('a shipped catalogue', () => {
  it('comes out of the file as it went in, and says which edition it is', async () => {
    const store = await filledStore()
    expect(byId(await whole(store))).toEqual(byId(smallCatalogue))
    expect(await reading(store, seededEdition)).toBe('test-1')
    expect(await reading(await opened(await tempFolder()), seededEdition)).toBeNull()
  })

  it('changes nothing when it is put in twice', async () => {
    const store = await filledStore()
    const before = await whole(store)
    await seed(store, smallCatalogue, 'test-1')
    expect(await whole(store)).toEqual(before)
    const found = await reading(store, (tx) => searchItems(tx, { text: 'pipe', day }))
    expect(found.found).toBe(3)
  })

  it('brings its own rows up to a later edition, and keeps those that the later one leaves out', async () => {
    const store = await filledStore()
    const corrected = { ...panel, name: 'Double panel radiator 600 × 1000, corrected' }
    await seed(
      store,
      { items: [corrected], suppliers: [{ ...north, carriagePence: 1000 }], prices: [] },
      'test-2',
    )
    expect(await reading(store, (tx) => readItem(tx, panel.itemId))).toEqual(corrected)
    const after = await whole(store)
    expect(after.items).toHaveLength(smallCatalogue.items.length)
    expect(after.suppliers.find(({ supplierId }) => supplierId === 'north')?.carriagePence).toBe(1000)
    expect(await reading(store, seededEdition)).toBe('test-2')
  })

  it('never overwrites what the firm made its own', async () => {
    const store = await filledStore()
    const ours = { ...panel, name: 'The radiator we always use', generic: false }
    const mine = { ...north, carriagePence: 0 }
    await writing(store, async (tx) => {
      await saveItem(tx, ours)
      await saveSupplier(tx, mine)
      const price = {
        itemId: panel.itemId,
        supplierId: 'north',
        packHolds: 1,
        packPence: 8800,
        validFrom: '2026-01-01',
      }
      await setPrice(tx, price)
    })
    const dearer = smallCatalogue.prices.map((price) => ({
      ...price,
      packPence: 99999,
      validFrom: '2026-02-01',
    }))
    await seed(store, { ...smallCatalogue, prices: dearer }, 'test-2')
    const after = await whole(store)
    expect(after.items.find(({ itemId }) => itemId === panel.itemId)).toEqual(ours)
    expect(after.suppliers.find(({ supplierId }) => supplierId === 'north')).toEqual(mine)
    const asked = after.prices.filter(({ itemId }) => itemId === panel.itemId)
    expect(asked.map(({ supplierId, packPence }) => [supplierId, packPence])).toEqual([
      ['north', 8800],
      ['south', 99999],
    ])
    const found = await reading(store, (tx) => searchItems(tx, { text: 'always use', day }))
    expect(found.items.map(({ item }) => item.itemId)).toEqual([panel.itemId])
  })
})

describe('the catalogue of a data file', () => {
  it('has its items by name, 8 mm before 15 mm', async () => {
    const { items } = await whole(await filledStore())
    const pipes = items.flatMap(({ kind, itemId }) => (kind === 'pipe' ? [itemId] : []))
    expect(pipes).toEqual(['test-pipe-8', 'test-pipe-15', 'test-pipe-22'])
    const byName = items.toSorted((a, b) => (sortName(a.name) < sortName(b.name) ? -1 : 1))
    expect(items.map(({ itemId }) => itemId)).toEqual(byName.map(({ itemId }) => itemId))
  })

  it.each([
    ['an emitter', panel.itemId],
    ['a part', 'test-pipe-15'],
  ])('is not given at all where %s is damaged: it says which', async (_what, itemId) => {
    const store = await filledStore()
    const row = JSON.stringify({ ...panel, itemId, generic: 'yes' })
    await writing(store, (tx) =>
      tx.updateTable('item').set({ body: row }).where('item_id', '=', itemId).execute(),
    )
    await expect(whole(store)).rejects.toThrow(`The item ${itemId} is not as it was saved`)
  })

  it('says which price is damaged', async () => {
    const store = await filledStore()
    await writing(store, (tx) =>
      tx
        .updateTable('supplier_row')
        .set({ valid_from: '2026-02-30' })
        .where('item_id', '=', panel.itemId)
        .execute(),
    )
    await expect(whole(store)).rejects.toThrow(`A price of the item ${panel.itemId} is not as it was saved`)
  })
})
