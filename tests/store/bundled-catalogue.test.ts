import { describe, expect, it } from 'vitest'
import { bundledCatalogue, bundledEdition } from '../../src-main/desk/bundled-catalogue.ts'
import { catalogueItem } from '../../src-main/desk/catalogue/catalogue-item.ts'
import { catalogueSearch } from '../../src-main/desk/catalogue/catalogue-search.ts'
import { catalogueOf, itemsOf } from '../../src-main/desk/catalogue-of.ts'
import { seedCatalogue } from '../../src-main/store/catalogue.ts'
import { writing } from '../../src-main/store/store.ts'
import { requests } from '../../src-main/contract/requests.ts'
import { deskWith, opened, tempFolder, valueOf } from './store-for-tests.ts'

const without = deskWith(null, { today: '2030-01-01' })

async function withStore() {
  const store = await opened(await tempFolder())
  const [catalogue, edition] = [await bundledCatalogue(), await bundledEdition()]
  await writing(store, (tx) => seedCatalogue(tx, catalogue, edition))
  return deskWith(store, { today: '2030-01-01' })
}

describe('the catalogue that comes with the program', () => {
  it('has items, each once, and prices of items and suppliers that it has', async () => {
    const { items, suppliers, prices } = await bundledCatalogue()
    const itemIds = new Set(items.map(({ itemId }) => itemId))
    const supplierIds = new Set(suppliers.map(({ supplierId }) => supplierId))
    expect(items.length).toBeGreaterThan(0)
    expect(itemIds.size).toBe(items.length)
    expect(supplierIds.size).toBe(suppliers.length)
    expect(
      prices.filter(({ itemId, supplierId }) => !itemIds.has(itemId) || !supplierIds.has(supplierId)),
    ).toEqual([])
    expect(await bundledEdition()).toMatch(/\S/)
  })

  it('is searched and shown with no data folder as it is with one', async () => {
    const over = await withStore()
    const { items } = await bundledCatalogue()
    const names = items.filter((_, at) => at % Math.ceil(items.length / 12) === 0).map(({ name }) => name)
    for (const text of ['', '15mm', '600', 'valve', 'towel rail', 'lock', 'p', '1/2', ...names]) {
      const outcome = await catalogueSearch({ text }, without)
      expect(outcome, text).toEqual(await catalogueSearch({ text }, over))
      expect(requests['catalogue.search'].output.safeParse(valueOf(outcome)).error).toBeUndefined()
    }
    for (const name of names) {
      const found = valueOf(await catalogueSearch({ text: name }, without)).items
      expect(found[0]?.item.name, name).toBe(name)
      const itemId = found[0]?.item.itemId ?? ''
      expect(await catalogueItem({ itemId }, without)).toEqual(await catalogueItem({ itemId }, over))
    }
    const missing = await catalogueItem({ itemId: 'none' }, without)
    expect(missing.ok ? null : missing.problems[0]).toMatchObject({ code: 'not-found', path: 'itemId' })
  })

  it('is the same for the rules with no data folder as with one', async () => {
    const over = await withStore()
    const sorted = (things: readonly unknown[]) => things.map((thing) => JSON.stringify(thing)).sort()
    const [inMemory, inFile] = [await catalogueOf(without), await catalogueOf(over)]
    expect(sorted(inFile.items)).toEqual(sorted(inMemory.items))
    const plain = (things: readonly object[]) =>
      things.map((thing) => JSON.stringify(Object.entries(thing).toSorted())).toSorted()
    expect(plain(inFile.suppliers)).toEqual(plain(inMemory.suppliers))
    expect(plain(inFile.prices)).toEqual(plain(inMemory.prices))
    const ids = inMemory.items.slice(0, 3).map(({ itemId }) => itemId)
    expect(sorted(await itemsOf(over, ids))).toEqual(sorted(await itemsOf(without, ids)))
  })
})
