import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { supplierPrice } from '../../../src-main/domain/price.ts'
import { isPlainPrice, readPrice } from '../../../src-main/store/known-rows/read-price.ts'
import type { PriceFound } from '../../../src-main/store/known-rows/read-price.ts'

const price = {
  itemId: 'vent-1',
  supplierId: 'counter',
  code: 'VE 1',
  packHolds: 2.5,
  packPence: 345,
  breaks: [{ fromPacks: 10, packPence: 300 }],
  validFrom: '2026-02-28',
  validTo: '2026-12-01',
  confirmedOn: '2026-10-10',
}
const fields = Object.keys(price) as readonly (keyof typeof price)[]
const edges: readonly unknown[] = [
  0,
  -1,
  1,
  0.5,
  1e-9,
  100_000,
  100_001,
  100_000.5,
  1_000_000_00,
  1_000_000_01,
  1e300,
  '',
  ' ',
  'a',
  ' a',
  'a ',
  'a b',
  'a'.repeat(80),
  'a'.repeat(81),
  'a'.repeat(200),
  'a'.repeat(201),
  '.a',
  '2026-02-28',
  '2026-02-29',
  '2024-02-29',
  '2026-00-10',
  '2026-13-01',
  '2026-12-31',
  '2026-04-31',
  '2026-01-00',
  '2026-1-01',
  '02026-01-01',
  '2026-01-01T00:00',
  '2026-01-01\n',
  '0000-01-01',
  '9999-12-28',
  null,
  undefined,
  true,
  {},
  [],
  [{ fromPacks: 2, packPence: 0 }],
  [{ fromPacks: 1, packPence: 0 }],
  [{ fromPacks: 100_001, packPence: 0 }],
  [{ fromPacks: 2, packPence: -1 }],
  [{ fromPacks: 2 }],
  [{ fromPacks: 2, packPence: 1, more: 1 }],
  [{ fromPacks: 2.5, packPence: 1 }],
  'breaks',
  [null],
  ...[20, 21].map((length) =>
    Array.from({ length }, () => ({ fromPacks: 100_000, packPence: 1_000_000_00 })),
  ),
]

type Read = { readonly price: unknown } | { readonly refused: string }

function readBy(read: () => unknown): Read {
  try {
    return { price: read() }
  } catch (error) {
    return { refused: String(error) }
  }
}

function bySchema(found: PriceFound): Read {
  const { success, data } = supplierPrice.safeParse(found)
  return success ? { price: data } : { refused: 'Error: A price is not as it was saved.' }
}

const quickly = (found: PriceFound) => readBy(() => readPrice(found, 'A price'))

describe('a price of the data file, read without the schema', () => {
  it('is what the schema makes of it: every field at every edge', () => {
    for (const field of fields) {
      for (const edge of edges) {
        const found = { ...price, [field]: edge }
        expect(quickly(found)).toStrictEqual(bySchema(found))
      }
    }
  })

  it('is the same for any values', () => {
    const other = fc.oneof(fc.double(), fc.integer(), fc.string(), fc.jsonValue(), fc.constantFrom(...edges))
    const changes = fc.dictionary(fc.constantFrom(...fields), other, { maxKeys: 3 })
    fc.assert(
      fc.property(changes, (change) => {
        const found = { ...price, ...change }
        expect(quickly(found)).toStrictEqual(bySchema(found))
      }),
      { numRuns: 2000 },
    )
  })

  it('is plain with and without what may be absent, on all days but the last of a month', () => {
    const { breaks, validTo, confirmedOn, ...bare } = price
    for (const one of [price, bare, { ...bare, breaks }, { ...bare, validTo }, { ...bare, confirmedOn }]) {
      expect(isPlainPrice(one)).toBe(true)
    }
    expect(isPlainPrice({ ...price, validFrom: '2026-01-29' })).toBe(false)
    expect(readPrice({ ...price, validFrom: '2026-01-29' }, 'A price').validFrom).toBe('2026-01-29')
    expect(isPlainPrice({ ...price, code: ' VE 1' })).toBe(false)
    expect(readPrice({ ...price, code: ' VE 1' }, 'A price').code).toBe('VE 1')
  })
})
