import { describe, expect, it } from 'vitest'
import { layersUValue } from '../../src-main/engine/heat/u-value.ts'
import type { Layer } from '../../src-main/engine/heat/u-value.ts'
import { answered } from '../answered.ts'

const surfaces = { rsi: 0.13, rse: 0.04 }
const solid = (name: string, thicknessMm: number, conductivityWPerMK: number): Layer => ({
  name,
  thicknessMm,
  conductivityWPerMK,
})
const uOf = (layers: readonly Layer[]) => answered(layersUValue({ ...surfaces, layers }))

describe('plain constructions agree with published U-values', () => {
  it('220 mm brick with 13 mm dense plaster is 2.09 (CIBSE Guide A table 3.49, in Historic Scotland TP10 page 38)', () => {
    const { uWPerM2K } = uOf([solid('Brick', 220, 0.77), solid('Dense plaster', 13, 0.57)])
    expect(uWPerM2K).toBeCloseTo(2.09, 2)
  })

  it('105 brick, 50 air, 105 brick, 13 plaster is 1.44 (CIBSE Guide A table 3.49, in Historic Scotland TP10 page 38)', () => {
    const layers = [
      solid('Brick, outer leaf', 105, 0.77),
      { name: 'Air', resistanceM2KPerW: 0.18 },
      solid('Brick, inner leaf', 105, 0.56),
      solid('Dense plaster', 13, 0.57),
    ]
    expect(Number(uOf(layers).uWPerM2K.toFixed(2))).toBe(1.44)
  })

  it('a two-leaf brick wall adds up to 0.54 m2K/W and 1.85 W/m2K (conserveandsave.co.uk, layers rounded first)', () => {
    const { resistanceM2KPerW, uWPerM2K } = uOf([
      solid('Render', 18, 0.5),
      solid('Brick, outer leaf', 102, 0.77),
      solid('Brick, inner leaf', 102, 0.56),
      solid('Dense plaster', 13, 0.57),
    ])
    expect(resistanceM2KPerW).toBeCloseTo(0.54, 2)
    expect(Math.abs(uWPerM2K - 1.85)).toBeLessThan(0.015) // 1 / 0.54 is 1.85; unrounded layers make 1.840
  })
})

describe('bridged constructions agree with annex 6.B of the Scottish building standards (ISO 6946, combined method)', () => {
  const brick = solid('Brick, outer leaf', 102, 0.77)
  const cavity = { name: 'Cavity', resistanceM2KPerW: 0.18 }
  const board = solid('Plasterboard', 12.5, 0.21)

  it('6.B.2, timber framed wall: upper 3.435, lower 3.304, U 0.297', () => {
    const wall = uOf([
      brick,
      cavity,
      solid('Sheathing', 9, 0.13),
      {
        name: 'Mineral wool',
        thicknessMm: 140,
        conductivityWPerMK: 0.04,
        bridge: { fraction: 0.15, conductivityWPerMK: 0.12 },
      },
      board,
    ])
    // The annex adds resistances that it has rounded to three decimals.
    expect(Math.abs((wall.upperM2KPerW ?? NaN) - 3.435)).toBeLessThan(0.002)
    expect(Math.abs((wall.lowerM2KPerW ?? NaN) - 3.304)).toBeLessThan(0.002)
    expect(wall.uWPerM2K).toBeCloseTo(0.297, 3)
  })

  it('6.B.3, cavity wall with two bridged layers, four paths: upper 3.617, lower 3.136, U 0.30', () => {
    const wall = uOf([
      brick,
      cavity,
      {
        name: 'Aerated blocks',
        thicknessMm: 125,
        conductivityWPerMK: 0.11,
        bridge: { fraction: 0.067, conductivityWPerMK: 0.88 },
      },
      {
        name: 'Mineral wool',
        thicknessMm: 89,
        conductivityWPerMK: 0.038,
        bridge: { fraction: 0.118, conductivityWPerMK: 0.13 },
      },
      board,
    ])
    expect(Math.abs((wall.upperM2KPerW ?? NaN) - 3.617)).toBeLessThan(0.003)
    expect(Math.abs((wall.lowerM2KPerW ?? NaN) - 3.136)).toBeLessThan(0.003)
    expect(wall.uWPerM2K).toBeCloseTo(0.3, 2)
  })

  it.each([
    [0, 3.971],
    [1, 1.715],
  ])(
    'with a share of studs of %i the path adds up to %d (annex 6.B of the 2005 consultation)',
    (fraction, expected) => {
      const wall = uOf([
        { name: 'Bricks', resistanceM2KPerW: 0.132 },
        { name: 'Cavity', resistanceM2KPerW: 0.09 },
        { name: 'Plywood', resistanceM2KPerW: 0.146 },
        {
          name: 'Mineral wool',
          thicknessMm: 140,
          conductivityWPerMK: 0.042,
          bridge: { fraction, conductivityWPerMK: 0.13 },
        },
        { name: 'Plasterboard', resistanceM2KPerW: 0.1 },
      ])
      expect(wall.resistanceM2KPerW).toBeCloseTo(expected, 3)
    },
  )
})
