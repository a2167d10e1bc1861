import { describe, expect, it } from 'vitest'
import type { Derivation } from '../../../../../src-main/domain/derivation.ts'
import { certain } from '../../../../../src-main/domain/outcome.ts'
import { toHundredths } from '../../../../../src-main/engine/heat/quick/hundredths.ts'
import { outsideWallsM } from '../../../../../src-main/engine/heat/quick/made-walls.ts'
import { quickRoom } from '../../../../../src-main/engine/heat/quick-room.ts'
import { heatTablesOnDisk } from '../../../../heat-tables-for-tests.ts'
import { quick, quickEntry } from '../../../../quick-room-for-tests.ts'

const elements = (...asked: Parameters<typeof quick>) => certain(quick(...asked)).heat.elements
const names = (...asked: Parameters<typeof quick>) => elements(...asked).map(({ name }) => name)

function sentences(why: Derivation): readonly string[] {
  return [`${why.says}: ${why.value} (${why.source ?? ''})`, ...why.from.flatMap(sentences)]
}

function problem(...asked: Parameters<typeof quick>) {
  const answer = quick(...asked)
  if (answer.ok) throw new Error('It was not refused')
  return answer.problems[0]
}

describe('the walls of a room entered quickly', () => {
  it.each([
    [0, 0],
    [1, 4],
    [2, 7],
    [3, 11],
    [4, 14],
  ] as const)('%d of them are %d m, the longer sides first', (outsideWallCount, metres) => {
    const lengths = { lengthM: 4, widthM: 3, outsideWallCount }
    expect(certain(outsideWallsM(lengths)).value).toBe(metres)
    expect(certain(outsideWallsM({ ...lengths, lengthM: 3, widthM: 4 })).value).toBe(metres)
  })
  it('are as long as they were measured, and the rest are inside walls', () => {
    expect(elements({ outsideWallM: 5 }).slice(0, 2)).toMatchObject([
      { name: 'Outside walls', areaM2: 12, boundary: { kind: 'outside' } },
      { name: 'Inside walls', areaM2: 21.6, uWPerM2K: 1.2, boundary: { kind: 'room', roomC: 21 } },
    ])
  })
  it('are left out where there are none', () => {
    expect(names({ outsideWallCount: 0, windowCount: 0 })).toEqual(['Inside walls', 'Ceiling', 'Floor'])
    expect(names({ outsideWallCount: 4 })).toEqual(['Outside walls', 'Ceiling', 'Floor'])
    expect(names({ outsideWallM: 14 })).toEqual(['Outside walls', 'Ceiling', 'Floor'])
  })
  it('have no opening where none was counted', () => {
    expect(elements({ windowCount: 0 })[0]).not.toHaveProperty('openings')
  })
  it('hold measured glass rather than counted windows', () => {
    expect(elements({ glazedM2: 2.5, windowCount: 3, outsideDoorCount: 1 })[0]?.openings).toMatchObject([
      { name: 'Windows', areaM2: 2.5 },
      { name: 'Outside doors', areaM2: 1.85 },
    ])
    expect(elements({ windowCount: 2 })[0]?.openings).toMatchObject([{ areaM2: 2.88 }])
  })
  it('may be all glass, but not more', () => {
    expect(elements({ glazedM2: 9.6 })[0]?.openings).toMatchObject([{ areaM2: 9.6 }])
    expect(problem({ glazedM2: 9.61 })).toEqual({
      code: 'impossible',
      path: 'glazedM2',
      message:
        'The windows and doors come to 9.61 m², more than the 9.6 m² of outside wall; give less glass or more wall.',
    })
    expect(problem({ windowCount: 7 })?.path).toBe('windowCount')
  })
})

describe('what lies beyond', () => {
  it('is as warm as the room, unless somebody said how warm', () => {
    expect(elements().slice(1)).toMatchObject([
      { boundary: { roomC: 21 } },
      { boundary: { roomC: 21 } },
      { boundary: { roomC: 21 } },
    ])
    expect(elements({ besideC: 18, aboveC: 17, belowC: 16 }).slice(1)).toMatchObject([
      { name: 'Inside walls', boundary: { roomC: 18 } },
      { name: 'Ceiling', uWPerM2K: 1.7, areaM2: 12, boundary: { roomC: 17 } },
      { name: 'Floor', uWPerM2K: 1.7, areaM2: 12, boundary: { roomC: 16 } },
    ])
  })
  it('follows the temperature that was given', () => {
    expect(elements({}, { roomC: 24 })[2]).toMatchObject({ boundary: { roomC: 24 } })
    expect(certain(quick({}, { roomC: 24 })).roomC).toBe(24)
  })
  it('is outside air above a roof, and under a timber floor with its aired space', () => {
    expect(elements({ above: 'loft' })[2]).toMatchObject({ name: 'Roof', boundary: { kind: 'outside' } })
    expect(elements({ below: 'suspendedGround' })[3]).toMatchObject({
      name: 'Ground floor',
      boundary: { kind: 'outside' },
    })
  })
  it('is the ground even where no wall is outside, with a tenth of a metre of edge', () => {
    const inside = { outsideWallCount: 0, windowCount: 0, below: 'solidGround' } as const
    const floor = elements(inside).at(-1)
    expect(floor).toMatchObject({ name: 'Ground floor', boundary: { kind: 'ground', meanOutsideC: 10 } })
    expect(floor?.uWPerM2K).toBeLessThan(0.1)
    expect(sentences(certain(quick(inside)).why).join('\n')).toContain(
      'Edge of a floor with no outside wall, taken as: 0.1 (practice, no published source)',
    )
  })
})

