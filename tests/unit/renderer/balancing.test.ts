import { describe, expect, it } from 'vitest'
import { job as jobShape } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import type { HousePipes } from '../../../src-main/domain/house-pipes.ts'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { called, circuitsOf, idOf, namesOf, toBalance } from '../../../src-renderer/screens/house/circuits.ts'
import { readRow, withRow } from '../../../src-renderer/screens/house/lockshield-table.tsx'
import { newLeg, withoutLeg } from '../../../src-renderer/screens/house/pipe-runs.tsx'
import { emitterForTests } from './emitter-for-tests.ts'

const sampleJob = jobShape.parse(sample)
const items = new Map(sampleJob.swaps.map(({ emitterId }) => [emitterId, emitterForTests()]))
const { system } = sampleJob.survey
const job: Job = {
  ...sampleJob,
  survey: { ...sampleJob.survey, system: { ...system, flowC: 75, returnC: 65 } },
  rooms: sampleJob.rooms.map((room) => ({ ...room, roomC: 20 })),
}
const main = { legId: 'main', name: 'Main', from: null, lengthM: 6, insideMm: 20.2 }
const toBath = {
  legId: 'run-2',
  name: 'To the bath',
  from: 'main',
  to: { swapId: 'bathroom-rail' },
  lengthM: 8,
  insideMm: 13.6,
  zeta: 3,
}
const withPipes = (house: HousePipes): Job => jobShape.parse({ ...job, house })

describe('the water of each emitter', () => {
  it('is 1.465 l/min for 1000 W and 10 K: 1000 / (4190 x 10) kg/s, 977.8 kg/m³ at 70 °C, by hand', () => {
    const { circuits, notCounted, without } = circuitsOf(job, items)
    expect(circuits.map(({ id, roomName }) => [id, roomName])).toEqual([
      ['bathroom-rail', 'Bathroom'],
      ['bedroom-panel', 'Back bedroom'],
    ])
    expect(circuits[0]?.watts).toBeCloseTo(1000, 6)
    expect(circuits[0]?.litresPerMinute).toBeCloseTo((1000 / 41_900 / 977.8) * 60_000, 2)
    expect(circuits[0]?.why).toMatchObject({ unit: 'LPerMin' })
    expect([notCounted, without]).toEqual([[], []])
  })
  it('is counted for what stays, and rooms that nobody surveyed are named', () => {
    const [bath, bedroom] = job.rooms
    if (bath === undefined || bedroom === undefined) throw new Error('The sample has two rooms')
    const stays = {
      ...job,
      swaps: job.swaps.slice(0, 1),
      rooms: [{ ...bath, otherEmittersW: 500 }, bedroom],
    }
    const { circuits, notCounted } = circuitsOf(stays, items)
    expect(circuits.map(({ id, watts }) => [id, Math.round(watts)])).toEqual([
      ['bathroom-rail', 1000],
      ['stays.bathroom', 500],
    ])
    expect(notCounted).toEqual(['Back bedroom'])
  })
  it('leaves out, and names, an emitter that is not in the catalogue or gives nothing', () => {
    expect(circuitsOf(job, new Map()).without).toEqual(['Bathroom', 'Back bedroom'])
    const cold = { ...job.survey, system: { ...system, flowC: 30, returnC: 20 } }
    expect(circuitsOf({ ...job, survey: cold }, items)).toMatchObject({
      circuits: [],
      without: ['Bathroom', 'Back bedroom'],
    })
  })
})

describe('the pipes of a house', () => {
  const { circuits } = circuitsOf(job, items)
  it('are kept in the job, and asked about with the emitters that hang on them', () => {
    const { input, wanted, loose } = toBalance(withPipes({ legs: [main, toBath] }), circuits)
    expect(wanted).toEqual([])
    expect(loose.map(({ id }) => id)).toEqual(['bedroom-panel'])
    expect(input).toMatchObject({
      legs: [
        { id: 'main', from: null, pipe: { insideMm: 20.2, lengthM: 6, roughnessMm: 0.0015 } },
        { id: 'run-2', from: 'main', zetas: [3] },
      ],
      circuits: [{ id: 'bathroom-rail', legId: 'run-2' }],
      flowC: 75,
      returnC: 65,
    })
    expect(input?.circuits[0]).not.toHaveProperty('lockshield')
  })
  it('carry the table of the lockshield only where it is given', () => {
    const lockshield = { table: [{ turns: 1, kvM3PerH: 0.2 }] }
    const { input } = toBalance(withPipes({ legs: [toBath, main], lockshield }), circuits)
    expect(input?.circuits[0]?.lockshield).toEqual(lockshield)
  })
  it('are not asked about while a length or an emitter is wanted, or two runs end at one', () => {
    const { lengthM: _, ...unmeasured } = main
    expect(toBalance(withPipes({ legs: [unmeasured] }), circuits)).toMatchObject({
      input: null,
      wanted: ['Give the length of Main.', 'Say at least of one run which emitter hangs at its end.'],
    })
    const twice = { ...toBath, legId: 'run-3', name: 'Again' }
    expect(toBalance(withPipes({ legs: [main, toBath, twice] }), circuits).wanted).toEqual([
      'To the bath and Again end at the same emitter: let one of them end at a branch.',
    ])
  })
  it('are not asked about where there are none', () => {
    expect(toBalance(job, circuits)).toMatchObject({ wanted: ['Give a run of pipe first.'], input: null })
  })
  it('hang together when one is taken out', () => {
    const left = withoutLeg(withPipes({ legs: [main, toBath] }), 'main')
    expect(left.house?.legs).toEqual([{ ...toBath, from: null }])
    expect(withoutLeg(job, 'main')).toBe(job)
  })
  it('begin unmeasured, under a name that is free', () => {
    expect(newLeg([{ ...main, legId: 'run-2' }])).toEqual({
      legId: 'run-3',
      name: 'Run 3',
      from: null,
      insideMm: 13.6,
    })
  })
  it('are called by their names where the desk names them by their ids', () => {
    const names = namesOf(withPipes({ legs: [main, toBath] }), circuits)
    expect(called('Leg run-2 comes from main.', names)).toBe('Run “To the bath” comes from “Main”.')
    expect(called('Flow of circuit bathroom-rail', names)).toBe('Flow of circuit “Bathroom: Test panel”')
    expect(idOf({ roomId: 'hall' })).toBe('stays.hall')
  })
})

describe('the table of a lockshield', () => {
  it('is read as typed, and refused where one of the two is no number', () => {
    expect(readRow('0,5', '0.05')).toEqual({ turns: 0.5, kvM3PerH: 0.05 })
    for (const [turns, kv] of [
      ['', '0.1'],
      ['1', 'half'],
      ['-1', '0.1'],
      ['1', '-0.1'],
    ] as const)
      expect(readRow(turns, kv)).toBeNull()
  })
  it('stands from closed to open, each opening once', () => {
    const rows = [{ turns: 2, kvM3PerH: 0.4 }]
    expect(withRow(rows, { turns: 1, kvM3PerH: 0.2 }).map(({ turns }) => turns)).toEqual([1, 2])
    expect(withRow(rows, { turns: 2, kvM3PerH: 0.5 })).toEqual([{ turns: 2, kvM3PerH: 0.5 }])
  })
})
