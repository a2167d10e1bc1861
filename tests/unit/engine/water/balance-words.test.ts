import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { balancedCircuit, openCircuit } from '../../../../src-main/engine/water/balance-circuits.ts'
import { balanceHouse } from '../../../../src-main/engine/water/balance-house.ts'
import type { BalanceCircuit, BalanceInput } from '../../../../src-main/engine/water/balance-input.ts'
import { circuitFlows, legLosses } from '../../../../src-main/engine/water/balance-legs.ts'
import { balanceWarnings } from '../../../../src-main/engine/water/balance-warnings.ts'
import { answered } from '../../../answered.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { readOut } from '../../../why-for-tests.ts'

const figures = defaultFigures('2026-11-25')
/** 0.06 m3/h of water of 1000 kg/m3: through Kv 0.06 it loses a bar, through 0.6 a hundredth of one. */
const water = { litresPerMinute: 1, densityKgPerM3: 1000, pathPa: 500 }
const table = [
  { turns: 1, kvM3PerH: 0.3 },
  { turns: 2, kvM3PerH: 0.6 },
]
const pipe = { insideMm: 13.6, lengthM: 10, roughnessMm: 0.0015 }

describe('a circuit wide open, worked by hand', () => {
  it('adds legs, emitter, valve and the lockshield’s last row', () => {
    const circuit = {
      id: 'a',
      legId: 'x',
      watts: 1,
      emitterLossPa: 100,
      valveKvM3PerH: 0.6,
      lockshield: { table },
    }
    const open = openCircuit(circuit, water)
    expect(open).toMatchObject({ emitterPa: 100, pathPa: 500, wideOpen: { kvM3PerH: 0.6 } })
    expect(open.valvePa).toBeCloseTo(1000, 9)
    expect(open.wideOpen?.pa).toBeCloseTo(1000, 9)
    expect(open.fixedPa).toBeCloseTo(1600, 9)
    expect(open.openPa).toBeCloseTo(2600, 9)
  })

  it('counts what nobody gave as nothing', () => {
    for (const lockshield of [undefined, {}, { unit: 'marks' }]) {
      const open = openCircuit({ id: 'a', legId: 'x', watts: 1, lockshield }, water)
      expect(open).toMatchObject({ emitterPa: 0, valvePa: 0, fixedPa: 500, openPa: 500, wideOpen: null })
    }
  })
})

