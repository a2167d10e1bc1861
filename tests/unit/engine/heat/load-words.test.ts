import { describe, expect, it } from 'vitest'
import type { MeasuredRoomHeat } from '../../../../src-main/domain/room-heat.ts'
import { lossesThrough } from '../../../../src-main/engine/heat/element-loss.ts'
import { heatLoad } from '../../../../src-main/engine/heat/heat-load.ts'
import { lowestFlow } from '../../../../src-main/engine/heat/lowest-flow.ts'
import { answered, refused } from '../../../answered.ts'
import { readOut } from '../../../why-for-tests.ts'

const outside = { kind: 'outside' } as const
const empty: MeasuredRoomHeat = {
  name: 'Bathroom',
  roomC: 22,
  outsideC: -3,
  volumeM3: 15,
  floorAreaM2: 6,
  airChangesPerHour: 2,
  elements: [],
}

describe('the reason of a heat load', () => {
  // 6.5 × (1.6 + 0.1) × 25 = 276.25; 1.5 × (2.8 + 0.1) × 25 = 108.75; 6 × 1.9 × 4 = 45.6; 6 × 0.5 × 0.9 × 25 = 67.5;
  // 5 × 0.6 × (22 - 10) = 36; together 534.1. Air: 0.34 × 2 × 15 × 25 = 255. Reheat: 6 × 10 = 60.
  it('tells each element, opening and difference, the air and the reheat', () => {
    const room: MeasuredRoomHeat = {
      ...empty,
      thermalBridgeWPerM2K: 0.1,
      reheatWPerM2: 10,
      elements: [
        {
          name: 'Outside wall',
          areaM2: 8,
          uWPerM2K: 1.6,
          boundary: outside,
          openings: [{ name: 'Window', areaM2: 1.5, uWPerM2K: 2.8 }],
        },
        { name: 'Landing wall', areaM2: 6, uWPerM2K: 1.8, boundary: { kind: 'room', roomC: 18 } },
        { name: 'Ceiling', areaM2: 6, uWPerM2K: 0.4, boundary: { kind: 'unheated', factor: 0.9 } },
        { name: 'Floor', areaM2: 5, uWPerM2K: 0.5, boundary: { kind: 'ground', meanOutsideC: 10 } },
      ],
    }
    const load = answered(heatLoad({ room }))
    expect(load).toMatchObject({ reheatW: 60, rough: false })
    expect(readOut(load.why)).toEqual([
      'Heat the room needs: transmission + ventilation + reheat: 849.1 W (EN 12831-1, simplified)',
      '  Transmission: each element and opening, less what warmer neighbours give: 534.1 W',
      '    Outside wall: area × (U + thermal bridges) × difference: 276.25 W (EN 12831-1, simplified)',
      '      Area less its openings: 6.5 m²',
      '        Area: 8 m²',
      '        Less the opening Window: 1.5 m²',
      '      U-value: 1.6 W/m²K',
      '      Allowance for thermal bridges: 0.1 W/m²K',
      '      Room less outside: 25 K',
      '        Room: 22 °C',
      '        Outside: -3 °C',
      '    Window: area × (U + thermal bridges) × difference: 108.75 W (EN 12831-1, simplified)',
      '      Area: 1.5 m²',
      '      U-value: 2.8 W/m²K',
      '      Allowance for thermal bridges: 0.1 W/m²K',
      '      Room less outside: 25 K',
      '        Room: 22 °C',
      '        Outside: -3 °C',
      '    Landing wall: area × (U + thermal bridges) × difference: 45.6 W (EN 12831-1, simplified)',
      '      Area: 6 m²',
      '      U-value: 1.8 W/m²K',
      '      Allowance for thermal bridges: 0.1 W/m²K',
      '      Room less the room behind: 4 K',
      '        Room: 22 °C',
      '        Room behind: 18 °C',
      '    Ceiling: area × (U + thermal bridges) × difference: 67.5 W (EN 12831-1, simplified)',
      '      Area: 6 m²',
      '      U-value: 0.4 W/m²K',
      '      Allowance for thermal bridges: 0.1 W/m²K',
      '      Share for an unheated space × (room - outside): 22.5 K',
      '        Share for an unheated space: 0.9',
      '        Room: 22 °C',
      '        Outside: -3 °C',
      '    Floor: area × (U + thermal bridges) × difference: 36 W (EN 12831-1, simplified)',
      '      Area: 5 m²',
      '      U-value: 0.5 W/m²K',
      '      Allowance for thermal bridges: 0.1 W/m²K',
      '      Room less the ground: 12 K',
      '        Room: 22 °C',
      "        The year's mean outside: 10 °C",
      '  Ventilation: 0.34 × air changes × volume × (room - outside): 255 W (EN 12831:2003)',
      '    Heat to warm air: 0.34 Wh/m³K (EN 12831:2003)',
      '    Air changes: 2 an hour',
      '    Volume: 15 m³',
      '    Room: 22 °C',
      '    Outside: -3 °C',
      '  Reheat: floor area × allowance: 60 W (EN 12831:2003)',
      '    Floor area: 6 m²',
      '    Reheat allowance: 10 W/m²',
    ])
  })

  it('of a room with no allowance says 0 for bridges and reheat', () => {
    const wall = { name: 'Wall', areaM2: 10, uWPerM2K: 2, boundary: outside }
    const { why, elements } = answered(
      heatLoad({ room: { ...empty, airChangesPerHour: 0, elements: [wall] } }),
    )
    // 10 × 2 × 25.
    expect(elements).toEqual([{ name: 'Wall', netAreaM2: 10, watts: 500 }])
    const lines = readOut(why)
    expect(lines[0]).toBe(
      'Heat the room needs: transmission + ventilation + reheat: 500 W (EN 12831-1, simplified)',
    )
    expect(lines).toContain('      Allowance for thermal bridges: 0 W/m²K')
    expect(lines.slice(-3)).toEqual([
      '  Reheat: floor area × allowance: 0 W (EN 12831:2003)',
      '    Floor area: 6 m²',
      '    Reheat allowance: 0 W/m²',
    ])
  })

  it('of a guess is volume by watts a cubic metre', () => {
    const rough = { name: 'Study', roomC: 21, outsideC: -3, volumeM3: 24, roughWPerM3: 50 }
    const load = answered(heatLoad({ room: rough }))
    // 24 × 50 = 1200 W; 1200 × 3.412142 = 4094.57 Btu/h (NIST SP 811).
    expect(load.btuPerHour).toBeCloseTo(4094.57, 2)
    expect(readOut(load.why)).toEqual([
      'A rough estimate only: volume × watts per cubic metre: 1200 W (practice, no published source)',
      '  Volume: 24 m³',
      '  Rough heat per cubic metre: 50 W/m³',
    ])
  })

  it('takes a million million watts and refuses more, both ways', () => {
    const at = (roughWPerM3: number) =>
      heatLoad({ room: { name: 'Hall', roomC: 20, outsideC: 0, volumeM3: 1, roughWPerM3 } })
    expect(answered(at(1e12)).watts).toBe(1e12)
    expect(answered(at(-1e12)).watts).toBe(-1e12)
    for (const past of [1.001e12, -1.001e12]) {
      expect(refused(at(past))).toEqual({
        code: 'impossible',
        path: 'room',
        message: 'These figures make a heat load past all sense; check the areas and temperatures.',
      })
    }
  })
})

