import { describe, expect, it } from 'vitest'
import * as contract from '../../../../src-main/contract/heating/hydraulics.ts'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import { balanceHouse } from '../../../../src-main/engine/water/balance-house.ts'
import type { BalanceInput } from '../../../../src-main/engine/water/balance-input.ts'
import { legsUpward } from '../../../../src-main/engine/water/balance-input.ts'
import { doseInContainers } from '../../../../src-main/engine/water/dose-containers.ts'
import { pipeLoss } from '../../../../src-main/engine/water/pipe-loss.ts'
import {
  valveKv,
  valveKvM3PerH,
  valveLoss,
  valveLossPa,
} from '../../../../src-main/engine/water/valve-loss.ts'
import { tableFault, valveOpening } from '../../../../src-main/engine/water/valve-opening.ts'
import { velocityWarning } from '../../../../src-main/engine/water/velocity-warning.ts'
import { waterFlow } from '../../../../src-main/engine/water/water-flow.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const pipe = (insideMm: number, lengthM: number) => ({ insideMm, lengthM, roughnessMm: 0.0015 })
const house: BalanceInput = {
  legs: [
    { id: 'main', from: null, pipe: pipe(20.2, 12), zetas: [1.5] },
    { id: 'up', from: 'main', pipe: pipe(13.6, 20) },
    { id: 'down', from: 'main', pipe: pipe(13.6, 6) },
  ],
  circuits: [
    { id: 'bedroom', legId: 'up', watts: 1500, emitterLossPa: 200, valveKvM3PerH: 0.6 },
    { id: 'kitchen', legId: 'down', watts: 1000, emitterLossPa: 100, valveKvM3PerH: 0.6 },
  ],
  flowC: 65,
  returnC: 55,
}
const balanced = (change: Partial<BalanceInput> = {}) =>
  answered(balanceHouse({ ...house, ...change }, figures))
const refusal = (change: Partial<BalanceInput>) => refused(balanceHouse({ ...house, ...change }, figures))
/** The house with the kitchen changed. */
const kitchen = (change: Partial<BalanceInput['circuits'][number]>) => ({
  circuits: house.circuits.map((one) => (one.id === 'kitchen' ? { ...one, ...change } : one)),
})
const warningsOf = (change: Partial<BalanceInput>, kind: string) =>
  balanced(change).warnings.filter((warning) => warning.kind === kind)

describe('a valve’s loss', () => {
  it.each([
    [{ kvM3PerH: 0, litresPerMinute: 1, meanC: 60 }, 'kvM3PerH'],
    [{ kvM3PerH: 20_000, litresPerMinute: 1, meanC: 60 }, 'kvM3PerH'],
    [{ kvM3PerH: 1, litresPerMinute: 0, meanC: 60 }, 'litresPerMinute'],
    [{ kvM3PerH: 1, litresPerMinute: 1, meanC: 0.5 }, 'meanC'],
    [{ kvM3PerH: 1, litresPerMinute: 1, meanC: Number.NaN }, 'meanC'],
  ])('is refused for %j', (input, path) => {
    expect(refused(valveLoss(input)).path).toBe(path)
  })

  it.each([
    [{ litresPerMinute: 1, pa: 0, meanC: 60 }, 'pa'],
    [{ litresPerMinute: -1, pa: 10, meanC: 60 }, 'litresPerMinute'],
    [{ litresPerMinute: 1, pa: 10, meanC: 111 }, 'meanC'],
  ])('has no Kv for %j', (input, path) => {
    expect(refused(valveKv(input)).path).toBe(path)
  })

  it('has every figure at the leaves of its reason', () => {
    const loss = answered(valveLoss({ kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 60 }))
    for (const figure of [0.6, 1.5, 60]) expect(leavesOf(loss.why)).toContain(figure)
    const kv = answered(valveKv({ litresPerMinute: 1.5, pa: 2000, meanC: 60 }))
    for (const figure of [1.5, 2000, 60]) expect(leavesOf(kv.why)).toContain(figure)
  })

  it('is no business of the bare equations where they do not hold', () => {
    expect(() => valveLossPa({ kvM3PerH: 0, litresPerMinute: 1, densityKgPerM3: 1000 })).toThrow('No loss')
    expect(() => valveKvM3PerH({ pa: 0, litresPerMinute: 1, densityKgPerM3: 1000 })).toThrow('No Kv')
  })
})

