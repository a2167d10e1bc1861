import { describe, expect, it } from 'vitest'
import { figureInWords, hoursAndMinutes, plain } from '../../../src-renderer/parts/figures-in-words.ts'

describe('a figure as a fitter reads it', () => {
  it('shows pence as pounds', () => {
    expect(figureInWords(18550, 'pence')).toBe('£185.50')
    expect(figureInWords(-5, 'pence')).toBe('-£0.05')
  })
  it('shows hundredths of a percent as percent', () => {
    expect(figureInWords(2000, 'BasisPoints')).toBe('20 %')
  })
  it('writes units out and leaves counts bare', () => {
    expect(figureInWords(150, 'mm')).toBe('150 mm')
    expect(figureInWords(1.6, 'WPerM2K')).toBe('1.6 W/m²K')
    expect(figureInWords(4, 'each')).toBe('4')
    expect(figureInWords('copper')).toBe('copper')
  })
  it('keeps the places that matter', () => {
    expect([1234.5678, 12.3456, 0.012345].map(plain)).toEqual(['1,234.6', '12.35', '0.0123'])
  })
  it('writes minutes as hours and minutes', () => {
    expect([45, 60, 205, 59.6].map(hoursAndMinutes)).toEqual(['45 min', '1 h', '3 h 25 min', '1 h'])
  })
})
