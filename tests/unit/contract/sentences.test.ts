import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { heatLoad, uvalueLayers } from '../../../src-main/contract/heating/heat.ts'
import { requests } from '../../../src-main/contract/requests.ts'
import { fieldInWords, problemsIn } from '../../../src-main/contract/sentences.ts'

function problemsOf(schema: z.ZodType, input: unknown) {
  const parsed = schema.safeParse(input)
  if (parsed.success) throw new Error('The input was meant to be wrong')
  return problemsIn(parsed.error, input)
}

const output = requests['emitter.output'].input
const good = { ratedW: 1000, exponent: 1.3, flowC: 75, returnC: 65, roomC: 20 }

describe('a wrong input is told in a sentence with the path of the field', () => {
  it('says what a missing field wants', () => {
    const { ratedW: _, ...without } = good
    expect(problemsOf(output, without)).toEqual([
      { code: 'invalid', message: 'Rated output (W) is missing; give a number.', path: 'ratedW' },
    ])
  })

  it('says what a wrong type should have been', () => {
    expect(problemsOf(output, { ...good, flowC: 'hot' })[0]).toEqual({
      code: 'invalid',
      message: 'Flow temperature (°C) must be a number, not "hot".',
      path: 'flowC',
    })
  })

  it('refuses what is not a number at all', () => {
    expect(problemsOf(output, { ...good, flowC: Number.NaN })[0]?.message).toBe(
      'Flow temperature (°C) must be a number, not NaN.',
    )
    expect(problemsOf(output, { ...good, flowC: Number.POSITIVE_INFINITY })[0]?.path).toBe('flowC')
  })

  it('names the bound that a negative or absurd number breaks', () => {
    expect(problemsOf(output, { ...good, ratedW: -5 })[0]?.message).toBe(
      'Rated output (W) must be more than 0; it was -5.',
    )
    expect(problemsOf(output, { ...good, ratedW: 1e9 })[0]?.message).toBe(
      'Rated output (W) must be at most 1000000; it was 1000000000.',
    )
  })

  it('names a field that is not known here', () => {
    expect(problemsOf(output, { ...good, colour: 'red' })[0]).toEqual({
      code: 'invalid',
      message: 'There is no field called colour here; take it out or check its spelling.',
      path: 'colour',
    })
  })

  it('walks into lists: room.elements[2].areaM2', () => {
    const element = (areaM2: number) => ({ name: 'Wall', areaM2, uWPerM2K: 1, boundary: { kind: 'outside' } })
    const room = {
      name: 'Room',
      roomC: 20,
      outsideC: -3,
      volumeM3: 30,
      floorAreaM2: 12,
      airChangesPerHour: 1,
      elements: [element(3), element(4), element(-1)],
    }
    expect(problemsOf(heatLoad.input, { room })).toEqual([
      {
        code: 'invalid',
        message: 'Area (m²) must be more than 0; it was -1.',
        path: 'room.elements[2].areaM2',
      },
    ])
  })

  it('of a choice of shapes takes the one that the input comes nearest to', () => {
    const layers = [{ name: 'Brick', thicknessMm: 220, conductivityWPerMK: 0 }]
    expect(problemsOf(uvalueLayers.input, { rsi: 0.13, rse: 0.04, layers }).map((one) => one.path)).toEqual([
      'layers[0].conductivityWPerMK',
    ])
  })

  it('writes units as people do', () => {
    expect(fieldInWords('uWPerM2K')).toBe('U-value (W/m²K)')
    expect(fieldInWords('thicknessMm')).toBe('thickness (mm)')
    expect(fieldInWords('name')).toBe('name')
  })
})