describe('the reason of a balanced circuit', () => {
  const circuit = (more: Partial<BalanceCircuit> = {}) => ({ id: 'a', legId: 'x', watts: 1, ...more })
  const figuresTold = (targetPa: number, inset: string) => [
    `${inset}The index circuit loses: ${targetPa} Pa`,
    `${inset}The legs on the way lose: 500 Pa`,
    `${inset}The emitter loses: 0 Pa`,
    `${inset}The thermostatic valve loses: 0 Pa`,
    `${inset}Water flow: 1 L/min`,
    `${inset}Density of water: 1000 kg/m³`,
  ]

  // 1500 Pa - 500 Pa leave 0.01 bar: Kv 0.6; 4500 - 500 leave 0.04 bar: Kv 0.06 / 0.2 = 0.3.
  it('is the Kv that takes what is left, where there is no table', () => {
    const set = balancedCircuit(openCircuit(circuit(), water), 1500)
    expect(set).toMatchObject({ opening: null })
    expect([set.kvM3PerH, set.lockshieldPa, set.lossPa]).toEqual([
      expect.closeTo(0.6, 12),
      expect.closeTo(1000, 9),
      expect.closeTo(1500, 9),
    ])
    expect(readOut(set.why)).toEqual([
      'Kv of the lockshield: it takes what the rest leaves of the index loss: 0.6 m³/h (IEC 60534-2-1)',
      ...figuresTold(1500, '  '),
    ])
  })

  it('is the opening at that Kv, in the table’s own unit, with the rows it lies between', () => {
    const lockshield = {
      table: [
        { turns: 1, kvM3PerH: 0.2 },
        { turns: 3, kvM3PerH: 0.4 },
      ],
      unit: 'marks',
    }
    const set = balancedCircuit(openCircuit(circuit({ lockshield }), water), 4500)
    expect(readOut(set.why)).toEqual([
      "Opening: straight between the rows of the valve's table: 2 marks",
      '  Kv of the lockshield: it takes what the rest leaves of the index loss: 0.3 m³/h (IEC 60534-2-1)',
      ...figuresTold(4500, '    '),
      '  Kv at 1 marks: 0.2 m³/h',
      '  Kv at 3 marks: 0.4 m³/h',
    ])
  })

  it('says that it stays wide open where nobody knows its Kv', () => {
    const set = balancedCircuit(openCircuit(circuit(), water), 500)
    expect(set).toMatchObject({ kvM3PerH: null, lockshieldPa: 0, lossPa: 500, opening: null })
    expect(readOut(set.why)).toEqual([
      'The lockshield stays wide open; this is what the circuit loses: 500 Pa',
      ...figuresTold(500, '  '),
    ])
  })

  it('stays wide open within a thousandth of the index loss, and is turned past it', () => {
    const at = (targetPa: number) => balancedCircuit(openCircuit(circuit(), water), targetPa).kvM3PerH
    // A thousandth of 500.5 Pa is 0.5005 Pa; of 500.6 it is 0.5006, and 0.6 is left.
    expect(at(500.5)).toBeNull()
    // Kv 0.06 / √(0.6 / 100000) = 24.4949.
    expect(at(500.6)).toBeCloseTo(24.4949, 3)
  })

  it('of two rows, its own last one wide open, is never opened further than that', () => {
    const open = openCircuit(circuit({ lockshield: { table } }), water)
    expect(balancedCircuit(open, 1500)).toMatchObject({ kvM3PerH: 0.6, opening: { at: 2, unit: 'turns' } })
    expect(balancedCircuit(open, 1505).kvM3PerH).toBeLessThan(0.6)
    expect(balancedCircuit(open, 1400).kvM3PerH).toBe(0.6)
    expect(balancedCircuit({ ...open, openPa: 0 }, 500).kvM3PerH).toBe(0.6)
  })

  it('has no opening where the table does not reach so low', () => {
    const set = balancedCircuit(openCircuit(circuit({ lockshield: { table } }), water), 100_500)
    expect([set.kvM3PerH, set.opening]).toEqual([expect.closeTo(0.06, 12), null])
    expect(set.why.says).toBe('Kv of the lockshield: it takes what the rest leaves of the index loss')
  })
})

