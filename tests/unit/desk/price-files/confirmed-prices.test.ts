import { describe, expect, it } from 'vitest'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { storeOf } from '../../../../src-main/desk/store-of.ts'
import { valueOf } from '../../../store/store-for-tests.ts'
import { ask, compare, everyTable, header, room, take } from './price-files-for-tests.ts'

const two = `${header}\nA,One,,1,10.00,\nB,Two,,1,5.00,`
/** The limit is 365 days and the desk's day 2 March 2026, so a price of 1 February 2025 is stale. */
const old = { validFrom: '2025-02-01' }
const links = [{ code: 'A', itemId: 'test-pipe-8' }]

const search = async (desk: Desk, stale?: boolean) =>
  valueOf(
    await ask(desk, 'priceList.search', {
      text: '',
      sort: 'code',
      supplierId: 'north',
      ...(stale === undefined ? {} : { stale }),
    }),
  ).rows
const rowOf = async (desk: Desk, code: string) => {
  const row = (await search(desk)).find((one) => one.code === code)
  if (row === undefined) throw new Error(`There is no row ${code}`)
  return row
}
const staleCodes = async (desk: Desk) => (await search(desk, true)).map(({ code }) => code)
const onItem = async (desk: Desk) =>
  valueOf(await ask(desk, 'catalogue.item', { itemId: 'test-pipe-8' })).prices.map(
    ({ price, stale, staleSays }) => [price.code, price.confirmedOn, stale, staleSays],
  )

describe('a price that a later list leaves as it was', () => {
  it('is confirmed by it on the row, in the search and on the item, and undoing that list takes it back', async () => {
    const { desk, put } = await room()
    await take(desk, await put('old.csv', two), { ...old, links })
    expect(await staleCodes(desk)).toEqual(['A', 'B'])
    expect(await onItem(desk)).toEqual([
      [
        'A',
        undefined,
        true,
        // From 1 February 2025 to 2 March 2026 are 394 days.
        expect.stringContaining('began on 2025-02-01, 394 days ago'),
      ],
    ])
    const { changeNo } = valueOf(await take(desk, await put('new.csv', `${two}\nC,Three,,1,1.00,`)))
    expect(await rowOf(desk, 'A')).toMatchObject({
      stale: false,
      validFrom: '2025-02-01',
      confirmedOn: '2026-03-02',
    })
    expect((await rowOf(desk, 'C')).confirmedOn).toBeUndefined()
    expect(await staleCodes(desk)).toEqual([])
    expect(await onItem(desk)).toEqual([['A', '2026-03-02', undefined, undefined]])
    // A year and a day on, the confirmation is old too.
    const later = { ...desk, today: '2027-03-03' }
    expect(await onItem(later)).toEqual([
      ['A', '2026-03-02', true, expect.stringContaining('was last confirmed on 2026-03-02, 366 days ago')],
    ])
    expect((await search(later, true)).map(({ code }) => code)).toEqual(
      (await search(later)).filter(({ stale }) => stale).map(({ code }) => code),
    )
    await ask(desk, 'price.undo', { changeNo: changeNo ?? 0 })
    expect(await staleCodes(desk)).toEqual(['A', 'B'])
  })

  it('is confirmed by a list that changes nothing, which touches no table of prices', async () => {
    const { desk, put } = await room()
    const path = await put('old.csv', two)
    await take(desk, path, old)
    const but = ['file_reading']
    const before = everyTable(storeOf(desk).file, but)
    // The rows once more in another file, and then the very same file again a month later.
    const again = valueOf(await take(desk, await put('again.csv', `${two}\n\n`)))
    expect(again.changeNo).toBeNull()
    expect((await rowOf(desk, 'B')).confirmedOn).toBe('2026-03-02')
    const april = { ...desk, today: '2026-04-02' }
    expect(valueOf(await take(april, path, { validFrom: '2026-04-01' })).changeNo).toBeNull()
    expect((await rowOf(april, 'B')).confirmedOn).toBe('2026-04-01')
    expect(everyTable(storeOf(desk).file, but)).toEqual(before)
  })

  it('is confirmed by the very file that was taken before, handed over on a later day', async () => {
    const { desk, put } = await room()
    const path = await put('list.csv', two)
    await take(desk, path)
    const before = everyTable(storeOf(desk).file, ['file_reading'])
    const nextYear = { ...desk, today: '2027-03-10' }
    expect(await staleCodes(nextYear)).toEqual(expect.arrayContaining(['A', 'B']))
    expect(valueOf(await take(nextYear, path)).changeNo).toBeNull()
    expect((await rowOf(nextYear, 'A')).confirmedOn).toBe('2027-03-10')
    expect(await staleCodes(nextYear)).not.toContain('A')
    expect(everyTable(storeOf(desk).file, ['file_reading'])).toEqual(before)
  })

  it('is not confirmed where the list has it no more', async () => {
    const { desk, put } = await room()
    await take(desk, await put('old.csv', two), old)
    await take(desk, await put('new.csv', `${header}\nA,One,,1,10.00,`))
    expect(await rowOf(desk, 'B')).toMatchObject({ stale: true, goneFrom: '2026-03-02' })
    expect((await rowOf(desk, 'B')).confirmedOn).toBeUndefined()
    expect((await rowOf(desk, 'A')).stale).toBe(false)
  })
})

describe('a file that is only a part of the list', () => {
  it('leaves rows that it does not have as they are, and confirms nothing', async () => {
    const { desk, put } = await room()
    await take(desk, await put('old.csv', two), old)
    const path = await put('part.csv', `${header}\nA,One,,1,11.00,`)
    const whole = valueOf(await compare(desk, path))
    expect(whole.missing.map(({ code }) => code)).toEqual(['B'])
    const part = valueOf(await compare(desk, path, { part: true }))
    expect(part.counts).toEqual({ ...whole.counts, missing: 0 })
    expect(part.missing).toEqual([])
    expect(valueOf(await take(desk, path, { part: true })).counts).toEqual(part.counts)
    expect(await rowOf(desk, 'B')).toMatchObject({ stale: true, listPence: 500 })
    expect((await rowOf(desk, 'B')).goneFrom).toBeUndefined()
    expect(await rowOf(desk, 'A')).toMatchObject({ listPence: 1100, stale: false })
    // The same bytes as a whole list are another thing: then B is gone.
    expect(valueOf(await take(desk, path)).counts.missing).toBe(1)
    expect((await rowOf(desk, 'B')).goneFrom).toBe('2026-03-02')
  })
})
