import { describe, expect, it } from 'vitest'
import { penceText, typedNumber, typedPence } from '../../../src-renderer/draft/typed-number.ts'

describe('what is typed into a number box', () => {
  it('is a number when it is written as one', () => {
    expect(['12', ' 12.5 ', '-3', '.5', '12.', '0'].map(typedNumber)).toEqual([12, 12.5, -3, 0.5, 12, 0])
  })
  it('may have a decimal comma, or a printed minus sign', () => {
    expect(typedNumber('2,4')).toBe(2.4)
    expect(typedNumber('\u22123')).toBe(-3)
  })
  it('is nothing when the box is empty', () => {
    expect(typedNumber('  ')).toBeUndefined()
  })
  it('stays as typed when it is no number, so that the desk can say so', () => {
    expect(['abc', '1.2.3', '1e9', 'Infinity', '12 mm', '0x10'].map(typedNumber)).toEqual([
      'abc',
      '1.2.3',
      '1e9',
      'Infinity',
      '12 mm',
      '0x10',
    ])
  })
})

describe('money in a box', () => {
  it('is read to the penny without rounding', () => {
    expect(['185', '185.5', '£1,234.56', '0.07', '-3.20', '1.15'].map(typedPence)).toEqual([
      18500, 18550, 123456, 7, -320, 115,
    ])
  })
  it('stays as typed when it has more than pence, or is no money', () => {
    expect(typedPence('1.234')).toBe('1.234')
    expect(typedPence('about ten')).toBe('about ten')
    expect(typedPence('')).toBeUndefined()
  })
  it('is shown in pounds and pence', () => {
    expect([18500, 7, -320].map(penceText)).toEqual(['185.00', '0.07', '-3.20'])
    expect(penceText('about ten')).toBe('about ten')
  })
})
