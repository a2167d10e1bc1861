import { describe, expect, it } from 'vitest'
import { uvalueLayers } from '../../../../src-main/contract/heating/heat.ts'
import { layersUValue } from '../../../../src-main/engine/heat/u-value.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const surfaces = { rsi: 0.13, rse: 0.04 }
const brick = { name: 'Brick', thicknessMm: 220, conductivityWPerMK: 0.77 }
const studs = (fraction: number, name = 'Wool between studs') => ({
  name,
  thicknessMm: 100,
  conductivityWPerMK: 0.04,
  bridge: { fraction, conductivityWPerMK: 0.13 },
})

describe('a U-value from layers', () => {
  it('is one over the resistances added', () => {
    const layers = [brick, { name: 'Air', resistanceM2KPerW: 0.18 }]
    const found = answered(layersUValue({ ...surfaces, layers }))
    expect(found.resistanceM2KPerW).toBeCloseTo(0.13 + 0.22 / 0.77 + 0.18 + 0.04, 12)
    expect(found.uWPerM2K * found.resistanceM2KPerW).toBeCloseTo(1, 12)
    expect(found).not.toHaveProperty('upperM2KPerW')
  })

  it('lies between its limits where a layer is bridged', () => {
    const found = answered(layersUValue({ ...surfaces, layers: [brick, studs(0.15)] }))
    expect(found.upperM2KPerW).toBeGreaterThan(found.resistanceM2KPerW)
    expect(found.lowerM2KPerW).toBeLessThan(found.resistanceM2KPerW)
  })

  it('has limits that agree for a bridge that is nowhere, or everywhere, or no different', () => {
    const same = { ...studs(0.3), bridge: { fraction: 0.3, conductivityWPerMK: 0.04 } }
    for (const layer of [studs(0), studs(1), same]) {
      const found = answered(layersUValue({ ...surfaces, layers: [brick, layer] }))
      expect(found.upperM2KPerW).toBeCloseTo(found.lowerM2KPerW ?? NaN, 12)
    }
  })

  it('takes several bridged layers as independent: four paths, worked by hand', () => {
    const found = answered(layersUValue({ rsi: 0, rse: 0, layers: [studs(0.5), studs(0.5, 'Second')] }))
    const [wool, wood] = [0.1 / 0.04, 0.1 / 0.13]
    const inverse = 0.25 / (wool + wool) + 0.5 / (wool + wood) + 0.25 / (wood + wood)
    expect(found.upperM2KPerW).toBeCloseTo(1 / inverse, 12)
    expect(found.lowerM2KPerW).toBeCloseTo(2 / (0.5 / wool + 0.5 / wood), 12)
  })

  it('has every figure that was used at the leaves of its reason', () => {
    const leaves = leavesOf(answered(layersUValue({ ...surfaces, layers: [brick, studs(0.15)] })).why)
    for (const figure of [0.13, 0.04, 220, 0.77, 100, 0.15]) expect(leaves).toContain(figure)
  })

  it('fits the answer of its request, bridged or not', () => {
    for (const layers of [[brick], [brick, studs(0.1)]]) {
      expect(
        uvalueLayers.output.safeParse(answered(layersUValue({ ...surfaces, layers }))).error,
      ).toBeUndefined()
    }
  })

  it('refuses more bridged layers than it can follow', () => {
    const layers = Array.from({ length: 13 }, (_, index) => studs(0.1, `Layer ${index}`))
    expect(refused(layersUValue({ ...surfaces, layers }))).toMatchObject({
      code: 'impossible',
      path: 'layers',
    })
    expect(answered(layersUValue({ ...surfaces, layers: layers.slice(1) })).uWPerM2K).toBeGreaterThan(0)
  })

  it('refuses layers that resist next to nothing', () => {
    const layers = [{ name: 'Foil', thicknessMm: Number.MIN_VALUE, conductivityWPerMK: 500 }]
    expect(refused(layersUValue({ rsi: 0, rse: 0, layers })).path).toBe('layers')
  })

  it('refuses a layer that resists without end, on its own or as a bridge', () => {
    const endless = { name: 'Wool', thicknessMm: 100, conductivityWPerMK: Number.MIN_VALUE }
    const bridged = { ...studs(0.5), bridge: { fraction: 0.5, conductivityWPerMK: Number.MIN_VALUE } }
    for (const layer of [endless, bridged]) {
      expect(refused(layersUValue({ ...surfaces, layers: [brick, layer] })).message).toContain('without end')
    }
  })

  it.each([
    [{ ...surfaces, rsi: -0.1, layers: [brick] }, 'rsi'],
    [{ ...surfaces, rse: -0.1, layers: [brick] }, 'rse'],
    [{ ...surfaces, layers: [brick, { ...brick, thicknessMm: 0 }] }, 'layers[1]'],
    [{ ...surfaces, layers: [{ name: 'Air', resistanceM2KPerW: 0 }] }, 'layers[0]'],
    [{ ...surfaces, layers: [studs(1.1)] }, 'layers[0]'],
    [{ ...surfaces, layers: [{ ...brick, thicknessMm: NaN }] }, 'layers[0].thicknessMm'],
  ])('refuses %j, which its request would not let through', (input, path) => {
    expect(refused(layersUValue(input)).path).toBe(path)
  })
})
