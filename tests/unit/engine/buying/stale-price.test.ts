import { describe, expect, it } from 'vitest'
import { daysBetween, stalePrice } from '../../../../src-main/engine/buying/stale-price.ts'

const price = { validFrom: '2025-03-01', code: 'TV15A', supplierName: 'Southmoor Test Supplies' }

describe('days between two days', () => {
  it('are counted over the ends of months and years', () => {
    expect(daysBetween('2026-03-02', '2026-03-02')).toBe(0)
    expect(daysBetween('2026-02-28', '2026-03-01')).toBe(1)
    expect(daysBetween('2025-12-31', '2026-01-01')).toBe(1)
    expect(daysBetween('2026-01-01', '2025-12-31')).toBe(-1)
    expect(daysBetween('2026-01-31', '2026-03-31')).toBe(59)
  })

  // Gregorian reform: every fourth year is a leap year, but of the full centuries only each fourth.
  it('count the leap day of 2000 and 2024, and none in 1900, 2025 or 2100', () => {
    for (const [year, days] of [
      ['1900', 1],
      ['2000', 2],
      ['2024', 2],
      ['2025', 1],
      ['2100', 1],
    ] as const) {
      expect(daysBetween(`${year}-02-28`, `${year}-03-01`)).toBe(days)
    }
    expect(daysBetween('2000-01-01', '2001-01-01')).toBe(366)
    expect(daysBetween('1900-01-01', '1901-01-01')).toBe(365)
    // Four hundred years are 146 097 days.
    expect(daysBetween('1726-11-25', '2126-11-25')).toBe(146_097)
  })
})

describe('a stale price', () => {
  it('is one that began longer ago than the limit, by a day', () => {
    expect(stalePrice(price, '2026-03-01', 365)).toBeNull()
    expect(stalePrice(price, '2026-03-02', 365)).toBe(
      'The price of TV15A at Southmoor Test Supplies began on 2025-03-01, 366 days ago, and the firm takes a price on trust for 365: ask for a new one.',
    )
  })

  it('counts from the day the supplier last confirmed it, where that is later than the day it began', () => {
    expect(stalePrice({ ...price, confirmedOn: '2025-06-01' }, '2026-06-01', 365)).toBeNull()
    // A day more than 365 after 1 June 2025.
    expect(stalePrice({ ...price, confirmedOn: '2025-06-01' }, '2026-06-02', 365)).toBe(
      'The price of TV15A at Southmoor Test Supplies was last confirmed on 2025-06-01, 366 days ago, and the firm takes a price on trust for 365: ask for a new one.',
    )
    expect(stalePrice({ ...price, confirmedOn: '2025-01-01' }, '2026-03-02', 365)).toContain(
      'began on 2025-03-01, 366 days ago',
    )
  })

  it('is never one that is still to begin', () => {
    expect(stalePrice(price, '2025-02-28', 0)).toBeNull()
    expect(stalePrice(price, '2025-03-01', 0)).toBeNull()
    expect(stalePrice(price, '2025-03-02', 0)).toContain('a day ago')
  })
})
