import { describe, expect, it } from 'vitest'
import {
  barPa,
  btuJ,
  btuPerHourFromW,
  inchMm,
  wFromBtuPerHour,
  zeroCInK,
} from '../../src-main/engine/units/exact-units.ts'

describe('units agree with their published definitions', () => {
  it('one Btu (International Table) is 1.055056 E+03 J as NIST SP 811 Appendix B prints it', () => {
    expect(btuJ / 1e3).toBeCloseTo(1.055056, 6)
  })

  it('one Btu (International Table) is exactly 1055.05585262 J: defined by the steam conference of 1956', () => {
    expect(btuJ).toBe(1055.05585262)
  })

  it('it follows from 1 Btu/lb = 2.326 kJ/kg (steam conference, 1956) and 1 lb = 0.45359237 kg (1959)', () => {
    expect(btuJ).toBeCloseTo(2326 * 0.45359237, 9)
  })

  it('one Btu an hour is 0.2930711 W (NIST SP 811 Appendix B)', () => {
    expect(wFromBtuPerHour(1)).toBeCloseTo(0.2930711, 7)
  })

  it('one watt is 3.412141 Btu an hour, cut at six decimals (unit table)', () => {
    expect(Math.trunc(btuPerHourFromW(1) * 1e6) / 1e6).toBe(3.412141)
  })

  it('one kWh is 3412.14 Btu (from the same definition, worked apart)', () => {
    expect(btuPerHourFromW(1000)).toBeCloseTo(3412.14, 2)
  })

  it('a G 1/2 thread of 0.8250 in is 20.955 mm (ISO 228 table of threads)', () => {
    expect(0.825 * inchMm).toBeCloseTo(20.955, 3)
  })

  it('a G 3/4 thread of 1.0410 in is 26.441 mm (ISO 228 table of threads)', () => {
    expect(1.041 * inchMm).toBeCloseTo(26.441, 3)
  })

  it('14 threads to the inch are a pitch of 1.8143 mm (ISO 228 table of threads)', () => {
    expect(inchMm / 14).toBeCloseTo(1.8143, 4)
  })

  it('0 degrees Celsius is 273.15 K (SI Brochure 2.3.1), and a bar is 100000 Pa (NIST SP 811, from memory)', () => {
    expect(zeroCInK).toBe(273.15)
    expect(barPa).toBe(100_000)
  })
})
