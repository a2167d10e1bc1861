import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import { balanceProblems, legsUpward } from '../../../../src-main/engine/water/balance-input.ts'
import type { BalanceCircuit, BalanceInput } from '../../../../src-main/engine/water/balance-input.ts'
import { doseInContainers } from '../../../../src-main/engine/water/dose-containers.ts'
import { surveyedContent } from '../../../../src-main/engine/water/surveyed-content.ts'
import { doseLitres, systemContent } from '../../../../src-main/engine/water/system-dose.ts'
import { tableFault, valveOpening } from '../../../../src-main/engine/water/valve-opening.ts'
import { answered, refused } from '../../../answered.ts'

const table = [
  { turns: 1, kvM3PerH: 0.3 },
  { turns: 2, kvM3PerH: 0.6 },
]
const pipe = { insideMm: 13.6, lengthM: 10, roughnessMm: 0.0015 }

describe('a house that is refused says what was wrong and what would be right', () => {
  const leg = (id: string, from: string | null) => ({ id, from, pipe })
  const house = (change: Partial<BalanceInput>) =>
    balanceProblems({
      legs: [leg('main', null)],
      circuits: [{ id: 'a', legId: 'main', watts: 500 }],
      flowC: 65,
      returnC: 55,
      ...change,
    })
  const circuit = (change: Partial<BalanceCircuit>) => [{ id: 'a', legId: 'main', watts: 500, ...change }]

  it.each([
    [{ circuits: [] }, 'circuits', 'There must be at least one circuit to balance.'],
    [{ availablePa: 0 }, 'availablePa', "The pump's head must be more than 0 Pa; it was 0."],
    [
      { legs: [leg('main', null), leg('main', null)] },
      'legs[1].id',
      'There are two legs called main; give each its own name.',
    ],
    [
      { circuits: [...circuit({}), ...circuit({})] },
      'circuits[1].id',
      'There are two circuits called a; give each its own name.',
    ],
    [
      { legs: [leg('main', null), leg('up', 'gone')] },
      'legs[1].from',
      'Leg up comes from gone, and there is no leg of that name; name one, or null for the pump.',
    ],
    [
      { legs: [leg('main', null), leg('z', 'x'), leg('x', 'y'), leg('y', 'x')] },
      'legs[2].from',
      'Legs x, y feed each other in a ring; one of them must come from the pump (null).',
    ],
    [
      { circuits: circuit({ legId: 'gone' }) },
      'circuits[0].legId',
      'Circuit a hangs on leg gone, and there is no leg of that name.',
    ],
    [
      { circuits: circuit({ emitterLossPa: -0.1 }) },
      'circuits[0].emitterLossPa',
      "An emitter's loss must be 0 Pa or more; it was -0.1.",
    ],
    [
      { circuits: circuit({ valveKvM3PerH: 0 }) },
      'circuits[0].valveKvM3PerH',
      'Kv must be 0.0001 to 10000 m³/h; it was 0.',
    ],
    [
      { circuits: circuit({ lockshield: { table: [] } }) },
      'circuits[0].lockshield.table[0]',
      "A valve's table must have at least one row.",
    ],
  ])('%j', (change, path, message) => {
    expect(house(change)).toEqual([{ code: 'invalid', path, message }])
  })

  it('and is let through with figures of nothing, and a head of next to nothing', () => {
    expect(house({ availablePa: 0.001, circuits: circuit({ emitterLossPa: 0, lockshield: {} }) })).toEqual([])
    expect(house({})).toEqual([])
  })

  it('the way to the pump is told leg by leg', () => {
    const way = legsUpward([leg('tail', 'mid'), leg('mid', 'main'), leg('main', null)])
    expect(Object.fromEntries(way)).toEqual({ tail: [0, 1, 2], mid: [1, 2], main: [2] })
    expect(() => legsUpward([leg('x', 'gone')])).toThrow('The way from leg x does not end at the pump')
  })

  it.each([
    [[], 0, "A valve's table must have at least one row."],
    [
      [{ turns: 1, kvM3PerH: 0.00009 }],
      0,
      'Opening and Kv must be 0 or more, and the widest open at least 0.0001 m³/h.',
    ],
    [
      [
        { turns: 0, kvM3PerH: -0.1 },
        { turns: 1, kvM3PerH: 1 },
      ],
      0,
      'Opening and Kv must be 0 or more, and the widest open at least 0.0001 m³/h.',
    ],
    [
      [...table, { turns: 2, kvM3PerH: 0.9 }],
      2,
      'The rows must go from closed to open, opening and Kv both rising; after 2 with Kv 0.6 came 2 with Kv 0.9.',
    ],
    [
      [...table, { turns: 3, kvM3PerH: 0.6 }],
      2,
      'The rows must go from closed to open, opening and Kv both rising; after 2 with Kv 0.6 came 3 with Kv 0.6.',
    ],
  ])('the table %j', (rows, row, message) => {
    expect(tableFault(rows)).toEqual({ row, message })
  })

  it('a table that starts shut at 0 is sound, and one row at the least Kv', () => {
    expect(tableFault([{ turns: 0, kvM3PerH: 0 }, ...table])).toBeNull()
    expect(tableFault([{ turns: 0, kvM3PerH: 0.0001 }])).toBeNull()
    expect(valveOpening({ kvM3PerH: 0.15, table: [{ turns: 0, kvM3PerH: 0 }, ...table] })).toBeCloseTo(
      0.5,
      12,
    )
  })
})

