import { format } from 'prettier'
import { describe, expect, it } from 'vitest'
import { catalogueFiles } from '../../../resources/catalogue/catalogue-files.ts'
import { itemKind } from '../../../src-main/domain/item.ts'
import {
  emitters,
  ids,
  items,
  onDisk,
  parts,
  partsOf,
  prices,
  rangeOf,
  repeated,
  suppliers,
} from './catalogue-on-disk.ts'

describe('the generic catalogue', () => {
  it('is what its maker makes, byte for byte, twice', () => {
    const made = catalogueFiles()
    expect(Object.keys(made)).toEqual(['emitters.json', 'parts.json', 'suppliers.json', 'prices.json'])
    for (const [name, text] of Object.entries(made))
      expect(onDisk(`catalogue/${name}`) === text, name).toBe(true)
    expect(catalogueFiles()).toEqual(made)
  })

  it('is laid out as the formatter lays it out, and stays under 1.2 MB', async () => {
    const made = Object.values(catalogueFiles())
    for (const text of made) {
      expect((await format(text, { parser: 'json', printWidth: 110 })) === text).toBe(true)
    }
    expect(made.reduce((sum, text) => sum + Buffer.byteLength(text), 0)).toBeLessThan(1_200_000)
  }, 60_000)

  it('has enough to choose from, of every kind and form', () => {
    expect(emitters.length).toBeGreaterThanOrEqual(220)
    expect(parts.length).toBeGreaterThanOrEqual(300)
    expect(itemKind.options.filter((kind) => partsOf(kind).length === 0)).toEqual([])
    expect(new Set(emitters.map(rangeOf)).size).toBe(6 + 3 + 4)
  })

  it('says of every item that its figures are generic, and names each item once', () => {
    expect(items.filter(({ generic }) => !generic)).toEqual([])
    expect(repeated(ids(items))).toEqual([])
    expect(repeated(items.map(({ name }) => name))).toEqual([])
    expect(items.filter(({ alsoCalled }) => (alsoCalled ?? []).length === 0)).toEqual([])
  })

  it('is found by the words a fitter types', () => {
    const called = (word: string) =>
      items.filter(({ alsoCalled }) => (alsoCalled ?? []).some((other) => other === word)).length
    for (const word of [
      'TRV',
      'PTFE',
      '15mm',
      'lagging',
      'type 22',
      'bleed valve',
      'caulk',
      'rad',
      '600x1200',
    ]) {
      expect(called(word), word).toBeGreaterThan(0)
    }
    expect(partsOf('valve').filter(({ name }) => name.startsWith('Lockshield')).length).toBeGreaterThan(0)
  })
})

describe('the prices of the catalogue', () => {
  it('are asked by known suppliers for known items, and for every item by at least one', () => {
    const known = new Set(ids(items))
    const sellers = suppliers.map(({ supplierId }) => supplierId)
    expect(sellers.length).toBe(3)
    expect(prices.filter((price) => !known.has(price.itemId) || !sellers.includes(price.supplierId))).toEqual(
      [],
    )
    const asked = Map.groupBy(prices, ({ itemId }) => itemId)
    expect(ids(items).filter((itemId) => !asked.has(itemId))).toEqual([])
    const byTwo = parts.filter(
      ({ itemId }) => new Set((asked.get(itemId) ?? []).map(({ supplierId }) => supplierId)).size >= 2,
    )
    expect(byTwo.length / parts.length).toBeGreaterThan(0.8)
    expect(new Set(prices.map(({ supplierId }) => supplierId)).size).toBe(3)
  })

  it('have codes that each mean one pack, some with leading zeros', () => {
    const packs = Map.groupBy(prices, ({ supplierId, code }) => `${supplierId} ${code}`)
    for (const [code, some] of packs) {
      expect(new Set(some.map(({ itemId, packHolds }) => `${itemId} ${packHolds}`)).size, code).toBe(1)
      expect(repeated(some.map(({ validFrom }) => validFrom)), code).toEqual([])
    }
    const zeros = prices.filter(({ supplierId, code }) => supplierId === 'counter' && /^0\d{4}$/.test(code))
    expect(zeros.length).toBeGreaterThan(20)
  })

  it('are above nothing, and fall with the size of the pack and with a break', () => {
    const inForce = prices.filter(({ validTo }) => validTo === undefined)
    for (const [offer, some] of Map.groupBy(inForce, ({ supplierId, itemId }) => `${supplierId} ${itemId}`)) {
      const perUnit = some
        .toSorted((a, b) => a.packHolds - b.packHolds)
        .map((one) => one.packPence / one.packHolds)
      expect(
        perUnit.every((pence) => pence > 0),
        offer,
      ).toBe(true)
      // A penny's rounding apart.
      expect(
        perUnit.every((pence, at) => at === 0 || pence < (perUnit[at - 1] ?? 0) * 1.001),
        `${offer}: ${perUnit.join(' ')}`,
      ).toBe(true)
    }
    for (const { breaks, packPence, code } of prices) {
      for (const step of breaks ?? []) expect(step.packPence, code).toBeLessThan(packPence)
    }
  })

  it('have no pipe longer than the 20 m that a cut list takes', () => {
    const pipes = new Set(ids(partsOf('pipe')))
    expect(prices.filter(({ itemId, packHolds }) => pipes.has(itemId) && packHolds > 20)).toEqual([])
  })

  it('begin in 2026, and where one follows another the old one ends the day before', () => {
    expect(prices.filter(({ validFrom }) => !validFrom.startsWith('2026-'))).toEqual([])
    for (const [pack, some] of Map.groupBy(prices, ({ supplierId, code }) => `${supplierId} ${code}`)) {
      const [first, second] = some
      if (second === undefined) continue
      const dayAfter = new Date(Date.parse(first?.validTo ?? '') + 86_400_000).toISOString().slice(0, 10)
      expect(dayAfter, pack).toBe(second.validFrom)
    }
  })
})
