import { describe, expect, it } from 'vitest'
import { heatInWords, warmthInWords, withHeat } from '../../../src-renderer/parts/heat-in-words.ts'

// One watt is 3.412142 BTU an hour: 3600 s / 1055.05585262 J (NIST SP 811, Appendix B).
describe('heat in words', () => {
  it('stands in watts, or in BTU an hour with the watts behind', () => {
    expect(heatInWords(1000.4, 'W')).toBe('1,000 W')
    expect(heatInWords(1000, 'BtuPerHour')).toBe('3,412 BTU/h (1,000 W)')
  })
  const warm = { roomName: 'Hall', needW: 500, givesW: 600, rough: false, enough: true, says: 'As it is.' }
  it('of a room is the engine’s own sentence in watts', () => {
    expect(warmthInWords(warm, 'W')).toBe('As it is.')
  })
  it('of a room has BTU an hour first where the firm reads those', () => {
    expect(warmthInWords(warm, 'BtuPerHour')).toBe(
      'Gives 2,047 BTU/h (600 W) where the Hall needs 1,706 BTU/h (500 W).',
    )
    expect(warmthInWords({ ...warm, rough: true, enough: false, givesW: 400 }, 'BtuPerHour')).toBe(
      '341 BTU/h (100 W) short: gives 1,365 BTU/h (400 W) where the Hall needs 1,706 BTU/h (500 W), by a rough estimate.',
    )
  })
  it('of an emitter that is short or gives more is changed, and no other number', () => {
    expect(withHeat('100 W short at 55/45', 'BtuPerHour')).toBe('341 BTU/h (100 W) short at 55/45')
    expect(withHeat('it gives 40 W more.', 'BtuPerHour')).toBe('it gives 136 BTU/h (40 W) more.')
    expect(withHeat('40 mm too wide', 'BtuPerHour')).toBe('40 mm too wide')
    expect(withHeat('100 W short at 55/45', 'W')).toBe('100 W short at 55/45')
  })
})
