import { describe, expect, it } from 'vitest'
import {
  barPa,
  btuJ,
  btuPerHourFromW,
  inchMm,
  wFromBtuPerHour,
  zeroCInK,
} from '../../../../src-main/engine/units/exact-units.ts'
import { acceptFinite, refuseUnlessFinite } from '../../../../src-main/engine/units/finite.ts'

describe('exact units', () => {
  it('are as they are defined', () => {
    // NIST SP 811 Appendix B; SI Brochure 2.3.1.
    expect([btuJ, zeroCInK, inchMm, barPa]).toEqual([1055.05585262, 273.15, 25.4, 100_000])
  })

  it('turn a kilowatt into 3412.14 Btu an hour, and 3600 s of a Btu into its joules', () => {
    expect(btuPerHourFromW(1000)).toBeCloseTo(3412.1416, 4)
    expect(wFromBtuPerHour(3600)).toBeCloseTo(1055.05585262, 8)
    expect([btuPerHourFromW(0), wFromBtuPerHour(-0.5) < 0]).toEqual([0, true])
  })

  it('say what they cannot turn', () => {
    expect(() => btuPerHourFromW(Infinity)).toThrow('A quantity to convert must be finite, not Infinity')
    expect(() => wFromBtuPerHour(NaN)).toThrow('A quantity to convert must be finite, not NaN')
  })
})

describe('a figure that is no number', () => {
  const message = 'Every figure must be a number; this one is missing or endless.'
  it.each([
    [NaN, ''],
    [[1, -Infinity], '[1]'],
    [{ a: [{ b: NaN }] }, 'a[0].b'],
    [{ a: [[1, NaN]] }, 'a[0][1]'],
    [{ a: { b: { c: Infinity } } }, 'a.b.c'],
    [[{ a: 1 }, { a: NaN }], '[1].a'],
  ])('in %j is named by its path', (input, path) => {
    expect(refuseUnlessFinite(input)).toEqual({ ok: false, problems: [{ code: 'invalid', message, path }] })
  })

  it.each([[0], [-1], [null], [undefined], ['NaN'], [[]], [{}], [{ a: null, b: [0], c: 'x', d: true }]])(
    'is not in %j',
    (input) => {
      expect(refuseUnlessFinite(input)).toBeNull()
      expect(acceptFinite(input, 'Too much.')).toEqual({ ok: true, value: input })
    },
  )

  it('in an answer refuses it with the sentence alone', () => {
    expect(acceptFinite({ a: [NaN] }, 'Too much.')).toEqual({
      ok: false,
      problems: [{ code: 'impossible', message: 'Too much.' }],
    })
  })
})
