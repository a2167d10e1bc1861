import { describe, expect, it } from 'vitest'
import { deliveredSettings } from '../../../src-main/desk/figures-in-force.ts'
import { problemsOf } from '../../../src-renderer/bridge/call.ts'
import { figureGroups, groupOf } from '../../../src-renderer/screens/firm/figure-groups.ts'
import type { OwnFigure } from '../../../src-renderer/screens/firm/figure-groups.ts'
import {
  figureSaid,
  figureText,
  typedFigure,
  unitTyped,
} from '../../../src-renderer/screens/firm/figure-text.ts'
import { pictureKind } from '../../../src-renderer/screens/firm/read-logo.ts'
import { changedFigures, numbersOnly } from '../../../src-renderer/screens/firm/use-figures.ts'

const figure = (id: string, changes: Partial<OwnFigure> = {}): OwnFigure => ({
  id,
  says: `The ${id}`,
  unit: 'Mm',
  least: 0,
  most: 100,
  usual: 10,
  source: 'practice, no published source',
  own: null,
  ...changes,
})

describe('a figure in its box', () => {
  it('is typed in pounds and percent, and kept in pence and hundredths of a percent', () => {
    expect(figureText(5250, 'PencePerHour')).toBe('52.50')
    expect(typedFigure('52.5', 'PencePerHour')).toBe(5250)
    expect(figureText(1750, 'BasisPoints')).toBe('17.5')
    expect(typedFigure('17.5 %', 'BasisPoints')).toBe(1750)
    // 1.15 x 100 is 114.99999999999999 in floating point.
    expect(typedFigure('1.15', 'BasisPoints')).toBe(115)
    expect(typedFigure('12,5', 'Mm')).toBe(12.5)
  })
  it('stays as it was typed when it is no number, and is nothing when empty', () => {
    expect(typedFigure('abc', 'BasisPoints')).toBe('abc')
    expect(typedFigure('a lot', 'PencePerHour')).toBe('a lot')
    expect(typedFigure(' ', 'Mm')).toBeUndefined()
  })
  it('is said with its unit, and never with a programmer’s word', () => {
    expect(figureSaid(5200, 'PencePerHour')).toBe('£52.00 an hour')
    expect(figureSaid(2000, 'BasisPoints')).toBe('20 %')
    expect(figureSaid(50, 'Mm')).toBe('50 mm')
    expect(figureSaid(2000, 'Year')).toBe('2000')
    expect(figureSaid(0.25, 'Ratio')).toBe('0.25')
    for (const { unit } of deliveredSettings)
      expect(unitTyped(unit)).not.toMatch(/[A-Za-z]{2}[A-Z]|Per|Count/)
  })
})

describe('the figures on the screen', () => {
  it('are in a group each, all of them', () => {
    const figures = deliveredSettings.map(({ id, says }) => figure(id, { says }))
    const shown = figureGroups(figures, '').flatMap((group) => group.figures)
    expect(shown).toHaveLength(deliveredSettings.length)
    expect(groupOf('money.validDays')).toBe('money')
    expect(groupOf('tax.reducedBasisPoints')).toBe('tax')
    expect(groupOf('seal.tapeTurnsCount')).toBe('parts')
  })
  it('are found by what they say, their source and their group', () => {
    const figures = [figure('tax.a', { says: 'Rate' }), figure('wall.b', { says: 'Space' })]
    expect(figureGroups(figures, 'vat rate').map(({ group }) => group)).toEqual(['tax'])
    expect(figureGroups(figures, 'practice')).toHaveLength(2)
    expect(figureGroups(figures, 'rate space')).toEqual([])
  })
})

describe('what is saved of what was typed', () => {
  const known = [figure('a'), figure('b', { own: 20 }), figure('c', { unit: 'BasisPoints', usual: 2000 })]
  it('is only what differs from what is in force', () => {
    expect(changedFigures(known, { a: '10', b: '20', c: '20' })).toEqual({})
    expect(changedFigures(known, { a: '11', c: '32.5' })).toEqual({ a: 11, c: 3250 })
  })
  it('is the usual figure again where the box was emptied or reset', () => {
    expect(changedFigures(known, { b: '' })).toEqual({ b: null })
    expect(changedFigures(known, { b: null })).toEqual({ b: null })
    expect(changedFigures(known, { a: '' })).toEqual({})
    expect(changedFigures(known, { b: '10' })).toEqual({ b: 10 })
  })
  it('is refused in the screen’s own words when it is no number', () => {
    expect(numbersOnly({ a: 11, b: null }, known)).toEqual({ a: 11, b: null })
    try {
      numbersOnly({ a: 'abc' }, known)
      expect.unreachable('It should have been refused')
    } catch (error) {
      expect(problemsOf(error)).toEqual([
        { code: 'invalid', message: 'The a must be a number; it was “abc”.', path: 'figures.a' },
      ])
    }
  })
})

describe('a picture for the logo', () => {
  it('is known by its own word, or by the end of its name', () => {
    expect(pictureKind('image/png', 'logo')).toBe('image/png')
    expect(pictureKind('', 'LOGO.JPG')).toBe('image/jpeg')
    expect(pictureKind('', 'a.b.svg')).toBe('image/svg+xml')
    expect(pictureKind('image/gif', 'logo.gif')).toBeNull()
    expect(pictureKind('', 'logo')).toBeNull()
  })
})
