import { describe, expect, it } from 'vitest'
import { btuPerHourFromW, wFromBtuPerHour } from '../../../../src-main/engine/units/exact-units.ts'
import { acceptFinite, refuseUnlessFinite } from '../../../../src-main/engine/units/finite.ts'
import { answered, refused } from '../../../answered.ts'

describe('units', () => {
  it('turns watts into Btu an hour and back', () => {
    expect(wFromBtuPerHour(btuPerHourFromW(1234.5))).toBeCloseTo(1234.5, 9)
  })

  it('throws for what is no number, because a rule should have refused it', () => {
    expect(() => btuPerHourFromW(NaN)).toThrow('must be finite')
    expect(() => wFromBtuPerHour(Infinity)).toThrow('must be finite')
    expect(() => btuPerHourFromW(Number.MAX_VALUE)).toThrow('must be finite')
  })
})

describe('figures that are not finite', () => {
  it('are refused by their path, in lists too', () => {
    const input = { room: { elements: [{ areaM2: 1 }, { areaM2: Infinity }] } }
    expect(refused(refuseUnlessFinite(input) ?? { ok: true, value: null }).path).toBe(
      'room.elements[1].areaM2',
    )
  })

  it('are not found where there are none', () => {
    expect(refuseUnlessFinite({ name: 'x', list: [1, null, 'NaN'], nothing: undefined })).toBeNull()
  })

  it('turn an answer into a refusal with its sentence', () => {
    expect(refused(acceptFinite({ watts: NaN }, 'Too far out.'))).toMatchObject({
      code: 'impossible',
      message: 'Too far out.',
    })
    expect(answered(acceptFinite({ watts: 1 }, 'Too far out.'))).toEqual({ watts: 1 })
  })
})
