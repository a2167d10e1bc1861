import { describe, expect, it } from 'vitest'
import { ageBandUValue } from '../../../../src-main/engine/heat/age-band-u-value.ts'
import { heatTables, uvalueAgeBand } from '../../../../src-main/desk/house/heat-tables.ts'
import { heatTablesOnDisk as tables } from '../../../heat-tables-for-tests.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const brick = { element: 'wall', construction: 'solidBrick' } as const

describe('a U-value from the tables', () => {
  it('names its table, its band and what went in', () => {
    const answer = answered(ageBandUValue({ ...brick, builtYear: 1910 }, tables))
    expect(answer).toMatchObject({ uWPerM2K: 2.1, ageBand: 'B' })
    expect(answer.source).toContain('S6')
    expect(leavesOf(answer.why)).toEqual(['Solid brick, as built', 'england', 1910])
    expect(answer.note).toContain('from memory')
  })

  it('takes a band and a year that agree, and refuses those that do not', () => {
    expect(answered(ageBandUValue({ ...brick, builtYear: 1910, ageBand: 'B' }, tables)).ageBand).toBe('B')
    expect(refused(ageBandUValue({ ...brick, builtYear: 1910, ageBand: 'C' }, tables))).toMatchObject({
      path: 'ageBand',
      message: 'A dwelling of 1910 is in age band B, not C; give one of the two.',
    })
  })

  it('wants an age where the table goes by age', () => {
    expect(refused(ageBandUValue(brick, tables))).toMatchObject({ code: 'invalid', path: 'builtYear' })
  })

  it('has no band J in Northern Ireland', () => {
    const wrong = refused(ageBandUValue({ ...brick, ageBand: 'J', country: 'northernIreland' }, tables))
    expect(wrong).toMatchObject({ code: 'not-found', path: 'ageBand' })
  })

  it('takes each band from the table that prints it', () => {
    const old = answered(ageBandUValue({ ...brick, builtYear: 2011 }, tables))
    expect(old).toMatchObject({ ageBand: 'K', uWPerM2K: 0.3, source: 'RdSAP 2009 (version 9.90), table S6' })
    const young = answered(ageBandUValue({ ...brick, builtYear: 2012 }, tables))
    expect(young).toMatchObject({
      ageBand: 'L',
      uWPerM2K: 0.28,
      source: 'RdSAP 2012 (version 9.94, September 2019), table S6',
    })
    expect(leavesOf(young.why)).toEqual(['Solid brick, as built', 'england', 2012])
  })

  it('says that a table prints nothing for a band which none of its tables has', () => {
    const only = { ...tables, uValues: tables.uValues.filter(({ tableId }) => !tableId.endsWith('.L')) }
    expect(refused(ageBandUValue({ ...brick, ageBand: 'L' }, only))).toEqual({
      code: 'not-found',
      message: 'The table prints nothing for solidBrick in age band L.',
      path: 'ageBand',
    })
    const floor = { element: 'floor', construction: 'exposedAsBuilt', ageBand: 'F' } as const
    expect(refused(ageBandUValue(floor, tables)).message).toBe(
      'The table prints nothing for Floor over outside air or unheated space, as built or not known in age band F.',
    )
  })

  it('names what there is when a construction is not known', () => {
    const wrong = refused(ageBandUValue({ element: 'window', construction: 'bottle' }, tables))
    expect(wrong).toMatchObject({ code: 'not-found', path: 'construction' })
    expect(wrong.message).toContain(
      'should be one of single, double, doubleOldNarrow, doubleOldMiddle, doubleOldWide, secondary, triple.',
    )
  })

  it('refuses a thickness where no table goes by thickness, and wants one where only thickness will do', () => {
    expect(refused(ageBandUValue({ ...brick, builtYear: 1910, insulationMm: 50 }, tables)).path).toBe(
      'insulationMm',
    )
    const byThickness = { ...tables, uValues: tables.uValues.filter(({ by }) => by === 'insulationMm') }
    expect(refused(ageBandUValue({ element: 'roof', construction: 'thatch' }, byThickness))).toEqual({
      code: 'invalid',
      message: 'The roof thatch goes by its insulation: give its thickness in mm.',
      path: 'insulationMm',
    })
    const roof = { element: 'roof', construction: 'slatesOrTiles', insulationMm: -1 } as const
    expect(refused(ageBandUValue(roof, tables)).path).toBe('insulationMm')
  })

  it('reads a roof by its insulation before its age', () => {
    const roof = { element: 'roof', construction: 'slatesOrTiles', builtYear: 1910 } as const
    const read = answered(ageBandUValue({ ...roof, insulationMm: 110 }, tables))
    expect(read.uWPerM2K).toBe(0.4)
    expect(leavesOf(read.why)).toContain(110)
    expect(answered(ageBandUValue(roof, tables)).uWPerM2K).toBe(2.3)
  })
})

describe('the delivered tables', () => {
  const byTable = tables.uValues.map((table) => ({ id: table.tableId, table }))

  it.each(byTable)('$id: a figure under every heading, and no construction twice', ({ table }) => {
    const rows: readonly { readonly construction: string; readonly uWPerM2K: unknown }[] = table.rows
    const constructions = rows.map(({ construction }) => construction)
    expect(new Set(constructions).size).toBe(constructions.length)
    const headings =
      table.by === 'ageBand'
        ? table.ageBands.length
        : table.by === 'insulationMm'
          ? table.insulationMm.length
          : 1
    expect(rows.map(({ uWPerM2K }) => [uWPerM2K].flat().length)).toEqual(rows.map(() => headings))
  })

  it('have age bands that follow each other without a gap', () => {
    for (const { bands } of tables.ageBands) {
      expect(bands[0]?.fromYear).toBeNull()
      expect(bands.at(-1)?.toYear).toBeNull()
      const gaps = bands
        .slice(1)
        .filter(({ fromYear }, index) => fromYear !== (bands[index]?.toYear ?? 0) + 1)
      expect(gaps).toEqual([])
    }
  })

  it('are what heat.tables lists and uvalue.ageBand reads', async () => {
    const desk = {
      today: '2026-11-25',
      now: () => '2026-11-25T12:00:00Z',
      store: null,
      dataFolder: null,
      papersFolder: '.',
      mayChoosePath: false,
    }
    expect(answered(await heatTables({}, desk))).toEqual(tables)
    expect(answered(await uvalueAgeBand({ ...brick, ageBand: 'F' }, desk)).uWPerM2K).toBe(1)
  })
})