describe('openings and their wall', () => {
  const bay = (areaM2: number, openings?: readonly number[]) => ({
    name: 'Bay',
    areaM2,
    uWPerM2K: 1,
    boundary: outside,
    ...(openings === undefined
      ? {}
      : { openings: openings.map((area) => ({ name: 'Pane', areaM2: area, uWPerM2K: 2 })) }),
  })

  it('two openings are taken off together, each in its own line', () => {
    const [wall, first, second] = answered(lossesThrough({ ...empty, elements: [bay(10, [2, 3])] }))
    // 5 m² × 1 × 25 K; 2 × 2 × 25; 3 × 2 × 25.
    expect([wall?.watts, first?.watts, second?.watts]).toEqual([125, 100, 150])
    expect(readOut(wall?.why ?? { says: '', value: 0, from: [] }).slice(1, 4)).toEqual([
      '  Area less its openings: 5 m²',
      '    Area: 10 m²',
      '    Less the opening Pane: 2 m²',
    ])
  })

  it('a wall without openings has its own area', () => {
    for (const openings of [undefined, []]) {
      const [wall, ...rest] = answered(lossesThrough({ ...empty, elements: [bay(4, openings)] }))
      expect(rest).toEqual([])
      expect(readOut(wall?.why ?? { says: '', value: 0, from: [] })[1]).toBe('  Area: 4 m²')
    }
  })

  it('too large are refused with both areas to six figures', () => {
    const outcome = lossesThrough({ ...empty, elements: [bay(1), bay(1.23456789, [1, 0.5])] })
    expect(refused(outcome)).toEqual({
      code: 'impossible',
      path: 'elements[1].openings',
      message:
        'The openings in “Bay” come to 1.5 m², more than its 1.23457 m²; give the whole area with its openings, or smaller openings.',
    })
  })

  it('may pass their wall by a rounding, and then leave nothing, never less', () => {
    const [wall] = answered(lossesThrough({ ...empty, elements: [bay(1, [1 + 5e-10])] }))
    expect(wall?.netAreaM2).toBe(0)
    expect(lossesThrough({ ...empty, elements: [bay(1, [1 + 2e-9])] }).ok).toBe(false)
  })
})

