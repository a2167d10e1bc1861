import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import { specKey, specMatches } from '../../../../src-main/engine/takeoff/match-spec.ts'
import { addedUp, mergeNeeds } from '../../../../src-main/engine/takeoff/merge-needs.ts'
import { needInWords } from '../../../../src-main/engine/takeoff/resolve.ts'
import { shelfOf } from '../../../../src-main/engine/takeoff/shelf.ts'
import { asks, pipe, tail, tailOf } from './parts-for-tests.ts'

describe('what a need asks for', () => {
  it('is met to the very millimetre of its bound', () => {
    const spec = { thread: 'G1/2', lengthMm: 40 }
    expect(specMatches(spec, { lengthMm: { atLeast: 40 } })).toBe(true)
    expect(specMatches(spec, { lengthMm: { atLeast: 40.1 } })).toBe(false)
    expect(specMatches(spec, { lengthMm: { atMost: 40 } })).toBe(true)
    expect(specMatches(spec, { lengthMm: { atMost: 39.9 } })).toBe(false)
    expect(specMatches(spec, { thread: 'G3/4' })).toBe(false)
    expect(specMatches(spec, { thread: 'G1/2', lengthMm: 40 })).toBe(true)
  })

  it('is not met by words where a number is bounded, or by a field that is not there', () => {
    expect(specMatches({ lengthMm: '40' }, { lengthMm: { atLeast: 1 } })).toBe(false)
    expect(specMatches({}, { lengthMm: { atMost: 1 } })).toBe(false)
    expect(specMatches({}, { thread: 'G1/2' })).toBe(false)
    expect(specMatches({}, {})).toBe(true)
  })

  it('has one key whatever order its fields came in', () => {
    expect(specKey({ b: { atLeast: 2 }, a: 'x' })).toBe('a="x" b={"atLeast":2}')
    expect(specKey({ a: 'x', b: { atLeast: 2 } })).toBe('a="x" b={"atLeast":2}')
  })

  it('is said in words', () => {
    const inWords = (
      kind: 'plug' | 'sealant' | 'element' | 'vent',
      spec: Parameters<typeof needInWords>[0]['spec'],
    ) => needInWords({ kind, spec })
    expect(inWords('plug', { bitMm: 8, screwMostMm: { atMost: 6 } })).toBe(
      'wall plug (bit 8 mm, screw most at most 6 mm)',
    )
    expect(inWords('sealant', { form: 'sanitarySilicone' })).toBe('sealant (sanitary silicone)')
    expect(inWords('element', { watts: 300, thread: 'G1/2' })).toBe('heating element (300 W, G1/2)')
    expect(inWords('vent', { sealing: 'none' })).toBe('vent (no O-ring)')
  })
})

describe('needs put together', () => {
  it('keep the reason of a single one, and add up several', () => {
    const one = tailOf(30, 2, 'b')
    expect(addedUp('key', [one])).toEqual({ ...one, lineKey: 'key' })
    const two = { ...tailOf(30, 3, 'a'), shared: true, pieces: [{ id: 'p', lengthMm: 5, count: 1 }] }
    const both = addedUp('key', [one, two])
    expect(both).toMatchObject({ quantity: 5, shared: true, swapIds: ['a', 'b'], pieces: two.pieces })
    expect(both.why).toEqual({
      says: 'Added up from 2 places.',
      value: 5,
      unit: 'each',
      from: [given('Tails of 30 mm or more.', 3, 'each'), given('Tails of 30 mm or more.', 2, 'each')],
    })
    expect(addedUp('key', [two, one])).toEqual(both)
  })

  it('name each swap once, and stand in the order of their keys', () => {
    const lines = mergeNeeds([tailOf(60, 1, 'a'), tailOf(30, 1, 'a'), tailOf(30, 2, 'a')])
    expect(lines.map(({ lineKey, swapIds, quantity }) => [lineKey, swapIds, quantity])).toEqual([
      ['tail lengthMm={"atLeast":30} thread="G1/2"', ['a'], 3],
      ['tail lengthMm={"atLeast":60} thread="G1/2"', ['a'], 1],
    ])
  })

  it('of nothing are nothing, and that is our own mistake to ask for as one', () => {
    expect(mergeNeeds([])).toEqual([])
    expect(() => addedUp('key', [])).toThrow('empty')
  })
})

describe('the shelf', () => {
  const catalogue = {
    items: [tail('a', 30), { ...tail('b', 40), retired: true }, pipe],
    suppliers: [],
    prices: [asks('a', 5)],
  }

  it('has parts by kind without the retired, and prices by item', () => {
    const shelf = shelfOf(catalogue)
    expect(shelf.parts.get('tail')?.map(({ itemId }) => itemId)).toEqual(['a'])
    expect(shelf.parts.get('pipe')).toEqual([pipe])
    expect(shelf.prices.get('a')).toEqual(catalogue.prices)
    expect([shelf.favourites, shelf.byHand]).toEqual([undefined, undefined])
  })

  it('has preferred items and what was chosen by hand', () => {
    const shelf = shelfOf({ ...catalogue, favourites: ['a'] }, [
      { gapKey: 'one', itemId: 'b' },
      { gapKey: 'two', itemId: 'nowhere' },
      { gapKey: 'three', name: 'Odd', netCostPence: 7 },
    ])
    expect(shelf.favourites?.has('a')).toBe(true)
    expect(shelf.byHand?.get('one')).toEqual({ kind: 'item', itemId: 'b', item: catalogue.items[1] })
    expect(shelf.byHand?.get('two')).toEqual({ kind: 'item', itemId: 'nowhere', item: null })
    expect(shelf.byHand?.get('three')).toEqual({ kind: 'oneOff', name: 'Odd', netCostPence: 7 })
  })
})
