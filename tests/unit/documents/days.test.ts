import { describe, expect, it } from 'vitest'
import { dayInWords, daysAfter } from '../../../src-main/documents/days.ts'

describe('calendar days on paper', () => {
  it('are written out, whatever the time zone of the machine', () => {
    expect(dayInWords('2026-11-05').replaceAll('\u00a0', ' ')).toBe('5 November 2026')
    expect(dayInWords('2024-02-29').replaceAll('\u00a0', ' ')).toBe('29 February 2024')
  })

  it('are counted over months, years and leap days', () => {
    // Gregorian calendar: 2024 and 2000 have a 29 February, 1900 and 2100 have none.
    expect(daysAfter('2026-11-25', 30)).toBe('2026-12-25')
    expect(daysAfter('2024-02-28', 1)).toBe('2024-02-29')
    expect(daysAfter('2023-02-28', 1)).toBe('2023-03-01')
    expect(daysAfter('1900-02-28', 1)).toBe('1900-03-01')
    expect(daysAfter('2000-02-28', 1)).toBe('2000-02-29')
    expect(daysAfter('2099-12-31', 1)).toBe('2100-01-01')
    expect(daysAfter('2026-03-01', 0)).toBe('2026-03-01')
  })

  it('agree with the calendar that the language itself has in universal time, day by day over 150 years', () => {
    const start = Date.UTC(1980, 0, 1)
    for (let count = 0; count < 150 * 366; count += 13) {
      const known = new Date(start + count * 86_400_000).toISOString().slice(0, 10)
      expect(daysAfter('1980-01-01', count)).toBe(known)
    }
  })

  it('that are none are our own mistake', () => {
    expect(() => dayInWords('soon')).toThrow(/no calendar day/)
  })
})
