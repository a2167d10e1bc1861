import { describe, expect, it } from 'vitest'
import { itemKind, specShapes } from '../../../src-main/domain/item.ts'
import { counted } from '../../../src-renderer/parts/counted.ts'
import { fieldsOf, kindChoices } from '../../../src-renderer/parts/item/item-fields.ts'
import { kindWords } from '../../../src-renderer/parts/words.ts'
import { quantitySeen } from '../../../src-renderer/screens/prices/bring-in/break-box.tsx'
import { typedPrice } from '../../../src-renderer/screens/prices/grid/use-price-edit.ts'

describe('a price typed in its row', () => {
  it.each([
    ['12.5', 1250],
    ['£1,234.50', 123450],
    ['1234.5', 123450],
    [' £ 3 ', 300],
    ['0', 0],
    ['1,000', 100000],
  ])('%s is %i pence', (text, pence) => expect(typedPrice(text)).toBe(pence))

  it.each([
    ['', 'Type a price, or press Esc to leave it as it was.'],
    ['abc', '“abc” is no amount of money. Type pounds and pence, such as 12.50.'],
    ['12,5', '“12,5” is no amount of money. Type pounds and pence, such as 12.50.'],
    ['1.234', '“1.234” is no amount of money. Type pounds and pence, such as 12.50.'],
    ['-1', 'A price is nought or more.'],
  ])('"%s" is none', (text, says) => expect(typedPrice(text)).toBe(says))
})

describe('the quantity that a heading seems to state', () => {
  it.each([
    ['10+', 10],
    ['Price 100+', 100],
    ['25 off', 25],
    ['1,000 or more', 1000],
    ['10-49', 10],
    ['Qty 50', 50],
    ['Price', undefined],
    ['Break 2 price', undefined],
    ['1+', undefined],
  ])('%s: %s', (heading, packs) => expect(quantitySeen(heading)).toBe(packs))
})

describe('kinds and their figures', () => {
  it('have one name each, which no other kind has', () => {
    const names = Object.values(kindWords)
    expect(new Set(names).size).toBe(names.length)
    expect(kindChoices.map(({ value }) => value)).toEqual(['emitter', ...itemKind.options])
    for (const { value, label } of kindChoices) expect(label).toBe(kindWords[value])
  })

  it('are asked by name, those of a few sizes as a choice of them', () => {
    expect(fieldsOf('clip')).toEqual([
      {
        path: ['spec', 'outsideMm'],
        label: 'Pipe outside (mm)',
        options: ['8', '10', '15', '22'],
        counts: true,
        optional: false,
      },
    ])
    for (const kind of itemKind.options) {
      const asked = fieldsOf(kind).map(({ path }) => path[1])
      expect(asked).toEqual(Object.keys(specShapes[kind]))
      for (const { label } of fieldsOf(kind)) expect(label).toMatch(/^[A-Z]/)
    }
  })
})

describe('counts in words', () => {
  it('say one and many', () => {
    expect([
      counted(1, ['row', 'rows']),
      counted(0, ['row', 'rows']),
      counted(1204, ['row', 'rows']),
    ]).toEqual(['1 row', '0 rows', '1,204 rows'])
  })
})
