import { expect, it } from 'vitest'
import { withLaterFigures } from '../../../src-main/desk/quoting/kept-figures.ts'
import { defaultFigures } from '../../figures-for-tests.ts'

it('a kept quote keeps its own figures, and has today’s for what it never knew', () => {
  const now = defaultFigures('2026-11-25')
  const { 'lift.shoulderToElbowKg': _, ...older } = now.settings
  const own = { says: 'Rate', value: 1234, unit: 'Pence', source: 'the firm' }
  const kept = { ...now, settings: { ...older, 'money.labourPencePerHour': own } }
  const both = withLaterFigures(kept, now)
  expect(both.settings['money.labourPencePerHour']).toEqual(own)
  expect(both.settings['lift.shoulderToElbowKg']?.value).toBe(20)
  expect(both.fixings).toEqual(now.fixings)
})
