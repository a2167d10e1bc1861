import Database from 'better-sqlite3'
import { describe, expect, it, onTestFinished } from 'vitest'
import fc from 'fast-check'
import { seedCatalogue } from '../../src-main/store/catalogue.ts'
import { searchCatalogue } from '../../src-main/desk/catalogue/search-catalogue.ts'
import { pricesInForce } from '../../src-main/store/prices-in-force.ts'
import { sortName, soughtIn, wordsIn } from '../../src-main/store/item-match.ts'
import { setPrice } from '../../src-main/store/prices.ts'
import { searchItems } from '../../src-main/store/search.ts'
import type { Search } from '../../src-main/store/search.ts'
import { reading, writing } from '../../src-main/store/store.ts'
import type { Store } from '../../src-main/store/store.ts'
import { smallCatalogue } from './catalogue-for-tests.ts'
import { filledStore, opened, tempFolder } from './store-for-tests.ts'

const day = '2026-03-02'
const find = (store: Store, search: Omit<Search, 'day'>) =>
  reading(store, (tx) => searchItems(tx, { ...search, day }))
const idsOf = async (store: Store, text: string, more: Partial<Search> = {}) =>
  (await find(store, { text, ...more })).items.map(({ item }) => item.itemId)

/** The words that SQLite's index makes of some, by the tokenizer that the data file has. */
function wordsOfIndex(words: readonly string[]): readonly unknown[] {
  const db = new Database(':memory:')
  onTestFinished(() => void db.close())
  db.exec(
    `create virtual table said using fts5(words, tokenize = "unicode61 remove_diacritics 0 tokenchars './'")`,
  )
  db.exec(`create virtual table said_word using fts5vocab('said', 'instance')`)
  db.prepare('insert into said (words) values (?)').run(words.join(' '))
  return db.prepare('select term from said_word order by "offset"').pluck().all()
}

describe('words of a search', () => {
  it('part figures from letters, and keep fractions and leading zeros', () => {
    expect(wordsIn('15mm')).toEqual(wordsIn('15 mm'))
    expect(wordsIn('600x1200')).toEqual(wordsIn('600 × 1200'))
    expect(wordsIn('G½')).toEqual(['g', '1/2'])
    expect(wordsIn('00126')).toEqual(['00126'])
    expect(wordsIn("O-ring, fitter's")).toEqual(['o', 'ring', 'fitters'])
    expect(wordsIn('')).toEqual([])
  })

  it('leave out signs that the index takes for accents, and spell the last letter of a Greek word as any other', () => {
    expect(wordsIn('A\u1cf2')).toEqual(['a'])
    expect(wordsIn('\u19b0\u19c0 b\u19c8\u19c9\u1cf3')).toEqual(['b'])
    expect(wordsIn('\u19c1')).toEqual(['\u19c1'])
    expect(wordsIn('ΟΔΟΣ')).toEqual(['οδοσ'])
  })

  it('are words of the index too: every letter and figure there is', () => {
    const signs = Array.from({ length: 0x110000 }, (_, sign) => sign).filter((sign) => sign >> 11 !== 0x1b)
    const letters = signs
      .map((sign) => String.fromCodePoint(sign))
      .filter((sign) => /[\p{L}\p{N}]/u.test(sign))
    const words = letters.flatMap(wordsIn)
    expect(words.length).toBeGreaterThan(100_000)
    const indexed = wordsOfIndex(words)
    expect(indexed).toHaveLength(words.length)
    expect(words.filter((word, at) => indexed[at] !== word)).toEqual([])
  })

  it('hold a number to be whole once something follows it', () => {
    expect(soughtIn('15 va')).toEqual([
      { word: '15', whole: true },
      { word: 'va', whole: false },
    ])
    expect(soughtIn('valve 1')).toEqual([
      { word: 'valve', whole: false },
      { word: '1', whole: false },
    ])
  })

  it('sort names as people count', () => {
    expect(
      ['Pipe 15 mm', 'Pipe 8 mm', 'Pipe 22 mm'].toSorted((a, b) => (sortName(a) < sortName(b) ? -1 : 1)),
    ).toEqual(['Pipe 8 mm', 'Pipe 15 mm', 'Pipe 22 mm'])
  })
})