describe('a valve’s opening', () => {
  const table = [
    { turns: 0.5, kvM3PerH: 0.1 },
    { turns: 1, kvM3PerH: 0.3 },
    { turns: 2, kvM3PerH: 0.5 },
  ]
  it.each([
    [0.1, 0.5],
    [0.2, 0.75],
    [0.3, 1],
    [0.45, 1.75],
    [0.5, 2],
  ])('for Kv %d lies straight between the rows about it: %d', (kvM3PerH, turns) => {
    expect(valveOpening({ kvM3PerH, table })).toBeCloseTo(turns, 12)
  })

  it('is not known outside the table', () => {
    expect([0.09, 0.51].map((kvM3PerH) => valveOpening({ kvM3PerH, table }))).toEqual([null, null])
  })

  it.each([
    [[], 0],
    [[{ turns: 0, kvM3PerH: 0 }], 0],
    [[...table, { turns: 2, kvM3PerH: 0.6 }], 3],
    [[...table, { turns: 3, kvM3PerH: 0.5 }], 3],
    [[{ turns: -1, kvM3PerH: 0.1 }], 0],
  ])('has no table in %j', (wrong, row) => {
    expect(tableFault(wrong)?.row).toBe(row)
    expect(() => valveOpening({ kvM3PerH: 0.2, table: wrong })).toThrow(tableFault(wrong)?.message)
  })
})

describe('a house in balance, worked by hand', () => {
  it('carries in the main what both circuits need', () => {
    const of = (watts: number) => answered(waterFlow({ watts, flowC: 65, returnC: 55 })).litresPerMinute
    const { legs, circuits, litresPerMinute } = balanced()
    expect(legs.map((leg) => leg.litresPerMinute)).toEqual([of(1500) + of(1000), of(1500), of(1000)])
    expect(circuits.map((one) => one.litresPerMinute)).toEqual([of(1500), of(1000)])
    expect(litresPerMinute).toBe(of(1500) + of(1000))
  })

  it('asks of the pump what the index circuit loses: main, own leg, emitter and valve', () => {
    const of = (watts: number) => answered(waterFlow({ watts, flowC: 65, returnC: 55 })).litresPerMinute
    const loss = (size: ReturnType<typeof pipe>, litresPerMinute: number, zetas: readonly number[] = []) =>
      answered(pipeLoss({ ...size, litresPerMinute, meanC: 60, zetas })).totalPa
    const valve = answered(valveLoss({ kvM3PerH: 0.6, litresPerMinute: of(1500), meanC: 60 })).pa
    const expected =
      loss(pipe(20.2, 12), of(1500) + of(1000), [1.5]) + loss(pipe(13.6, 20), of(1500)) + 200 + valve
    const { headPa, indexCircuitId } = balanced()
    expect(indexCircuitId).toBe('bedroom')
    expect(headPa).toBeCloseTo(expected, 9)
  })

  it('leaves the index circuit’s lockshield open and turns the other down; it says nothing of turns without a table', () => {
    const [bedroom, other] = balanced().circuits
    expect(bedroom).toMatchObject({ index: true, kvM3PerH: null, opening: null, lockshieldPa: 0 })
    expect(other).toMatchObject({ index: false, opening: null })
    expect(other?.lossPa).toBeCloseTo(balanced().headPa, 6)
  })

  it('names the opening in the table’s own unit, at the Kv it found', () => {
    const kv = balanced().circuits[1]?.kvM3PerH ?? 0
    const table = [
      { turns: 10, kvM3PerH: kv - 0.1 },
      { turns: 20, kvM3PerH: kv + 0.1 },
    ]
    const { circuits } = balanced(kitchen({ lockshield: { table, unit: 'marks' } }))
    expect(circuits[1]?.opening?.at).toBeCloseTo(15, 9)
    expect(circuits[1]?.opening?.unit).toBe('marks')
    expect(balanced(kitchen({ lockshield: { table } })).circuits[1]?.opening?.unit).toBe('turns')
  })

  it('counts a lockshield’s own loss wide open, where its table tells it: it may make the index circuit', () => {
    const table = [{ turns: 4, kvM3PerH: 0.1 }]
    const answer = balanced(kitchen({ lockshield: { table } }))
    expect(answer.indexCircuitId).toBe('kitchen')
    expect(answer.circuits[1]).toMatchObject({ kvM3PerH: 0.1, opening: { at: 4, unit: 'turns' } })
    expect(answer.headPa).toBeGreaterThan(balanced().headPa)
  })

  it('two like circuits both stay open', () => {
    const circuits = ['one', 'two'].map((id) => ({ id, legId: 'up', watts: 800 }))
    expect(balanced({ circuits }).circuits.map(({ kvM3PerH }) => kvM3PerH)).toEqual([null, null])
  })

  it('has the input at the leaves of the pump head’s reason, and fits its request', () => {
    const answer = balanced()
    for (const figure of [12, 20, 1500, 1000, 65, 55, 1.5, 0.6, 200, 20.2, 13.6])
      expect(leavesOf(answer.why)).toContain(figure)
    expect(contract.houseBalance.input.safeParse(house).error).toBeUndefined()
    expect(contract.houseBalance.output.safeParse(answer).error).toBeUndefined()
    const says = (why: Derivation): string => [why.says, ...why.from.map(says)].join('\n')
    expect(says(answer.why)).not.toMatch(/undefined|NaN/)
  })
})

