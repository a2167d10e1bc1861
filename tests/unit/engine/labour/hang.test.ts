import { expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import { hangingCrew } from '../../../../src-main/engine/labour/crew-lift.ts'
import { hang } from '../../../../src-main/engine/labour/tasks/hang.ts'
import type { SwapAsk } from '../../../../src-main/engine/takeoff/asks.ts'
import { typical } from '../../../typical-asks.ts'
import { liftUse } from './lifts-for-tests.ts'

// As delivered one person lifts 25 kg at the waist, and 20 kg over stairs.
const reasonsFor = (ask: Partial<SwapAsk>) => {
  const [done] = hang.gives({ ...typical.swap, ...ask }, liftUse())
  return [done?.people, done?.why.from.slice(2)]
}

it('two people for what one lifts at the waist is told by the lifts that asked for them', () => {
  const upstairs = { emitterMassKg: 25, storey: 1 }
  const { whys } = hangingCrew({ ...typical.swap, ...upstairs }, liftUse())
  expect(whys).toHaveLength(2)
  expect(reasonsFor(upstairs)).toEqual([2, whys])
})

it('over that the mass itself is reason enough, and one person needs none', () => {
  expect(reasonsFor({ emitterMassKg: 25.1, storey: 1 })).toEqual([2, []])
  expect(reasonsFor({ emitterMassKg: 25, storey: 0 })).toEqual([1, []])
})

it('names the mass and what one person lifts first', () => {
  const use = liftUse()
  const [done] = hang.gives({ ...typical.swap, emitterMassKg: 12 }, use)
  expect(done?.why.from).toEqual([given('Mass, dry', 12, 'kg'), use.why('lift.onePersonKg')])
})
