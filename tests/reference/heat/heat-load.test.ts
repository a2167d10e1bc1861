import { describe, expect, it } from 'vitest'
import type { Boundary, MeasuredRoomHeat } from '../../../src-main/domain/room-heat.ts'
import { heatLoad } from '../../../src-main/engine/heat/heat-load.ts'
import { btuPerHourFromW } from '../../../src-main/engine/units/exact-units.ts'
import { answered } from '../../answered.ts'

const outside = { kind: 'outside' } as const

describe('a ground floor room agrees with a published example (ukhomeowners.com, heatloss_calculations)', () => {
  const load = answered(
    heatLoad({
      room: {
        name: 'Room',
        roomC: 21,
        outsideC: -1,
        volumeM3: 3.3 * 3 * 2.3,
        floorAreaM2: 9.9,
        airChangesPerHour: 2,
        elements: [
          { name: 'Glass', areaM2: 6, uWPerM2K: 2.9, boundary: outside },
          { name: 'Outside wall', areaM2: 13.8, uWPerM2K: 1.5, boundary: outside },
          { name: 'Floor', areaM2: 9.9, uWPerM2K: 1, boundary: outside },
        ],
      },
    }),
  )

  it.each([
    [0, 'glass', 17.4],
    [1, 'outside wall', 20.7],
    [2, 'floor', 9.9],
  ])('element %i, the %s, loses %d W/K', (index, _, expected) => {
    expect((load.elements[index]?.watts ?? NaN) / 22).toBeCloseTo(expected, 1)
  })

  it('its air loses 15.03 W/K with the page’s 0.33, and 0.34/0.33 of that with ours', () => {
    // The page cuts 15.028 up to 15.03: two decimals.
    expect((load.ventilationW / 22) * (0.33 / 0.34)).toBeCloseTo(15.03, 1)
  })

  it('it needs 63.03 W/K, 1386.6 W at 22 K, once the air is taken with 0.33', () => {
    const byThePage = load.transmissionW + load.ventilationW * (0.33 / 0.34)
    expect(byThePage / 22).toBeCloseTo(63.03, 1)
    expect(Math.abs(byThePage - 1386.6)).toBeLessThan(0.1)
  })
})

describe('rooms of a house agree with a published example in feet, Fahrenheit and Btu (diydata.com, ch_design)', () => {
  const cOf = (fahrenheit: number) => (fahrenheit - 32) / 1.8
  const uOf = (btuPerHourFt2F: number) => (btuPerHourFt2F * 1.8) / (btuPerHourFromW(1) * 0.09290304)
  type Row = readonly [name: string, squareFeet: number, behindF: number, u: number, printed: number]
  const dining: readonly Row[] = [
    ['back wall', 72, 30, 0.18, 518],
    ['window', 40, 30, 0.51, 816],
    ['party wall', 136, 65, 0.38, 258],
    ['ceiling', 238, 65, 0.29, 345],
    ['floor', 238, 30, 0.12, 1142],
    ['lounge wall', 112, 70, 0.39, 0],
    ['kitchen wall', 112, 65, 0.39, 218],
    ['hall wall', 24, 60, 0.39, 94],
  ]
  const kitchen: readonly Row[] = [
    ['back wall', 32, 30, 0.18, 202],
    ['window', 16, 30, 0.51, 286],
    ['side wall', 95.75, 30, 0.18, 603],
    ['back door', 16.25, 30, 0.42, 239],
    ['ceiling under the bathroom', 84, 72, 0.25, -147],
    ['floor', 84, 30, 0.12, 353],
    ['dining room wall', 112, 70, 0.39, -218],
    ['hall wall', 48, 60, 0.39, 94],
  ]
  const hall: readonly Row[] = [
    ['side wall', 231.5, 30, 0.18, 1250],
    ['window', 16, 30, 0.51, 245],
    ['front wall', 28.5, 30, 0.18, 154],
    ['front door', 19.5, 30, 0.42, 246],
    ['ceiling to roof', 80, 30, 0.05, 120],
    ['ceiling to bedroom', 48, 65, 0.25, -60],
    ['floor', 108, 30, 0.12, 389],
    ['lounge and dining room wall', 144, 70, 0.39, -562],
    ['kitchen wall', 48, 65, 0.39, -94],
  ]
  const rooms = [
    ['dining room', 70, dining],
    ['kitchen', 65, kitchen],
    ['hall', 60, hall],
  ] as const
  const loadOf = (name: string, roomF: number, rows: readonly Row[]) =>
    answered(
      heatLoad({
        room: {
          name,
          roomC: cOf(roomF),
          outsideC: cOf(30),
          volumeM3: 1,
          floorAreaM2: 1,
          airChangesPerHour: 0,
          elements: rows.map(([element, squareFeet, behindF, u]) => ({
            name: element,
            areaM2: squareFeet * 0.09290304,
            uWPerM2K: uOf(u),
            boundary: behindF === 30 ? outside : { kind: 'room', roomC: cOf(behindF) },
          })),
        },
      }),
    )
  const cases = rooms.flatMap(([room, roomF, rows]) =>
    rows.map(([name, , , , printed]) => ({ room, roomF, rows, name, printed })),
  )

  it.each(cases)('$room, $name: $printed Btu/h', ({ room, roomF, rows, name, printed }) => {
    const watts = loadOf(room, roomF, rows).elements.find((element) => element.name === name)?.watts ?? NaN
    expect(Math.abs(btuPerHourFromW(watts) - printed)).toBeLessThanOrEqual(0.5) // printed in whole Btu
  })

  it('the kitchen’s elements add up to the page’s, gains taken off', () => {
    const printed = kitchen.reduce((sum, row) => sum + row[4], 0)
    const { transmissionW } = loadOf('kitchen', 65, kitchen)
    expect(Math.abs(btuPerHourFromW(transmissionW) - printed)).toBeLessThanOrEqual(kitchen.length / 2)
  })
})

