import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { InputOf } from '../../../../src-main/contract/requests.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { wordsIn } from '../../../../src-main/store/item-match.ts'
import { partedText } from '../../../../src-main/store/price-list/row-words.ts'
import { valueOf } from '../../../store/store-for-tests.ts'
import { ask, header, listOf, room, take } from './price-files-for-tests.ts'

const list = [
  header,
  'TRV-15,Thermostatic radiator valve angled 15mm,,1,18.00,Valves',
  'LS-15,Lockshield valve angled 15mm white,,1,9.00,Valves',
  'MV-22,Manual valve straight 22mm,,1,7.00,Valves',
  'CU15,Copper tube 15mm x 3m,,3,14.00,Pipe',
  'CU22,Copper tube 22mm x 3m,,3,29.00,Pipe',
  'EL15,End feed elbow 15mm,,10,4.00,Fittings',
  'CP-1,Chrome plated collar 15mm,5012345678900,1,2.00,Fittings',
].join('\n')

type Input = Partial<InputOf<'priceList.search'>>

async function shelf(): Promise<Desk> {
  const { desk, put } = await room()
  valueOf(await take(desk, await put('list.csv', list), { validFrom: '2025-02-01' }))
  return desk
}

const search = async (desk: Desk, text: string, more: Input = {}) =>
  valueOf(await ask(desk, 'priceList.search', { text, supplierId: 'north', ...more }))
const codes = async (desk: Desk, text: string, more: Input = {}) =>
  (await search(desk, text, more)).rows.map(({ code }) => code)

describe("a search of suppliers' lists", () => {
  it('finds by words in any order, by beginnings, by code and number, with or without a gap before mm', async () => {
    const desk = await shelf()
    expect(await codes(desk, '15mm lockshield')).toEqual(['LS-15'])
    expect(await codes(desk, 'whi lock 15 mm')).toEqual(['LS-15'])
    expect(await codes(desk, 'MV-22')).toEqual(['MV-22'])
    expect(await codes(desk, 'mv22')).toEqual(['MV-22'])
    expect(await codes(desk, '5012345678900')).toEqual(['CP-1'])
    expect((await codes(desk, 'collar')).concat(await codes(desk, 'c'))).toContain('CP-1')
    expect(await codes(desk, 'nothing of the kind')).toEqual([])
    expect(await codes(desk, '***')).toEqual([])
  })

  it('finds by the other words of the trade, after those that were typed', async () => {
    const desk = await shelf()
    expect(await codes(desk, 'trv')).toEqual(['TRV-15'])
    expect((await codes(desk, 'pipe 22')).includes('CU22')).toBe(true)
    expect(await codes(desk, 'bend 15')).toEqual(['EL15'])
  })

  it('puts whole words before beginnings, and the code that was typed before all', async () => {
    const desk = await shelf()
    expect((await codes(desk, 'CU15'))[0]).toBe('CU15')
    expect((await codes(desk, 'valve'))[0]).toBe('MV-22')
  })

  it('keeps to a supplier, a group, linked rows and stale prices, in the order asked for', async () => {
    const desk = await shelf()
    expect(await codes(desk, '', { group: 'Valves', sort: 'price' })).toEqual(['MV-22', 'LS-15', 'TRV-15'])
    expect(await codes(desk, '15', { group: 'Valves', sort: 'price' })).toEqual(['LS-15', 'TRV-15'])
    expect(await codes(desk, '', { group: 'Pipe', sort: 'name' })).toEqual(['CU15', 'CU22'])
    expect(await codes(desk, '', { linked: true, sort: 'code' })).toEqual(['00126', '00127', '126', '127/3'])
    // Begun on 1 February 2025; the desk's day is 2 March 2026, and the limit 365 days.
    expect((await search(desk, '', { stale: true })).found).toBe(7)
    expect(await codes(desk, '', { stale: false, sort: 'code' })).toEqual(['00126', '00127', '126', '127/3'])
    const all = valueOf(await ask(desk, 'priceList.search', { text: '', sort: 'code' }))
    expect(all).toMatchObject({ found: 13, atLeast: false })
    const window = valueOf(await ask(desk, 'priceList.search', { text: '', sort: 'code', from: 3, most: 2 }))
    expect(window.rows).toEqual(all.rows.slice(3, 5))
    expect(window.found).toBe(13)
  })

  it('sees what was changed since the last search', async () => {
    const desk = await shelf()
    expect(await codes(desk, '', { linked: false, group: 'Pipe', sort: 'code' })).toEqual(['CU15', 'CU22'])
    const [row] = (await search(desk, 'CU15')).rows
    await ask(desk, 'priceList.link', { rowNo: row?.rowNo ?? 0, itemId: 'test-pipe-15' })
    expect(await codes(desk, '', { linked: false, group: 'Pipe', sort: 'code' })).toEqual(['CU22'])
  })

  it('counts no further than it looks, says so, and goes on without showing a row twice', async () => {
    const { desk, put } = await room()
    valueOf(await take(desk, await put('many.csv', listOf(1500))))
    const first = await search(desk, 'elbow', { most: 300 })
    expect(first).toMatchObject({ found: 400, atLeast: true })
    const next = await search(desk, 'elbow', { from: 300, most: 300 })
    expect(next.found).toBe(1500)
    const seen = [...first.rows, ...next.rows].map(({ rowNo }) => rowNo)
    expect(new Set(seen).size).toBe(600)
  })
})

describe('words for the index', () => {
  it('come out as the search takes words apart, for any text', () => {
    const sign = fc.constantFrom(...Array.from('ab Zx019./-\'(½é×"'))
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 20 }), (signs) => {
        const text = signs.join('')
        const indexed = partedText(text)
          .toLowerCase()
          .split(/[^\p{L}\p{N}./]+/u)
        expect(indexed.filter((word) => word !== '')).toEqual(wordsIn(text))
      }),
      { numRuns: 2000 },
    )
  })
})
