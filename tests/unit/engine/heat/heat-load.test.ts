import { describe, expect, it } from 'vitest'
import { heatLoad as request } from '../../../../src-main/contract/heating/heat.ts'
import type { MeasuredRoomHeat } from '../../../../src-main/domain/room-heat.ts'
import { heatLoad } from '../../../../src-main/engine/heat/heat-load.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const room: MeasuredRoomHeat = {
  name: 'Bathroom',
  roomC: 22,
  outsideC: -3,
  volumeM3: 15,
  floorAreaM2: 6,
  airChangesPerHour: 1.5,
  elements: [
    {
      name: 'Outside wall',
      areaM2: 8,
      uWPerM2K: 1.6,
      boundary: { kind: 'outside' },
      openings: [{ name: 'Window', areaM2: 1.5, uWPerM2K: 2.8 }],
    },
    { name: 'Wall to the landing', areaM2: 6, uWPerM2K: 1.8, boundary: { kind: 'room', roomC: 18 } },
    { name: 'Ceiling', areaM2: 6, uWPerM2K: 0.4, boundary: { kind: 'unheated', factor: 0.9 } },
  ],
}

describe('a room’s heat load', () => {
  // Worked by hand: 6.5 × 1.6 × 25 + 1.5 × 2.8 × 25 + 6 × 1.8 × 4 + 6 × 0.4 × 0.9 × 25, and 0.34 × 1.5 × 15 × 25.
  it('adds what goes through each element, openings taken off, and what the air takes', () => {
    const load = answered(heatLoad({ room }))
    expect(load.elements).toEqual([
      { name: 'Outside wall', netAreaM2: 6.5, watts: 260 },
      { name: 'Window', netAreaM2: 1.5, watts: expect.closeTo(105, 9) },
      { name: 'Wall to the landing', netAreaM2: 6, watts: expect.closeTo(43.2, 9) },
      { name: 'Ceiling', netAreaM2: 6, watts: expect.closeTo(54, 9) },
    ])
    expect(load.transmissionW).toBeCloseTo(462.2, 9)
    expect(load.ventilationW).toBeCloseTo(191.25, 9)
    expect(load.watts).toBeCloseTo(653.45, 9)
    expect(load).toMatchObject({ reheatW: 0, rough: false })
  })

  it('puts the allowance for thermal bridges on every element and opening', () => {
    const plain = answered(heatLoad({ room }))
    const bridged = answered(heatLoad({ room: { ...room, thermalBridgeWPerM2K: 0.1 } }))
    // 0.1 × (6.5 × 25 + 1.5 × 25 + 6 × 4 + 6 × 0.9 × 25)
    expect(bridged.transmissionW - plain.transmissionW).toBeCloseTo(35.9, 9)
  })

  it('adds reheat by the floor', () => {
    expect(answered(heatLoad({ room: { ...room, reheatWPerM2: 10 } })).reheatW).toBe(60)
  })

  it('lets a warmer neighbour give heat, and the whole come below nothing when it truly does', () => {
    const elements = [
      {
        name: 'Wall to the boiler room',
        areaM2: 10,
        uWPerM2K: 2,
        boundary: { kind: 'room', roomC: 32 } as const,
      },
    ]
    const load = answered(heatLoad({ room: { ...room, airChangesPerHour: 0, elements } }))
    expect(load.watts).toBe(-200)
    expect(load.btuPerHour).toBeLessThan(0)
  })

  it('lets openings fill their wall', () => {
    const glass = { name: 'Glass', areaM2: 0.1, uWPerM2K: 2 }
    const elements = [
      {
        name: 'Bay',
        areaM2: 0.3,
        uWPerM2K: 1,
        boundary: { kind: 'outside' } as const,
        openings: [glass, glass, glass],
      },
    ]
    expect(answered(heatLoad({ room: { ...room, elements } })).elements[0]?.netAreaM2).toBe(0)
  })

  it('refuses openings larger than their wall, and says both sizes', () => {
    const opening = { name: 'Window', areaM2: 5, uWPerM2K: 2.8 }
    const boundary = { kind: 'outside' } as const
    const elements = [
      { name: 'Small wall', areaM2: 4, uWPerM2K: 1.6, boundary },
      { name: 'Wall', areaM2: 8, uWPerM2K: 1.6, boundary, openings: [opening, opening] },
    ]
    const problem = refused(heatLoad({ room: { ...room, elements } }))
    expect(problem).toMatchObject({ code: 'impossible', path: 'room.elements[1].openings' })
    expect(problem.message).toContain('10 m²')
    expect(problem.message).toContain('8 m²')
  })

  it('has every figure that was used at the leaves of its reason', () => {
    const leaves = leavesOf(
      answered(heatLoad({ room: { ...room, thermalBridgeWPerM2K: 0.07, reheatWPerM2: 9 } })).why,
    )
    for (const figure of [8, 1.5, 2.8, 1.6, 18, 0.9, 22, -3, 15, 0.34, 0.07, 9, 6])
      expect(leaves).toContain(figure)
  })

  it('marks the rough form, and does not split it', () => {
    const rough = { name: 'Study', roomC: 21, outsideC: -3, volumeM3: 24, roughWPerM3: 50 }
    const load = answered(heatLoad({ room: rough }))
    expect(load).toMatchObject({ watts: 1200, transmissionW: 0, ventilationW: 0, elements: [], rough: true })
    expect(load.why.says).toContain('rough')
  })

  it('fits the answer of its request in both forms', () => {
    const rough = { name: 'Study', roomC: 21, outsideC: -3, volumeM3: 24, roughWPerM3: 50 }
    expect(request.output.safeParse(answered(heatLoad({ room }))).error).toBeUndefined()
    expect(request.output.safeParse(answered(heatLoad({ room: rough }))).error).toBeUndefined()
  })

  it('refuses figures that are no numbers, or past all sense', () => {
    expect(refused(heatLoad({ room: { ...room, volumeM3: NaN } })).path).toBe('room.volumeM3')
    expect(refused(heatLoad({ room: { ...room, volumeM3: 1e300, airChangesPerHour: 1e300 } })).path).toBe(
      'room',
    )
  })
})