describe('shares and allowances agree with their standards', () => {
  const wall = (more: Partial<MeasuredRoomHeat>): MeasuredRoomHeat => ({
    name: 'Room',
    roomC: 20,
    outsideC: -4,
    volumeM3: 50,
    floorAreaM2: 20,
    airChangesPerHour: 0,
    elements: [{ name: 'Wall', areaM2: 10, uWPerM2K: 1, boundary: outside }],
    ...more,
  })
  const behind = (boundary: Boundary) =>
    heatLoad({ room: wall({ elements: [{ name: 'Wall', areaM2: 10, uWPerM2K: 1, boundary }] }) })

  it.each([
    [0.4, 'a room with one outside wall'],
    [0.5, 'a basement without openings'],
    [0.7, 'an insulated roof space'],
    [0.8, 'a suspended floor'],
    [0.9, 'an uninsulated roof space'],
  ])('b = %d for %s takes that share of the loss to outside (EN 12831-1:2017 table B.2)', (factor) => {
    expect(answered(behind({ kind: 'unheated', factor })).watts).toBeCloseTo(factor * 240, 9)
  })

  it.each([0.02, 0.05, 0.1, 0.15])(
    'dU = %d W/m2K adds its share to U (EN 12831-1:2017 table B.1)',
    (allowance) => {
      const load = answered(heatLoad({ room: wall({ thermalBridgeWPerM2K: allowance }) }))
      expect(load.watts).toBeCloseTo(240 * (1 + allowance), 9)
    },
  )

  it('the ground is taken at about 10 degrees (MCS: mean annual air), so a floor at 20 loses 10 K', () => {
    expect(answered(behind({ kind: 'ground', meanOutsideC: 10 })).watts).toBeCloseTo(100, 9)
  })

  it('air: 0.34 Wh/m3K (EN 12831:2003), within 3 % of SAP’s 0.33 and of a third (withouthotair.com, page 289)', () => {
    const load = answered(heatLoad({ room: wall({ airChangesPerHour: 1, elements: [] }) }))
    const perM3K = load.ventilationW / (50 * 24)
    expect(perM3K).toBeCloseTo(0.34, 9)
    expect(Math.abs(perM3K / 0.33 - 1)).toBeLessThan(0.031)
    expect(Math.abs(perM3K * 3 - 1)).toBeLessThan(0.03)
  })

  it('reheat of 11 W/m2 on 20 m2 is 220 W (EN 12831:2003 table D.10 has 11 for one hour and 1 K: from memory)', () => {
    expect(answered(heatLoad({ room: wall({ reheatWPerM2: 11, elements: [] }) })).reheatW).toBeCloseTo(220, 9)
  })
})
