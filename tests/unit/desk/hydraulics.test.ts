import { describe, expect, it } from 'vitest'
import { requests } from '../../../src-main/contract/requests.ts'
import type { AnswerOf, InputOf, RequestName } from '../../../src-main/contract/requests.ts'
import type { Outcome } from '../../../src-main/domain/outcome.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { answered, leavesOf, refused } from '../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}

async function asked<N extends RequestName>(name: N, input: InputOf<N>): Promise<AnswerOf<N>> {
  const value = answered((await answer(name, input, desk)) as Outcome<AnswerOf<N>>)
  expect(requests[name].output.safeParse(value).error).toBeUndefined()
  return value
}

describe('the requests about a house’s water', () => {
  it('valve.loss and valve.kv undo each other', async () => {
    const { pa } = await asked('valve.loss', { kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 60 })
    const { kvM3PerH } = await asked('valve.kv', { litresPerMinute: 1.5, pa, meanC: 60 })
    expect(kvM3PerH).toBeCloseTo(0.6, 9)
  })

  it('house.balance takes the limits of speed from the settings', async () => {
    const pipe = { insideMm: 8.8, lengthM: 10, roughnessMm: 0.0015 }
    const balance = await asked('house.balance', {
      legs: [{ id: 'tail', from: null, pipe }],
      circuits: [{ id: 'rail', legId: 'tail', watts: 4500, lockshield: {} }],
      flowC: 65,
      returnC: 55,
    })
    // 4500 W at 60 degrees: 6.565 L/min through 60.82 mm2: 1.80 m/s, past the 1.5 m/s of small bore.
    expect(balance.warnings.map(({ kind }) => kind)).toContain('noise')
    expect(balance.warnings[0]?.message).toContain('above 1.5 m/s')
  })

  it('system.content allows 11 L/kW, as the firm’s figure stands, and takes a survey before it', async () => {
    const allowed = await asked('system.content', { boilerKW: 18 })
    expect(allowed).toMatchObject({ litres: 198, surveyed: false })
    expect(leavesOf(allowed.why)).toEqual([18, 11])
    const iron = await asked('system.content', { boilerKW: 18, litresPerKW: 14 })
    expect(iron.litres).toBe(252)
    const surveyed = await asked('system.content', { surveyedLitres: 90, boilerKW: 18 })
    expect(surveyed).toMatchObject({ litres: 90, surveyed: true })
  })

  it('system.content needs litres or kW', async () => {
    expect(refused(await answer('system.content', {}, desk)).path).toBe('boilerKW')
  })

  it('water.dose takes one litre for a hundred by default, and whole containers', async () => {
    const packs = [{ id: 'litre', holds: 1, pence: 1500 }]
    const dose = await asked('water.dose', { product: 'inhibitor', contentLitres: 112, packs })
    expect(dose.litres).toBeCloseTo(1.12, 12)
    expect(dose.containers).toMatchObject({ picks: [{ id: 'litre', count: 2 }], pence: 3000 })
    const strong = {
      product: 'cleaner',
      contentLitres: 112,
      drainedShare: 0.5,
      treatedLitresPerLitre: 200,
    } as const
    expect(await asked('water.dose', strong)).toMatchObject({ litres: 0.28, containers: null })
  })

  it('say in plain words what is wrong with an input', async () => {
    expect(refused(await answer('valve.kv', { litresPerMinute: 1, meanC: 60 }, desk))).toMatchObject({
      path: 'pa',
      message: 'Pressure (Pa) is missing; give a number.',
    })
  })
})