describe('a quick entry that cannot be', () => {
  it.each([
    ['lengthM', 'Length', 0.49],
    ['widthM', 'Width', 50.01],
    ['heightM', 'Height', 0],
  ] as const)('%s', (field, word, value) => {
    expect(problem({ [field]: value })).toEqual({
      code: 'invalid',
      path: field,
      message: `${word} must be 0.5 to 50 m; it was ${value}.`,
    })
  })
  it('is taken at both ends of a size', () => {
    expect(quick({ lengthM: 0.5, windowCount: 0 }).ok).toBe(true)
    expect(quick({ widthM: 50 }).ok).toBe(true)
  })
  it('has more outside wall than walls', () => {
    expect(problem({ outsideWallM: 14.1 })).toEqual({
      code: 'impossible',
      path: 'outsideWallM',
      message: 'The outside walls come to 14.1 m, but all four walls are 14 m; give less, or a larger room.',
    })
  })
  it('has windows and no outside wall', () => {
    expect(problem({ outsideWallCount: 0 })).toEqual({
      code: 'impossible',
      path: 'outsideWallCount',
      message: 'Windows and outside doors want an outside wall: give one, or take them away.',
    })
    expect(problem({ outsideWallCount: 0, windowCount: 0, outsideDoorCount: 1 })?.code).toBe('impossible')
  })
  it('has five outside walls', () => {
    expect(problem({ outsideWallCount: 5 })).toEqual({
      code: 'invalid',
      path: 'outsideWallCount',
      message: 'A room has 0 to 4 outside walls; it was 5.',
    })
  })
  it('has loft insulation and no loft', () => {
    expect(problem({ loftInsulationMm: 100 })).toEqual({
      code: 'invalid',
      path: 'loftInsulationMm',
      message:
        'A loft’s insulation is asked only where a loft lies above; leave it empty or choose the loft.',
    })
  })
  it('names a wall or a glass that no table has', () => {
    expect(problem({ wall: 'straw' })?.path).toBe('wall')
    expect(problem({ glazing: 'paper' })?.path).toBe('glazing')
  })
  it('names an age band that the country does not have', () => {
    expect(quick({ ageBand: 'J', country: 'northernIreland' }).ok).toBe(false)
  })
  it('has a figure that is none', () => {
    expect(problem({ heightM: Number.NaN })).toMatchObject({ code: 'invalid', path: 'heightM' })
    expect(problem({}, { roomC: Infinity })).toMatchObject({ code: 'invalid', path: 'roomC' })
  })
})

describe('tables that lack a row', () => {
  const lacking = (changes: object) =>
    quickRoom(
      { use: 'living', entry: quickEntry({ below: 'unheated' }) },
      { ...heatTablesOnDisk, ...changes },
    )
  const empty = { source: 'none', rows: [] }
  it.each([
    [{ roomTemperatures: [] }, 'a temperature for livingRoom'],
    [{ airChanges: empty }, 'air changes for livingRoom'],
    [{ thermalBridges: empty }, 'thermal bridges for other'],
    [{ temperatureFactors: empty }, 'a factor for unheated space'],
  ])('are refused by name', (changes, what) => {
    expect(lacking(changes)).toEqual({
      ok: false,
      problems: [{ code: 'not-found', message: `The tables do not have ${what}.` }],
    })
  })
  it('are refused for floor insulation', () => {
    const answer = quickRoom(
      { use: 'living', entry: quickEntry({ below: 'solidGround' }) },
      { ...heatTablesOnDisk, groundFloorInsulation: empty },
    )
    expect(answer).toEqual({
      ok: false,
      problems: [
        {
          code: 'not-found',
          path: 'ageBand',
          message: 'The table of floor insulation prints nothing for age band C.',
        },
      ],
    })
  })
})

describe('why', () => {
  it('names every figure that was assumed, with its table', () => {
    const told = sentences(
      certain(quick({ above: 'loft', below: 'solidGround', outsideDoorCount: 1 })).why,
    ).join('\n')
    for (const says of [
      'Walls, floor and ceiling made from the quick answers and the tables: 4 ()',
      'Design temperature: Living room: 21 (NHBC Standards 8.1.10 table 7)',
      'Air changes: Lounge or living room, before 2000: 1.5 (CIBSE Domestic Heating Design Guide table 3.8)',
      'Thermal bridges: All others: 0.1 (EN 12831-1:2017 table B.1)',
      'U-value as printed: Outside walls by age, England and Wales: 1.6 (RdSAP 2009 (version 9.90), table S6)',
      'One window, 1.2 by 1.2 m: 1.44 (practice, no published source)',
      'One outside door: 1.85 (RdSAP 2012 (version 9.94))',
      'Outside walls: so many sides of the room, the longer first: 4 (practice, no published source)',
      'Insulation assumed for age band C: 0 (RdSAP 2012 (version 9.94, September 2019), table S11)',
      'Its conductivity: 0.035 (RdSAP 2012 (version 9.94), section S5)',
      'Volume: floor area × height: 28.8 ()',
      'Inside walls: what is left of the four walls × height: 24 ()',
      'Roof: as large as the room: 12 ()',
      'Rooms beside, as warm as this one: 21 ()',
    ])
      expect(told).toContain(says)
  })
})

describe('figures to two places', () => {
  it('are rounded, and stay above nothing', () => {
    expect([9.899999, 0.005, 0.001, 0, 1.234].map(toHundredths)).toEqual([9.9, 0.01, 0.01, 0, 1.23])
  })
  it('sizes that are not round', () => {
    const { heat } = certain(quick({ lengthM: 3.3, widthM: 3, heightM: 2.35 }))
    expect([heat.floorAreaM2, heat.volumeM3]).toEqual([9.9, 23.27])
  })
})
