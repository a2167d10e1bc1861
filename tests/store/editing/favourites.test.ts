import { describe, expect, it } from 'vitest'
import type { Item } from '../../../src-main/domain/item.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { refused } from '../../answered.ts'
import { asked, outcome } from './ask-for-tests.ts'
import { smallCatalogue } from '../catalogue-for-tests.ts'
import { deskWith, filledStore } from '../store-for-tests.ts'

const openDesk = async () => deskWith(await filledStore())
const named = (itemId: string): Item => {
  const item = smallCatalogue.items.find((one) => one.itemId === itemId)
  if (item === undefined) throw new Error(`The small catalogue has no ${itemId}`)
  return item
}
const valve = named('test-trv-angled-15') as Item & { readonly kind: 'valve' }
const panel = named('test-panel-600x1000') as Item & { readonly kind: 'emitter' }
const searched = async (desk: Desk, text: string, more: object = {}) =>
  (await asked(desk, 'catalogue.search', { text, ...more })).items.map(({ item }) => item.itemId)

describe('favourites', () => {
  it('are one for a thing: marking one takes the mark off its equal', async () => {
    const desk = await openDesk()
    const kv = { ...valve.spec, kvM3PerH: 0.6 }
    await asked(desk, 'item.save', { item: { ...valve, itemId: 'b-trv', name: 'B valve', spec: kv } })
    expect(await asked(desk, 'favourite.set', { itemId: valve.itemId, favourite: true })).toEqual({
      itemId: valve.itemId,
      favourite: true,
    })
    expect(await asked(desk, 'favourite.set', { itemId: 'b-trv', favourite: true })).toEqual({
      itemId: 'b-trv',
      favourite: true,
      insteadOf: valve.itemId,
    })
    const { items } = await asked(desk, 'favourite.list', {})
    expect(items.map(({ itemId }) => itemId)).toEqual(['b-trv'])
  })

  it('of different things stand side by side, by name, and are searched for', async () => {
    const desk = await openDesk()
    for (const itemId of [valve.itemId, 'test-lockshield-angled-15', 'test-panel-600x1200', panel.itemId]) {
      const { insteadOf } = await asked(desk, 'favourite.set', { itemId, favourite: true })
      expect(insteadOf).toBeUndefined()
    }
    const { items } = await asked(desk, 'favourite.list', {})
    expect(items.map(({ itemId }) => itemId)).toEqual([
      panel.itemId,
      'test-panel-600x1200',
      'test-lockshield-angled-15',
      valve.itemId,
    ])
    expect(await searched(desk, 'valve', { favourite: true })).toEqual([
      'test-lockshield-angled-15',
      valve.itemId,
    ])
    expect(await searched(desk, '', { favourite: true, kind: 'emitter' })).toEqual([
      panel.itemId,
      'test-panel-600x1200',
    ])
    expect(await searched(desk, 'panel', { favourite: false })).toEqual([
      'test-panel-300x2600',
      'test-panel-450x600',
    ])
    const marked = await asked(desk, 'catalogue.search', { text: 'panel' })
    expect(marked.items.filter(({ favourite }) => favourite === true).map(({ item }) => item.itemId)).toEqual(
      [panel.itemId, 'test-panel-600x1200'],
    )
    await asked(desk, 'favourite.set', { itemId: panel.itemId, favourite: false })
    expect(await searched(desk, '', { favourite: true, kind: 'emitter' })).toEqual(['test-panel-600x1200'])
  })

  it('stay one for a thing when an item is changed into the equal of another', async () => {
    const desk = await openDesk()
    const straight = {
      ...valve,
      itemId: 's-trv',
      name: 'S valve',
      spec: { ...valve.spec, body: 'straight' },
    } as const
    await asked(desk, 'item.save', { item: straight })
    await asked(desk, 'favourite.set', { itemId: valve.itemId, favourite: true })
    await asked(desk, 'favourite.set', { itemId: 's-trv', favourite: true })
    await asked(desk, 'item.save', { item: { ...straight, spec: valve.spec } })
    const { items } = await asked(desk, 'favourite.list', {})
    expect(items.map(({ itemId }) => itemId)).toEqual(['s-trv'])
  })

  it('are never retired items, and never what is not there', async () => {
    const desk = await openDesk()
    expect(
      refused(await outcome(desk, 'favourite.set', { itemId: 'test-old-wipes', favourite: true })),
    ).toMatchObject({
      code: 'conflict',
      path: 'itemId',
      message:
        'Wipes, an old pack is retired, so that no job would take it: put it back before it can be a favourite.',
    })
    expect(refused(await outcome(desk, 'favourite.set', { itemId: 'nowhere', favourite: false })).code).toBe(
      'not-found',
    )
  })
})

describe('catalogue.search', () => {
  it('goes on from any place, with and without a text, and counts the same', async () => {
    const desk = await openDesk()
    for (const text of ['', 'panel']) {
      const whole = await asked(desk, 'catalogue.search', { text })
      const parts: string[] = []
      for (let from = 0; from < whole.found + 3; from += 3) {
        const part = await asked(desk, 'catalogue.search', { text, from, most: 3 })
        expect(part.found).toBe(whole.found)
        parts.push(...part.items.map(({ item }) => item.itemId))
      }
      expect(parts).toEqual(whole.items.map(({ item }) => item.itemId))
    }
  })

  it('tells generic figures from the firm’s own', async () => {
    const desk = await openDesk()
    await asked(desk, 'item.save', { item: { ...panel, ratedW: 1 } })
    expect(await searched(desk, 'panel', { generic: false })).toEqual([panel.itemId])
    expect(await searched(desk, '600 x 1', { generic: true })).toEqual(['test-panel-600x1200'])
  })

  it('finds in the shipped catalogue, without a data folder, by the same filters', async () => {
    const desk = deskWith(null)
    const { found } = await asked(desk, 'catalogue.search', { text: 'towel radiator', most: 1 })
    expect(found).toBeGreaterThan(0)
    for (const filter of [{ retired: true }, { favourite: true }, { generic: false }]) {
      expect((await asked(desk, 'catalogue.search', { text: 'towel radiator', ...filter })).found).toBe(0)
    }
    const second = await asked(desk, 'catalogue.search', { text: 'towel radiator', from: 1, most: 1 })
    const both = await asked(desk, 'catalogue.search', { text: 'towel radiator', most: 2 })
    expect(second.items[0]?.item.itemId).toBe(both.items[1]?.item.itemId)
  })
})