describe('a house that is no tree is refused with the path', () => {
  const leg = (id: string, from: string | null) => ({ id, from, pipe: pipe(13.6, 5) })
  const hung = (legId: string) => [{ id: 'a', legId, watts: 500 }]
  it.each([
    [{ legs: [leg('x', 'y'), leg('y', 'x')], circuits: hung('x') }, 'legs[0].from', 'ring'],
    [{ legs: [leg('x', 'x')], circuits: hung('x') }, 'legs[0].from', 'ring'],
    [{ legs: [leg('r', null), leg('x', 'z'), leg('z', 'x')], circuits: hung('r') }, 'legs[1].from', 'ring'],
    [{ legs: [leg('x', 'gone')], circuits: hung('x') }, 'legs[0].from', 'no leg of that name'],
    [{ legs: [leg('x', null), leg('x', null)], circuits: hung('x') }, 'legs[1].id', 'two legs'],
    [{ legs: [leg('x', null)], circuits: hung('gone') }, 'circuits[0].legId', 'no leg of that name'],
    [{ legs: [leg('x', null)], circuits: [...hung('x'), ...hung('x')] }, 'circuits[1].id', 'two circuits'],
    [{ circuits: [] }, 'circuits', 'at least one'],
  ] as const)('%j', (change, path, words) => {
    expect(refusal(change)).toMatchObject({ path, message: expect.stringContaining(words) })
  })

  it('says all that is wrong at once, a ring once', () => {
    const legs = [leg('x', 'y'), leg('y', 'x'), leg('w', 'gone')]
    const outcome = balanceHouse({ ...house, legs, circuits: hung('none') }, figures)
    const paths = outcome.ok ? [] : outcome.problems.map((problem) => problem.path)
    expect(paths).toEqual(['legs[2].from', 'legs[0].from', 'circuits[0].legId'])
  })

  it('legs that hang on nothing have no way to the pump', () => {
    expect(() => legsUpward([leg('x', 'x')])).toThrow('does not end at the pump')
  })
})

describe('a house with a figure that has no sense is refused with the path', () => {
  const [main, ...others] = house.legs
  const withMain = (change: object) => ({ legs: [{ ...main, ...change } as typeof main & object, ...others] })
  it.each([
    [{ flowC: 50 }, 'flowC'],
    [{ returnC: 0 }, 'returnC'],
    [{ availablePa: 0 }, 'availablePa'],
    [kitchen({ watts: 0 }), 'circuits[1].watts'],
    [kitchen({ emitterLossPa: -1 }), 'circuits[1].emitterLossPa'],
    [kitchen({ valveKvM3PerH: 0 }), 'circuits[1].valveKvM3PerH'],
    [kitchen({ lockshield: { table: [{ turns: 1, kvM3PerH: 0 }] } }), 'circuits[1].lockshield.table[0]'],
    [withMain({ pipe: pipe(0, 12) }), 'legs[0].pipe.insideMm'],
    [withMain({ pipe: { ...pipe(20.2, 12), roughnessMm: 5 } }), 'legs[0].pipe.roughnessMm'],
    [withMain({ zetas: [1, -1] }), 'legs[0].zetas[1]'],
    [withMain({ pipe: { ...pipe(1e-3, 12), roughnessMm: 0 } }), 'legs[0]'],
    [{ flowC: Number.NaN }, 'flowC'],
  ])('%j', (change, path) => {
    expect(refusal(change).path).toBe(path)
  })

  it('a wrong return is said once, not for each circuit', () => {
    const outcome = balanceHouse({ ...house, returnC: 0 }, figures)
    expect(outcome.ok ? [] : outcome.problems).toHaveLength(1)
  })
})