describe('the reason of a house’s pump head', () => {
  const lockshield = { table: [{ turns: 1, kvM3PerH: 1 }] }
  const house: BalanceInput = {
    legs: [
      { id: 'main', from: null, pipe },
      { id: 'tail', from: 'main', pipe, zetas: [1] },
    ],
    circuits: [
      { id: 'far', legId: 'tail', watts: 1000, emitterLossPa: 50, valveKvM3PerH: 0.6, lockshield },
      { id: 'near', legId: 'main', watts: 500 },
    ],
    flowC: 55,
    returnC: 45,
  }
  const balanced = answered(balanceHouse(house, figures))
  const told = () =>
    readOut(answered(balanceHouse(house, figures)).why).map((line) =>
      line.replace(/^(.*): [-\d.e+]+(?= |$)/, '$1:'),
    )

  it('begins with the flows, then the legs from the pump, emitter and both valves', () => {
    const lines = told()
    expect(lines.filter((line) => /^ {0,2}\S/.test(line))).toEqual([
      'Pump head: what the index circuit, far, loses with its lockshield wide open: Pa (losses in series add)',
      '  Flow that the pump moves: of all circuits: L/min',
      '  Leg main: Pa',
      '  Leg tail: Pa',
      '  Emitter: Pa',
      '  Thermostatic valve: Pa (IEC 60534-2-1)',
      '  Lockshield, wide open: Pa (IEC 60534-2-1)',
    ])
    expect(lines.filter((line) => /^ {4}\S/.test(line))).toEqual([
      '    Flow of circuit far: L/min',
      '    Flow of circuit near: L/min',
      '    Flow in leg main: of all the circuits that hang on it: L/min',
      '    Pressure lost: pipe × length + fittings: Pa (Darcy-Weisbach)',
      '    Flow in leg tail: of all the circuits that hang on it: L/min',
      '    Pressure lost: pipe × length + fittings: Pa (Darcy-Weisbach)',
      '    Flow of circuit far: L/min',
      '    Kv: m³/h',
      '    Density of water: kg/m³',
      '    Flow of circuit far: L/min',
      '    Kv: m³/h',
      '    Density of water: kg/m³',
    ])
  })

  it('adds to the head, and tells it in metres of this water', () => {
    const { why, headPa, headM, circuits } = answered(balanceHouse(house, figures))
    expect(why.value).toBe(headPa)
    const sum = why.from.slice(1).reduce((total, { value }) => total + Number(value), 0)
    expect(sum).toBeCloseTo(headPa, 9)
    // 988.05 kg/m3 (steam tables) × 9.80665 m/s2.
    expect(headM).toBeCloseTo(headPa / (988.05 * 9.80665), 5)
    const [far] = circuits
    expect(far).toMatchObject({ id: 'far', index: true, emitterPa: 50, kvM3PerH: 1 })
    expect(far?.lossPa).toBeCloseTo(headPa, 9)
  })

  it('has no spare head where nobody gave the pump’s, and leaves out what a circuit does not have', () => {
    expect(balanced).not.toHaveProperty('sparePa')
    const bare = { ...house, circuits: [{ id: 'near', legId: 'main', watts: 500 }], availablePa: 1e5 }
    const answer = answered(balanceHouse(bare, figures))
    expect(answer.sparePa).toBeCloseTo(1e5 - answer.headPa, 9)
    expect(answer.why.from.map(({ says }) => says)).toEqual([
      'Flow that the pump moves: of all circuits',
      'Leg main',
      'Emitter',
    ])
  })

  it('of a leg on which nothing hangs is nothing', () => {
    const legs = answered(
      legLosses({ ...house, circuits: [house.circuits[1] as BalanceCircuit] }, [
        { litresPerMinute: 1, why: given('Flow', 1) },
      ]),
    )
    expect(legs[1]).toEqual({
      id: 'tail',
      carries: [],
      litresPerMinute: 0,
      velocityMPerS: 0,
      perMetrePa: 0,
      lossPa: 0,
      why: given('Leg tail: nothing hangs on it', 0, 'Pa'),
    })
    expect(legs[0]?.why.from[0]).toEqual(
      because('Flow in leg main: of all the circuits that hang on it', 1, {
        unit: 'L/min',
        from: [given('Flow of circuit near', 1, 'L/min')],
      }),
    )
  })

  it('is refused circuit by circuit for watts, once for a wrong flow or return', () => {
    const circuits = [0, -5].map((watts, index) => ({ id: String(index), legId: 'main', watts }))
    const wrong = circuitFlows({ circuits, flowC: 55, returnC: 45 })
    expect(wrong.ok ? [] : wrong.problems.map(({ path }) => path)).toEqual([
      'circuits[0].watts',
      'circuits[1].watts',
    ])
    const cold = circuitFlows({ circuits: house.circuits, flowC: 45, returnC: 45 })
    expect(cold.ok ? [] : cold.problems.map(({ path }) => path)).toEqual(['flowC'])
    const flat = answered(circuitFlows(house))
    expect(flat).toHaveLength(2)
    const senseless = legLosses(house, [flat[0], { ...flat[1], litresPerMinute: 1e9 }] as typeof flat)
    expect(senseless.ok ? [] : senseless.problems.map(({ path }) => path)).toEqual(['legs[0]'])
  })
})