describe('a search of the catalogue', () => {
  it('finds by words in any order, by their beginnings, and with or without a gap before mm', async () => {
    const store = await filledStore()
    expect(await idsOf(store, '15mm pipe')).toEqual(['test-pipe-15'])
    expect(await idsOf(store, 'pip cop 15 mm')).toEqual(['test-pipe-15'])
    expect(await idsOf(store, 'ANGLED therm')).toEqual(['test-trv-angled-15'])
    expect(await idsOf(store, 'trv')).toEqual(['test-trv-angled-15'])
    expect(await idsOf(store, 'fitters')).toEqual(['test-trv-angled-15'])
    expect(await idsOf(store, 'blank 1/2')).toEqual(['test-blank-half'])
  })

  it('puts the nearest first', async () => {
    const store = await filledStore()
    expect(await idsOf(store, '600')).toEqual([
      'test-panel-450x600',
      'test-panel-600x1000',
      'test-panel-600x1200',
    ])
    expect(await idsOf(store, '600 x 1')).toEqual(['test-panel-600x1000', 'test-panel-600x1200'])
    expect((await idsOf(store, 'valve 15'))[0]).toBe('test-lockshield-angled-15')
  })

  it("finds by a supplier's code, whose zeros count", async () => {
    const store = await filledStore()
    expect(await idsOf(store, '00126')).toEqual(['test-panel-600x1000'])
    expect((await idsOf(store, '126'))[0]).toBe('test-pipe-15')
    expect(await idsOf(store, 'SM-4410')).toEqual(['test-panel-600x1000'])
    expect(await idsOf(store, '127/3')).toEqual(['test-pipe-22'])
  })

  it('finds an item by a code it was given just now', async () => {
    const store = await filledStore()
    const price = {
      itemId: 'test-pipe-8',
      supplierId: 'north',
      code: 'NEW0042',
      packHolds: 3,
      packPence: 800,
      validFrom: day,
    }
    await writing(store, (tx) => setPrice(tx, price))
    expect(await idsOf(store, 'new0042')).toEqual(['test-pipe-8'])
    expect(await idsOf(store, 'pipe 8')).toEqual(['test-pipe-8'])
  })

  it('shows the lowest price of the day, keeps to a kind and a number, and counts all', async () => {
    const store = await filledStore()
    const found = await find(store, { text: '', kind: 'emitter', most: 2 })
    expect(found.found).toBe(4)
    expect(found.items.map(({ item }) => item.itemId)).toEqual(['test-panel-300x2600', 'test-panel-450x600'])
    const [panel] = (await find(store, { text: '600 1000' })).items
    expect(panel?.fromPence).toBe(9500)
    const [lockshield] = (await find(store, { text: 'lockshield' })).items
    expect(lockshield?.fromPence).toBeNull()
  })

  it('leaves retired items out', async () => {
    const store = await filledStore()
    expect(await idsOf(store, 'wipes')).toEqual([])
    expect(await idsOf(store, '')).not.toContain('test-old-wipes')
  })

  it('takes whatever a person types as words, never as commands of the index', async () => {
    const store = await filledStore()
    for (const text of [
      '"',
      '*',
      'pipe OR valve',
      'NEAR(pipe valve)',
      'name_words: pipe',
      "'; drop table item",
      '-pipe',
      '()',
      '^pipe',
    ]) {
      const { found } = await find(store, { text })
      expect(found, text).toBeLessThanOrEqual(3)
    }
    expect(await idsOf(store, '"copper" (15)')).toEqual(['test-pipe-15'])
    expect((await find(store, { text: '***' })).found).toBe(0)
  })

  it('gives the same in the data file as in memory, for any words', async () => {
    const store = await filledStore()
    const inMemory = { ...smallCatalogue, prices: pricesInForce(smallCatalogue.prices, day) }
    const known = smallCatalogue.items.flatMap((item) => wordsIn(item.name))
    const piece = fc.oneof(
      fc.constantFrom(...known, '15mm', '00126', 'SM', '4410', 'trv', '½', 'G1/2', '×', "fitter's"),
      fc
        .constantFrom(...known)
        .chain((word) => fc.nat({ max: word.length }).map((length) => word.slice(0, length))),
      fc.string({ maxLength: 4, unit: 'grapheme' }),
    )
    const text = fc.array(piece, { maxLength: 4 }).map((words) => words.join(' '))
    const kind = fc.option(fc.constantFrom('emitter' as const, 'pipe' as const, 'valve' as const), {
      nil: undefined,
    })
    await fc.assert(
      fc.asyncProperty(text, kind, fc.integer({ min: 1, max: 20 }), async (words, only, most) => {
        const search = { text: words, kind: only, most }
        expect(await find(store, search)).toEqual(searchCatalogue(inMemory, search))
      }),
      { numRuns: 300, examples: [['A\u1cf2', undefined, 20]] },
    )
  })

  it('stays whole with more items than are put in order', async () => {
    const store = await opened(await tempFolder())
    const [first] = smallCatalogue.items
    if (first === undefined) throw new Error('The small catalogue has items')
    const many = Array.from({ length: 5200 }, (_, at) => ({
      ...first,
      itemId: `many-${at}`,
      name: `Panel number ${at}`,
    }))
    await writing(store, (tx) => seedCatalogue(tx, { items: many, suppliers: [], prices: [] }, 'many'))
    const found = await find(store, { text: 'p', most: 10 })
    expect(found.found).toBe(5200)
    expect(found.items).toHaveLength(10)
    expect(await idsOf(store, 'number 5199')).toEqual(['many-5199'])
  })
})