describe('a balanced house warns', () => {
  it('of water too slow or too fast, by the leg, with the limit', () => {
    expect(warningsOf({}, 'air').map(({ path }) => path)).toEqual(['legs[0]', 'legs[1]', 'legs[2]'])
    const fast = kitchen({ watts: 7000 })
    expect(warningsOf(fast, 'noise')).toMatchObject([{ path: 'legs[2]' }])
    expect(warningsOf(fast, 'noise')[0]?.message).toContain('above 1 m/s')
  })

  it('by the firm’s own limit when it has one', () => {
    const own = {
      ...figures.settings['hydraulics.airMPerS'],
      value: 0.01,
    } as (typeof figures.settings)[string]
    const settings = { ...figures.settings, 'hydraulics.airMPerS': own }
    expect(velocityWarning({ insideMm: 13.6, velocityMPerS: 0.1 }, { ...figures, settings })).toBeNull()
  })

  it('of a leg on which nothing hangs; it loses nothing', () => {
    const legs = [...house.legs, { id: 'spare', from: 'main', pipe: pipe(13.6, 3) }]
    expect(warningsOf({ legs }, 'idle')).toMatchObject([{ path: 'legs[3]' }])
    expect(balanced({ legs }).legs[3]).toMatchObject({ litresPerMinute: 0, lossPa: 0 })
    expect(balanced({ legs }).headPa).toBe(balanced().headPa)
  })

  it('of a circuit that the pump cannot serve wide open, and what Kv it would need', () => {
    const { headPa } = balanced()
    expect(warningsOf({ availablePa: headPa }, 'short')).toEqual([])
    expect(balanced({ availablePa: headPa - 10 }).sparePa).toBeCloseTo(-10, 9)
    expect(warningsOf({ availablePa: headPa - 10 }, 'short')).toMatchObject([{ path: 'circuits[0]' }])
    const table = [{ turns: 4, kvM3PerH: 0.1 }]
    const change = { ...kitchen({ lockshield: { table } }), availablePa: headPa }
    const [short] = warningsOf(change, 'short')
    expect(short?.path).toBe('circuits[1]')
    expect(short?.message).toMatch(/would need Kv 0\.\d+, and wide open it has 0\.1\./)
  })

  it('of a lockshield whose table does not go so low, and then names no opening', () => {
    const change = kitchen({ lockshield: { table: [{ turns: 1, kvM3PerH: 3 }] } })
    expect(warningsOf(change, 'tight')).toMatchObject([{ path: 'circuits[1].lockshield.table' }])
    const other = balanced(change).circuits[1]
    expect(other?.opening).toBeNull()
    expect(other?.kvM3PerH).toBeLessThan(3)
    expect(other?.lossPa).toBeCloseTo(balanced().headPa, 6)
  })

  it('when the index circuit’s own lockshield is not in the head, and not when its table is given', () => {
    expect(warningsOf({}, 'uncounted')).toMatchObject([{ path: 'circuits[0].lockshield' }])
    const lockshield = { table: [{ turns: 3, kvM3PerH: 2 }] }
    const circuits = house.circuits.map((one) => ({ ...one, lockshield }))
    expect(warningsOf({ circuits }, 'uncounted')).toEqual([])
  })
})

describe('a dose in containers', () => {
  const packs = [
    { id: 'litre', holds: 1, pence: 1500 },
    { id: 'half', holds: 0.5, pence: 900 },
  ]
  const dose = { contentLitres: 112, drainedShare: 1, treatedLitresPerLitre: 100 }

  it('of 1.12 L takes a litre and a half: 2400 pence, where two litres would be 3000', () => {
    const { litres, containers } = answered(doseInContainers({ ...dose, packs }))
    expect(litres).toBeCloseTo(1.12, 12)
    expect(containers?.picks).toEqual([
      { id: 'litre', count: 1 },
      { id: 'half', count: 1 },
    ])
    expect(containers?.pence).toBe(2400)
    expect(containers?.leftover).toBeCloseTo(0.38, 6)
  })

  it('is litres alone where nobody said what there is, and no container where nothing is let out', () => {
    expect(answered(doseInContainers(dose)).containers).toBeNull()
    const none = answered(doseInContainers({ ...dose, drainedShare: 0, packs }))
    expect(none).toMatchObject({ litres: 0, containers: { picks: [], pence: 0, leftover: 0 } })
  })

  it('is refused where the dose or the packs are wrong, with the path that the person gave', () => {
    expect(refused(doseInContainers({ ...dose, drainedShare: 2, packs })).path).toBe('drainedShare')
    expect(refused(doseInContainers({ ...dose, packs: [...packs, ...packs] })).path).toBe('packs[2].id')
    const sea = { ...dose, contentLitres: 1e9, packs }
    expect(refused(doseInContainers(sea)).path).toBe('contentLitres')
  })
})