describe('what a balanced house is warned of, word for word', () => {
  const open = (circuit: BalanceCircuit) => openCircuit(circuit, water)
  const warned = (circuit: BalanceCircuit, availablePa?: number, targetPa = 1500) => {
    const one = open(circuit)
    const input = { legs: [], circuits: [circuit], flowC: 65, returnC: 55, availablePa }
    const worked = {
      legs: [],
      open: [one],
      circuits: [balancedCircuit(one, targetPa)],
      index: open({ ...circuit, lockshield: { table } }),
    }
    return balanceWarnings(input, worked, figures)
  }
  const circuit = { id: 'far', legId: 'x', watts: 1, lockshield: { table } }

  it('of a pump that is too weak, with the Kv that its head leaves room for', () => {
    // 500 Pa fixed + 1000 Pa wide open; 900 Pa of head leave 400 Pa: Kv 0.06 / √0.004 = 0.9487.
    expect(warned(circuit, 900)).toEqual([
      {
        kind: 'short',
        path: 'circuits[0]',
        message:
          'Circuit far loses 1500 Pa even wide open, and the pump gives 900 Pa. Its lockshield would need Kv 0.949, and wide open it has 0.6. Wider pipe, a stronger pump or a larger temperature drop would be right.',
      },
    ])
    const bare =
      'Circuit far loses 1500 Pa even wide open, and the pump gives 500 Pa. Wider pipe, a stronger pump or a larger temperature drop would be right.'
    expect(warned(circuit, 500).map(({ message }) => message)).toEqual([bare])
    expect(warned(circuit, 1500.001)).toEqual([])
    expect(warned(circuit)).toEqual([])
    expect(warned({ ...circuit, lockshield: {} }, 400)[0]?.message).toBe(
      'Circuit far loses 500 Pa even wide open, and the pump gives 400 Pa. Wider pipe, a stronger pump or a larger temperature drop would be right.',
    )
  })

  it('of a lockshield that is too coarse', () => {
    // 100500 - 500 Pa is one bar: Kv 0.06, and the table begins at 0.3.
    expect(warned(circuit, undefined, 100_500)).toEqual([
      {
        kind: 'tight',
        path: 'circuits[0].lockshield.table',
        message:
          "Circuit far needs Kv 0.06, and its lockshield's table begins at 0.3: no opening can be named. A finer valve would be right.",
      },
    ])
    expect(warned({ ...circuit, lockshield: { table: table.slice(1) } })).toEqual([])
  })

  it('of legs idle and slow, and of an index circuit whose lockshield is not counted', () => {
    const house = {
      legs: [
        { id: 'main', from: null, pipe },
        { id: 'spare', from: 'main', pipe },
      ],
      circuits: [{ id: 'far', legId: 'main', watts: 400 }],
      flowC: 65,
      returnC: 55,
    }
    const { warnings, legs } = answered(balanceHouse(house, figures))
    const speed = Number((legs[0]?.velocityMPerS ?? 0).toPrecision(2))
    const least = figures.settings['hydraulics.airMPerS']?.value ?? 0
    expect(warnings).toEqual([
      {
        kind: 'air',
        path: 'legs[0]',
        message: `Leg main: Water runs at ${speed} m/s here; below ${least} m/s it may leave air behind. Vent the pipe's high points.`,
      },
      {
        kind: 'idle',
        path: 'legs[1]',
        message: 'Nothing hangs on leg spare; take it out, or hang a circuit on it.',
      },
      {
        kind: 'uncounted',
        path: 'circuits[0].lockshield',
        message:
          'Circuit far is the index circuit, and its lockshield has no table: what it loses wide open is not in the pump head. Give the table, or allow for it.',
      },
    ])
  })
})