describe('the reasons of content and dose', () => {
  it('a surveyed content is its own reason; an asker’s own reasons are carried', () => {
    expect(answered(systemContent({ surveyedLitres: 90, litresPerKW: 11 }))).toEqual({
      litres: 90,
      surveyed: true,
      why: given('Water in the system, as surveyed', 90, 'L', 'survey'),
    })
    const boilerWhy = given('Boiler plate', 12, 'kW', 'plate')
    const allowanceWhy = given('The firm’s allowance', 11, 'L/kW', 'firm')
    const content = answered(systemContent({ boilerKW: 12, litresPerKW: 11, boilerWhy, allowanceWhy }))
    expect([content.litres, content.why.from]).toEqual([132, [boilerWhy, allowanceWhy]])
    const treatedWhy = given('The label', 100, 'L/L', 'label')
    const dose = answered(
      doseLitres({
        contentLitres: 132,
        contentWhy: content.why,
        drainedShare: 1,
        treatedLitresPerLitre: 100,
        treatedWhy,
      }),
    )
    expect(dose.why.from).toEqual([content.why, given('Share let out', 1), treatedWhy])
  })

  it('past all reckoning they say so', () => {
    const message = 'These figures make more water than can be reckoned; check them.'
    expect(refused(systemContent({ boilerKW: 1e200, litresPerKW: 1e200 }))).toEqual({
      code: 'impossible',
      message,
    })
    const dose = { contentLitres: 1e300, drainedShare: 1, treatedLitresPerLitre: 1e-300 }
    expect(refused(doseLitres(dose))).toEqual({ code: 'impossible', message })
    const emitters = [{ name: 'Panel', waterLitres: 1e200, count: 1e200 }]
    const rest = { pipes: [], boilerLitres: 0, litresPerKW: 11 }
    expect(refused(surveyedContent({ emitters, ...rest }, []))).toEqual({ code: 'impossible', message })
  })

  it('whole containers are counted over the dose and its packs', () => {
    const packs = [{ id: 'litre', holds: 1, pence: 1500 }]
    const dose = { contentLitres: 150, drainedShare: 1, treatedLitresPerLitre: 100 }
    const { why } = answered(doseInContainers({ ...dose, packs }))
    expect([why.says, why.value]).toEqual(['Whole containers that cover the dose', 2])
    expect(why).not.toHaveProperty('unit')
    expect(why.from).toHaveLength(2)
    expect(why.from[0]).toEqual(answered(doseLitres(dose)).why)
    const tiny = { ...dose, contentLitres: 0.99e-4, packs }
    expect(answered(doseInContainers(tiny)).containers).toEqual({ picks: [], pence: 0, leftover: 0 })
    expect(answered(doseInContainers({ ...tiny, contentLitres: 1e-4 })).containers?.picks).toEqual([
      { id: 'litre', count: 1 },
    ])
  })
})
