import { describe, expect, it } from 'vitest'
import type { Emitter, Item, Part } from '../../../src-main/domain/item.ts'
import { isEmitter, isPart } from '../../../src-main/domain/catalogue.ts'
import { bundledCatalogue } from '../../../src-main/desk/bundled-catalogue.ts'
import { searchCatalogue } from '../../../src-main/desk/catalogue/search-catalogue.ts'
import { searchable, soughtIn, wordsIn } from '../../../src-main/store/item-match.ts'
import { tradeWords } from '../../../src-main/store/item-search/trade-words.ts'
import { smallCatalogue } from '../catalogue-for-tests.ts'

/** What a search of the shipped catalogue finds, and of the same things as the firm would have typed them in: without other words. */
async function found(
  text: string,
): Promise<{ readonly shipped: readonly Item[]; readonly own: readonly Item[] }> {
  const catalogue = await bundledCatalogue()
  const bare = catalogue.items.map(({ alsoCalled: _words, ...item }) => item as Item)
  const itemsOf = (items: readonly Item[]) =>
    searchCatalogue({ ...catalogue, items, prices: [] }, { text, most: 1000 }).items.map(({ item }) => item)
  return { shipped: itemsOf(catalogue.items), own: itemsOf(bare) }
}

const words = (text: string) => soughtIn(text).map(({ word }) => word)
const valveOf = (role: string) => (item: Item) => item.kind === 'valve' && item.spec.role === role
const form = (kind: Emitter['form']['kind']) => (item: Item) => isEmitter(item) && item.form.kind === kind

/** Words of the trade, and what each must find: all of such things and nothing else. (Practice, no published source.) */
const wordsAndThings: readonly (readonly [text: string, is: (item: Item) => boolean])[] = [
  ['TRV', valveOf('thermostatic')],
  ['trvs', valveOf('thermostatic')],
  ['thermostatic valve', valveOf('thermostatic')],
  ['thermostatic radiator valve', valveOf('thermostatic')],
  ['LSV', valveOf('lockshield')],
  ['lockshield valve', valveOf('lockshield')],
  ['wheelhead', valveOf('manual')],
  ['towel radiator', form('towelRail')],
  ['heated towel rail', form('towelRail')],
  ['ladder rail', form('towelRail')],
  ['column radiator', form('column')],
  ['type 22', (item) => isEmitter(item) && item.form.kind === 'panel' && item.form.panel === 'doubleTwoFins'],
  ['bleed valve', (item) => item.kind === 'vent'],
  ['olive fitting', (item) => item.kind === 'pipeFitting' && item.spec.joint === 'compression'],
  ['pipe liner', (item) => item.kind === 'pipeFitting' && item.spec.shape === 'insert'],
]

describe('words of the trade', () => {
  it.each(wordsAndThings)('“%s” finds what it is a word for, generic or the firm’s own', async (text, is) => {
    const catalogue = await bundledCatalogue()
    const wanted = catalogue.items.filter(is).map(({ itemId }) => itemId)
    const { shipped, own } = await found(text)
    expect(shipped.length).toBeGreaterThan(0)
    expect(shipped.filter((item) => !is(item)).map(({ name }) => name)).toEqual([])
    expect(shipped.map(({ itemId }) => itemId).toSorted()).toEqual(wanted.toSorted())
    expect(own.map(({ itemId }) => itemId).toSorted()).toEqual(wanted.toSorted())
  })

  it('“rad” finds every radiator and every towel rail among the rest', async () => {
    const { own } = await found('rad')
    const ids = new Set(own.map(({ itemId }) => itemId))
    const emitters = (await bundledCatalogue()).items.filter(isEmitter)
    expect(emitters.filter(({ itemId }) => !ids.has(itemId))).toEqual([])
  })

  it('find the same with 15mm and 15 mm', async () => {
    for (const [joined, apart] of [
      ['15mm pipe', '15 mm pipe'],
      ['trv 15mm', 'TRV 15 mm'],
      ['600x1000', '600 x 1000'],
    ] as const) {
      const one = (await found(joined)).own.map(({ itemId }) => itemId)
      expect(one.length).toBeGreaterThan(0)
      expect(one).toEqual((await found(apart)).own.map(({ itemId }) => itemId))
    }
  })

  it('find half inch, 1/2 inch, ½" and 1/2 BSP alike', async () => {
    const halves = (await found('blank plug half inch')).own.map(({ itemId }) => itemId)
    const catalogue = await bundledCatalogue()
    const wanted = catalogue.items.filter((item) => item.kind === 'blank' && item.spec.thread === 'G1/2')
    expect(halves.toSorted()).toEqual(wanted.map(({ itemId }) => itemId).toSorted())
    for (const text of [
      'blank plug 1/2 inch',
      'blank plug 1/2',
      'blank plug ½"',
      'blank plug 1/2 bsp',
      'half bsp blank plug',
      'blank plug half in',
    ]) {
      expect((await found(text)).own.map(({ itemId }) => itemId).toSorted(), text).toEqual(halves.toSorted())
    }
    const threeQuarters = (await found('three quarter inch blank plug')).own
    expect(threeQuarters.length).toBeGreaterThan(0)
    expect(threeQuarters.every((item) => item.kind === 'blank' && item.spec.thread === 'G3/4')).toBe(true)
  })
})

