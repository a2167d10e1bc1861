import { describe, expect, it } from 'vitest'
import { uvalueAgeBand } from '../../../src-main/contract/heating/house.ts'
import type { AgeBandUValueInput } from '../../../src-main/engine/heat/age-band-u-value.ts'
import { ageBandUValue } from '../../../src-main/engine/heat/age-band-u-value.ts'
import { answered } from '../../answered.ts'
import { heatTablesOnDisk as tables } from '../../heat-tables-for-tests.ts'

const u = (input: AgeBandUValueInput) => {
  const answer = answered(ageBandUValue(input, tables))
  expect(uvalueAgeBand.output.safeParse(answer).success).toBe(true)
  return answer.uWPerM2K
}

describe('dwellings of 2012 and later agree with RdSAP 2012 (version 9.94), tables S6 to S8, band L', () => {
  it.each([
    ['graniteOrWhin', 0.28, 0.22],
    ['sandstone', 0.28, 0.22],
    ['solidBrick', 0.28, 0.22],
    ['stoneOrBrickInsulated', 0.21, 0.17],
    ['cob', 0.28, 0.22],
    ['cobInsulated', 0.21, 0.17],
    ['cavity', 0.28, 0.22],
    ['cavityFilled', 0.28, 0.22],
    ['timberFrame', 0.28, 0.22],
    ['timberFrameInsulated', 0.28, 0.22],
    ['systemBuild', 0.28, 0.22],
    ['systemBuildInsulated', 0.21, 0.17],
  ] as const)('%s: %d W/m²K, in Scotland %d', (construction, printed, inScotland) => {
    const wall = { element: 'wall', construction, ageBand: 'L' } as const
    for (const country of ['england', 'wales', 'northernIreland'] as const) {
      expect(u({ ...wall, country })).toBe(printed)
    }
    expect(u({ ...wall, country: 'scotland' })).toBe(inScotland)
    expect(answered(ageBandUValue(wall, tables)).source).toContain('9.94')
  })

  it('doors by table S15a: 3.0 to band J, 2.0 in K, 1.8 in L and 1.6 in Scotland; 1.4 to a corridor', () => {
    const door = { element: 'door', construction: 'doorToOutside' } as const
    expect((['A', 'J', 'K', 'L'] as const).map((ageBand) => u({ ...door, ageBand }))).toEqual([3, 3, 2, 1.8])
    expect(u({ ...door, ageBand: 'L', country: 'scotland' })).toBe(1.6)
    expect(u({ ...door, construction: 'doorToCorridor', ageBand: 'C' })).toBe(1.4)
  })

  it.each([
    ['exposedAsBuilt', 'E', 1.2],
    ['exposedAsBuilt', 'G', 1.2],
    ['exposedAsBuilt', 'H', 0.51],
    ['exposedAsBuilt', 'J', 0.25],
    ['exposedAsBuilt', 'L', 0.22],
    ['exposed50Mm', 'A', 0.5],
    ['exposed50Mm', 'K', 0.22],
    ['exposed100Mm', 'I', 0.3],
    ['exposed150Mm', 'B', 0.22],
  ] as const)('the exposed floor %s in band %s: %d W/m²K (table S12)', (construction, ageBand, printed) => {
    expect(u({ element: 'floor', construction, ageBand })).toBe(printed)
    if (ageBand === 'L') {
      expect(u({ element: 'floor', construction, ageBand, country: 'scotland' })).toBe(0.18)
    }
  })

  it('insulation under a solid floor by table S11, bridges by table S13', () => {
    const under = (country: 'england' | 'scotland' | 'northernIreland') =>
      tables.groundFloorInsulation.rows.find(({ countries }) => countries.includes(country))?.insulationMm
    expect(under('england')).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 25, 75, 100, 100])
    expect(under('scotland')).toEqual([0, 0, 0, 0, 0, 0, 0, 25, 50, 75, 100, 120])
    expect(under('northernIreland')).toEqual([0, 0, 0, 0, 0, 0, 0, 25, 50, null, 100, 100])
    const { ageBands, thermalBridgeWPerM2K, note } = tables.thermalBridgesByAge
    const y = Object.fromEntries(ageBands.map((band, at) => [band, thermalBridgeWPerM2K[at]]))
    expect(y).toMatchObject({ A: 0.15, E: 0.15, F: null, G: 0.15, I: 0.15, J: 0.11, K: 0.08, L: 0.08 })
    expect(note).toContain('band F')
  })
})

describe('the standard’s simplified defaults agree with EN 12831-1:2017, annex B', () => {
  const defaults = tables.standardDefaults

  it('air changes, table B.12', () => {
    expect(Object.fromEntries(defaults.airChanges.rows.map((row) => [row.building, row.perHour]))).toEqual({
      from1995: 0.25,
      from1977: 0.5,
      before1977: 1,
      singleRoom: 0.5,
    })
  })

  it('the whole building at once, table B.11', () => {
    expect(
      Object.fromEntries(defaults.wholeBuildingFactors.rows.map((row) => [row.behind, row.factor])),
    ).toEqual({
      outside: 1,
      unheated: 0.5,
      ground: 0.3,
      heated: 0.3,
    })
  })

  it('indoor temperatures, table B.14', () => {
    expect(
      Object.fromEntries(defaults.indoorTemperatures.rows.map((row) => [row.building, row.roomC])),
    ).toEqual({
      residential: 20,
      bathroom: 24,
      office: 20,
      shop: 16,
      church: 15,
    })
  })

  it('reheat, table D.10 of the edition of 2003, from memory: the source says so', () => {
    expect(defaults.reheat.source).toContain('from memory: check before use')
    expect(defaults.reheat.dropK).toEqual([1, 2, 3])
    expect(defaults.reheat.rows.map((row) => [row.hours, ...row.reheatWPerM2])).toEqual([
      [1, 11, 22, 45],
      [2, 6, 11, 22],
      [3, 4, 9, 16],
      [4, 2, 7, 13],
    ])
  })

  it.each([
    ['wall', 'solid', [1.7, 1.7, 1.4, 1.4, 1.0, 0.8, 0.6, 0.5]],
    ['wall', 'timber', [2.0, 2.0, 1.4, 1.4, 0.6, 0.5, 0.4, 0.4]],
    ['window', 'timberSingle', [5, 5, 5, 5, 5, 5, null, null]],
    ['window', 'plasticInsulating', [null, null, null, 3, 3, 3, 3, 1.8]],
    ['door', 'any', [3.5, 3.5, 3.5, 3.5, 3.5, 3.5, 3.5, 3.5]],
  ] as const)('%s, %s, by its year, table B.15', (element, construction, printed) => {
    const row = defaults.uValues.rows.find(
      (one) => one.element === element && one.construction === construction,
    )
    expect(row?.uWPerM2K).toEqual(printed)
    expect(defaults.uValues.spans).toHaveLength(8)
  })
})
