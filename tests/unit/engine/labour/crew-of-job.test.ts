import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { liftLimit } from '../../../../src-main/engine/labour/crew-lift.ts'
import { crewOfJob } from '../../../../src-main/engine/labour/crew-of-job.ts'
import type { SwapAsk } from '../../../../src-main/engine/takeoff/asks.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { typical } from '../../../typical-asks.ts'
import { factsOf, swapOf } from '../takeoff/facts-for-tests.ts'
import { liftUse } from './lifts-for-tests.ts'

/** As delivered one person lifts 25 kg at the waist and 20 kg on stairs; two 1.334 times and three 1.5 times that. */
const crew = (...asks: readonly Partial<SwapAsk>[]) =>
  crewOfJob(
    factsOf(asks.map((ask, place) => swapOf(`s${place}`, 'bedroom', { ask: { ...typical.swap, ...ask } }))),
    { togetherMin: 45, wholeMin: 300 },
    defaultFigures('2026-11-25'),
  )

describe('who has to come', () => {
  it('is one person for light things, who does it all alone', () => {
    const answer = crew({ emitterMassKg: 20 })
    expect(answer).toMatchObject({ people: 1, togetherMin: 0, aloneMin: 300, notWeighed: [] })
    expect(answer).not.toHaveProperty('aid')
    expect(answer.why).toEqual(
      because('One person: no lift is over the guideline for one.', 1, {
        from: [
          ...answer.lifts.map(({ why }) => why),
          given('Together, by the clock', 0, 'min'),
          given('Alone, by the clock', 300, 'min'),
        ],
      }),
    )
  })

  it('is two people where one lift asks for them, and one alone for the rest', () => {
    const answer = crew({ emitterMassKg: 20 }, { emitterMassKg: 26 })
    expect(answer).toMatchObject({ people: 2, togetherMin: 45, aloneMin: 255 })
    expect(answer.why).toEqual(
      because(
        'Two people for the lifts over the guideline for one; one person works alone for the rest.',
        2,
        {
          from: [
            ...answer.lifts.map(({ why }) => why),
            given('Together, by the clock', 45, 'min'),
            given('Alone, by the clock', 255, 'min'),
          ],
        },
      ),
    )
  })

  it('is one person where nothing is lifted', () => {
    expect(crew()).toMatchObject({ people: 1, lifts: [], aloneMin: 300 })
  })

  it('carries the old one out, the new one in, and hangs it where its hands are', () => {
    const use = liftUse()
    const { lifts } = crew({
      emitterMassKg: 10,
      emitterName: 'Panel',
      oldName: 'Old panel',
      oldMassKg: 12,
      storey: 1,
      handsMm: 1200,
      tightAccess: true,
    })
    expect(lifts.map(({ how, name, massKg, oneKg }) => [how, name, massKg, oneKg])).toEqual([
      ['carryOut', 'Old panel', 12, 20],
      ['carryIn', 'Panel', 10, 20],
      ['hang', 'Panel', 10, 10],
    ])
    expect(lifts.map(({ why }) => why)).toEqual([
      because('Old panel: carried out.', 1, { from: [liftLimit(12, { stairs: true }, use).why] }),
      because('Panel: carried in.', 1, { from: [liftLimit(10, { stairs: true }, use).why] }),
      because('Panel: hung on its brackets.', 1, {
        from: [liftLimit(10, { handsMm: 1200, far: true }, use).why],
      }),
    ])
  })

  it('knows no stairs on the ground floor, and stairs down to a cellar', () => {
    expect(crew({ storey: 0 }).lifts[0]?.oneKg).toBe(25)
    expect(crew({ storey: -1 }).lifts[0]?.oneKg).toBe(20)
  })

  it('names what nobody weighed, and nothing where nothing hung', () => {
    expect(crew({ oldName: 'Old panel' }, { oldName: 'Old rail', oldMassKg: 9 }, {}).notWeighed).toEqual([
      'Old panel in the Bedroom',
    ])
    expect(crew({ oldName: 'Old panel' }).lifts.map(({ how }) => how)).toEqual(['carryIn', 'hang'])
    expect(crew({ oldMassKg: 12 }).lifts.map(({ how }) => how)).toEqual(['carryIn', 'hang'])
  })
})

describe('a thing that is too heavy for two', () => {
  it('wants an aid or a third person up to what three lift: 3 x 20 / 2 = 30 kg on stairs', () => {
    // Two lift 2 x 20 x 0.667 = 26.68 kg.
    expect(crew({ emitterMassKg: 30, storey: 1 }).aid).toBe(
      'Bring a lifting aid or a third person: 30 kg, carried in, is over the 26 kg guideline for two.',
    )
  })

  it('wants an aid over that', () => {
    expect(crew({ emitterMassKg: 30.1, storey: 1 }).aid).toBe(
      'Bring a lifting aid: 30.1 kg, carried in, is over the 26 kg guideline for two.',
    )
  })

  it('is told of the worst lift: 34 kg upstairs (1.27 times) before 40 kg below (1.20 times)', () => {
    const upstairs = { emitterMassKg: 34, storey: 1 }
    const below = { emitterMassKg: 40 }
    const says = 'Bring a lifting aid: 34 kg, carried in, is over the 26 kg guideline for two.'
    expect(crew(upstairs, below).aid).toBe(says)
    expect(crew(below, upstairs).aid).toBe(says)
  })

  it('is told of an old one too', () => {
    expect(crew({ oldName: 'Old column', oldMassKg: 36 }).aid).toBe(
      'Bring a lifting aid or a third person: 36 kg, carried out, is over the 33 kg guideline for two.',
    )
  })
})