describe('what is sought', () => {
  it('has fractions of an inch in figures, where an inch follows', () => {
    expect(words('half inch')).toEqual(['1/2', 'inch'])
    expect(words('three quarter inch tail')).toEqual(['3/4', 'inch', 'tail'])
    expect(words('three quarters in')).toEqual(['3/4', 'in'])
    expect(words('quarter inch')).toEqual(['1/4', 'inch'])
    expect(words('three eighths inch')).toEqual(['3/8', 'inch'])
    expect(words('eighth inch')).toEqual(['1/8', 'inch'])
    expect(words('half inch by three quarter inch')).toEqual(['1/2', 'inch', 'by', '3/4', 'inch'])
    expect(words('half a pack')).toEqual(['half', 'a', 'pack'])
    expect(words('inch half')).toEqual(['inch', 'half'])
    expect(words('22 in half inch')).toEqual(['22', 'in', '1/2', 'inch'])
  })

  it('has one of a thing where many are named', () => {
    expect(words('radiators')).toEqual(['radiator'])
    expect(words('inches boxes brushes')).toEqual(['inch', 'box', 'brush'])
    expect(words('brass gas as')).toEqual(['brass', 'gas', 'as'])
    expect(words('15s')).toEqual(['15', 's'])
  })
})

describe('the words for an item', () => {
  it('are its kind’s, its figures’ and its sizes’', () => {
    const valve = smallCatalogue.items
      .filter(isPart)
      .find(({ itemId }) => itemId === 'test-trv-angled-15') as Part
    expect(tradeWords(valve)).toEqual([
      'radiator valve',
      'rad valve',
      'TRV',
      'thermostatic valve',
      'thermostatic radiator valve',
      'stat valve',
      'angle valve',
      '15 mm',
      '1/2 inch',
      '1/2 BSP',
    ])
    const pipe = smallCatalogue.items.find(({ itemId }) => itemId === 'test-pipe-8') as Item
    expect(tradeWords(pipe)).toEqual(['tube', 'copper tube', '8 mm', 'microbore'])
  })

  it('name an emitter by its form and its size', () => {
    const panel = smallCatalogue.items.find(isEmitter) as Emitter
    const of = (form: Emitter['form']) => tradeWords({ ...panel, form, heightMm: 1200, widthMm: 500 })
    expect(of({ kind: 'panel', panel: 'singleFinned' })).toEqual([
      'rad',
      'radiator',
      'panel radiator',
      'type 11',
      'single convector',
      '1200x500',
    ])
    expect(of({ kind: 'column', columns: 3, sections: 10 })).toContain('3 column')
    expect(of({ kind: 'towelRail', curve: 'straight', rungs: 20 })).toContain('towel radiator')
  })

  it('stand once each in the search', () => {
    const [item] = smallCatalogue.items
    if (item === undefined) throw new Error('The small catalogue has items')
    const { otherWords } = searchable({ ...item, alsoCalled: ['rad', 'rad'] }, ['A1', 'A1'])
    expect(otherWords).toEqual([...new Set(otherWords)])
    expect(otherWords).toEqual(expect.arrayContaining([...wordsIn('rad A1 test')]))
  })
})
