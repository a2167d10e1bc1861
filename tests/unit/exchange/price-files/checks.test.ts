import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { listRow } from '../../../../src-main/domain/price-list.ts'
import { hasGtinShape, isGtin } from '../../../../src-main/exchange/price-files/values/gtin.ts'
import { isListRow } from '../../../../src-main/exchange/price-files/values/list-row-check.ts'
import { remembered } from '../../../../src-main/exchange/price-files/values/remembered.ts'

describe('a GTIN', () => {
  it('has a right check figure', () => {
    // 629104150021 with check figure 3 is the worked example on the standards body's own page (from memory).
    expect(isGtin('6291041500213')).toBe(true)
    // By hand, 96385074: 7x3 + 0 + 5x3 + 8 + 3x3 + 6 + 9x3 = 86, and 4 makes it 90.
    expect(isGtin('96385074')).toBe(true)
    expect(isGtin('6291041500214')).toBe(false)
    expect(isGtin('6291041500231')).toBe(false)
    expect(['', '629104150021', '62910415002', 'A291041500213'].map(isGtin)).toEqual([
      false,
      false,
      false,
      false,
    ])
  })

  it('has the shape that the schema asks', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[0-9 x]{0,16}$/), (text) => {
        expect(hasGtinShape(text)).toBe(/^(\d{8}|\d{12,14})$/.test(text))
      }),
    )
  })

  it('with any one figure changed is none', () => {
    const twelve = fc.stringMatching(/^\d{12}$/)
    fc.assert(
      fc.property(twelve, fc.nat(12), fc.integer({ min: 1, max: 9 }), (digits, at, by) => {
        const whole = Array.from({ length: 10 }, (_, check) => `${digits}${check}`).find(isGtin) ?? ''
        const changed = Array.from(whole, (figure, index) =>
          index === at ? String((Number(figure) + by) % 10) : figure,
        )
        expect(isGtin(changed.join(''))).toBe(false)
      }),
    )
  })
})

describe('the check of a row', () => {
  const text = fc.oneof(
    fc.string(),
    fc.constantFrom('', ' ', '00126', 'a b', 'x'.repeat(200), 'x'.repeat(201)),
  )
  const day = fc.oneof(
    fc.constantFrom(
      '2027-02-28',
      '2027-02-29',
      '2028-02-29',
      '2100-02-29',
      '2027-13-01',
      '2027-1-01',
      '0000-01-01',
      '',
    ),
    fc.stringMatching(/^\d{4}-[01]\d-[0-3]\d$/),
    fc.stringMatching(/^\d{4}[-/]\d\d[-/]\d\d$/),
    fc.string(),
  )
  const pence = fc.oneof(
    fc.integer({ min: -1, max: 100_000_001 }),
    fc.constantFrom(0, -0, 1.5, Number.NaN, Infinity, 100_000_000, 2 ** 53),
  )
  const packs = fc.oneof(fc.integer({ min: 0, max: 100_001 }), fc.constantFrom(1, 2, 1.5, 100_000))
  const optional = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined })
  const row = fc.record({
    code: text,
    name: text,
    gtin: optional(fc.oneof(fc.string(), fc.stringMatching(/^\d{7,15}$/))),
    packHolds: fc.oneof(fc.double(), fc.integer(), fc.constantFrom(0, 100_000, 100_000.1, 0.001, Infinity)),
    packPence: pence,
    breaks: optional(
      fc.array(fc.record({ fromPacks: packs, packPence: pence }), { maxLength: 21, size: 'max' }),
    ),
    group: optional(
      fc.oneof(fc.string(), fc.constantFrom('EF', '-EF', 'a.b_c', 'a'.repeat(80), 'a'.repeat(81), 'a b')),
    ),
    validFrom: optional(day),
    validTo: optional(day),
  })

  it('takes what the schema takes, and nothing else', () => {
    fc.assert(
      fc.property(row, (one) => {
        expect(isListRow(one)).toBe(listRow.safeParse(one).success)
      }),
      { numRuns: 2000 },
    )
  })

  it('agrees with the schema where one thing of a right row is changed', () => {
    const right = fc.record({
      code: fc.constant('00126'),
      name: fc.constant('Elbow'),
      packHolds: fc.constant(10),
      packPence: fc.constant(105),
    })
    const oneWrong = fc
      .tuple(
        right,
        row,
        fc.constantFrom(
          'code',
          'name',
          'gtin',
          'packHolds',
          'packPence',
          'breaks',
          'group',
          'validFrom',
          'validTo',
        ),
      )
      .map(([base, other, field]) => ({ ...base, [field]: other[field] }))
    fc.assert(
      fc.property(oneWrong, (one) => {
        expect(isListRow(one)).toBe(listRow.safeParse(one).success)
      }),
      { numRuns: 3000 },
    )
  })
})

describe('what is remembered', () => {
  it('is asked once for each text, and answered the same', () => {
    let asked = 0
    const read = remembered((text) => {
      asked += 1
      return text === 'none' ? undefined : text.length
    })
    expect([read('a'), read('bb'), read('a'), read('none'), read('none')]).toEqual([
      1,
      2,
      1,
      undefined,
      undefined,
    ])
    expect(asked).toBe(3)
  })
})