describe('the reason of a lowest flow', () => {
  const room = { loadW: 500, roomC: 20, spreadK: 10 }

  // Flow 75, return 65: the rated point, so each gives what it is rated at: 300 + 200.
  it('tells the need, the limits and each emitter at the flow that was found', () => {
    const emitters = [
      { ratedW: 300, exponent: 1.3 },
      { ratedW: 200, exponent: 1 },
    ]
    const answer = answered(lowestFlow({ ...room, emitters }))
    expect(answer).toMatchObject({ reachable: true, flowC: 75, returnC: 65, outputAtMaxW: 500 })
    const lines = readOut(answer.why)
    expect(lines.slice(0, 6)).toEqual([
      'Lowest flow, in tenths of a degree, at which the emitters give what the room needs: 75 °C (EN 442-2)',
      '  Heat the room needs: 500 W',
      '  Room: 20 °C',
      '  Drop from flow to return: 10 K',
      '  Highest flow allowed: 75 °C',
      '  Emitter 1 at a flow of 75 °C: 300 W',
    ])
    expect(lines).toContain('  Emitter 2 at a flow of 75 °C: 200 W')
  })

  it('says what the limit gives where that is too little', () => {
    const emitters = [{ ratedW: 400, exponent: 1.2 }]
    const answer = answered(lowestFlow({ ...room, emitters }))
    expect(readOut(answer.why).slice(0, 6)).toEqual([
      'Not reachable: at a flow of 75 °C the emitters give less than the room needs: 400 W (EN 442-2)',
      '  Heat the room needs: 500 W',
      '  Room: 20 °C',
      '  Drop from flow to return: 10 K',
      '  Highest flow allowed: 75 °C',
      '  Emitter 1 at a flow of 75 °C: 400 W',
    ])
  })

  it('says of an emitter that it gives nothing where its return is not above the room', () => {
    const answer = answered(lowestFlow({ ...room, maxFlowC: 30, emitters: [{ ratedW: 400, exponent: 1.2 }] }))
    expect(readOut(answer.why)).toEqual([
      'Not reachable: at a flow of 30 °C the emitters give less than the room needs: 0 W (EN 442-2)',
      '  Heat the room needs: 500 W',
      '  Room: 20 °C',
      '  Drop from flow to return: 10 K',
      '  Highest flow allowed: 30 °C',
      '  Emitter 1 gives nothing: at a flow of 30 °C its return would not be above the room: 0 W',
      '    Rated output: 400 W',
      '    Exponent: 1.2',
    ])
  })

  it('finds the first warm tenth even where it is the lowest that can be warm at all', () => {
    // A drop of 10 K in a room of 20 °C: nothing is given at 30.0 °C, something at 30.1 °C.
    const strong = [{ ratedW: 1e9, exponent: 1 }]
    expect(answered(lowestFlow({ ...room, emitters: strong })).flowC).toBe(30.1)
  })

  it('keeps tenths in a limit that has them, and takes the limit itself where no tenth is warm', () => {
    const emitters = [{ ratedW: 500, exponent: 1.3 }]
    expect(answered(lowestFlow({ ...room, emitters, maxFlowC: 75.05 })).flowC).toBe(75)
    expect(answered(lowestFlow({ ...room, emitters, maxFlowC: 75 })).flowC).toBe(75)
    expect(answered(lowestFlow({ ...room, emitters, maxFlowC: 80.3 })).flowC).toBe(75)
    expect(answered(lowestFlow({ ...room, emitters, maxFlowC: 74.99 })).reachable).toBe(false)
  })

  const emitters = [{ ratedW: 500, exponent: 1.3 }]
  it.each([
    [
      { loadW: 0 },
      'loadW',
      'The heat load must be more than 0 W; it was 0. A room that needs no heat needs no flow.',
    ],
    [{ spreadK: 0.009 }, 'spreadK', 'The drop from flow to return must be at least 0.01 K; it was 0.009.'],
    [{ emitters: [] }, 'emitters', 'There are no emitters; give at least one.'],
  ])('is refused for %j', (change, path, message) => {
    expect(refused(lowestFlow({ ...room, emitters, ...change }))).toEqual({ code: 'invalid', path, message })
  })

  it.each([
    { ratedW: 0, exponent: 1.3 },
    { ratedW: 1, exponent: 0.99 },
    { ratedW: 1, exponent: 2.01 },
  ])('is refused for a second emitter of %j', (odd) => {
    expect(refused(lowestFlow({ ...room, emitters: [...emitters, odd] }))).toEqual({
      code: 'invalid',
      path: 'emitters[1]',
      message: 'Emitter 2 must have a rated output of more than 0 W and an exponent of 1 to 2.',
    })
  })

  it('takes a drop of a hundredth, and exponents of 1 and 2', () => {
    for (const exponent of [1, 2])
      expect(lowestFlow({ ...room, spreadK: 0.01, emitters: [{ ratedW: 500, exponent }] }).ok).toBe(true)
  })

  it('is refused where the emitters give more than can be reckoned', () => {
    const vast = [1, 2].map(() => ({ ratedW: 1.7e308, exponent: 1 }))
    expect(refused(lowestFlow({ ...room, emitters: vast, maxFlowC: 75 }))).toEqual({
      code: 'impossible',
      message: 'These emitters make an output too large to reckon with; check their rated outputs.',
    })
  })
})
